namespace GameNight.Planning.Appetite;

/// <summary>
/// The whole probability distribution of a number of slices, from 0 upwards. Immutable. Tails below
/// <see cref="Negligible"/> are cut, so probabilities add up to 1 within about 1e-15 per cut.
/// </summary>
public sealed class SliceDistribution
{
    /// <summary>Probability mass too small to matter even after adding up hundreds of guests.</summary>
    private const double Negligible = 1e-17;

    private readonly double[] _probability;

    private SliceDistribution(double[] probability)
    {
        _probability = probability;
    }

    /// <summary>Nobody eats: 0 slices for certain.</summary>
    public static SliceDistribution None { get; } = new([1.0]);

    /// <summary>Probability of each number of slices, from 0.</summary>
    public IReadOnlyList<double> Probabilities => _probability;

    public double Mean => Moment(slices => slices);

    public double Variance
    {
        get
        {
            var mean = Mean;
            return Moment(slices => (slices - mean) * (slices - mean));
        }
    }

    /// <summary>
    /// Gamma-Poisson (negative binomial): an appetite drawn from Gamma(<paramref name="shape"/>, <paramref name="rate"/>),
    /// then a Poisson number of slices. Mean shape/rate.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Shape or rate is not positive and finite.</exception>
    public static SliceDistribution GammaPoisson(double shape, double rate)
    {
        if (!(double.IsFinite(shape) && shape > 0 && double.IsFinite(rate) && rate > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(shape), $"Shape {shape} and rate {rate} must be positive.");
        }

        return Build(Math.Pow(rate / (rate + 1), shape), k => (k + shape) / (k + 1) / (rate + 1), shape / rate);
    }

    /// <exception cref="ArgumentOutOfRangeException">The mean is negative or above 500.</exception>
    public static SliceDistribution Poisson(double mean)
    {
        if (!(mean is >= 0 and <= 500))
        {
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "A mean of 0 to 500 slices is expected.");
        }

        return Build(Math.Exp(-mean), k => mean / (k + 1), mean);
    }

    /// <summary>Exactly this number, for certain.</summary>
    public static SliceDistribution Certainly(int slices)
    {
        var probability = new double[slices + 1];
        probability[slices] = 1;
        return new SliceDistribution(probability);
    }

    /// <summary>These slices with the given chance, none otherwise: somebody who may not come.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The chance is outside 0 to 1.</exception>
    public SliceDistribution WithChance(double chance)
    {
        if (!(chance is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(chance), chance, "A chance lies between 0 and 1.");
        }

        var mixed = Array.ConvertAll(_probability, p => p * chance);
        mixed[0] += 1 - chance;
        return Trimmed(mixed);
    }

    /// <summary>The distribution of the sum of two independent numbers of slices.</summary>
    public static SliceDistribution operator +(SliceDistribution left, SliceDistribution right)
    {
        var sum = new double[left._probability.Length + right._probability.Length - 1];
        for (var i = 0; i < left._probability.Length; i++)
        {
            var p = left._probability[i];
            for (var j = 0; j < right._probability.Length; j++)
            {
                sum[i + j] += p * right._probability[j];
            }
        }

        return Trimmed(sum);
    }

    /// <summary>Probability that at most this many slices are eaten.</summary>
    public double AtMost(int slices)
    {
        var sum = 0.0;
        for (var i = 0; i <= slices && i < _probability.Length; i++)
        {
            sum += _probability[i];
        }

        return Math.Min(sum, 1);
    }

    /// <summary>Probability that more than this many slices are wanted, added up from the small end for accuracy.</summary>
    public double MoreThan(int slices)
    {
        var sum = 0.0;
        for (var i = _probability.Length - 1; i > slices && i >= 0; i--)
        {
            sum += _probability[i];
        }

        return Math.Min(sum, 1);
    }

    /// <summary>The smallest number of slices that is enough with at least this probability (0 to 1).</summary>
    public int Quantile(double probability)
    {
        var sum = 0.0;
        for (var i = 0; i < _probability.Length; i++)
        {
            sum += _probability[i];
            if (sum >= probability)
            {
                return i;
            }
        }

        return _probability.Length - 1;
    }

    /// <summary>Expected slices that are wanted and not there.</summary>
    public double ExpectedShortage(int slices) => Moment(wanted => Math.Max(0, wanted - slices));

    /// <summary>Expected slices that are left over.</summary>
    public double ExpectedLeftover(int slices) => Moment(wanted => Math.Max(0, slices - wanted));

    private double Moment(Func<double, double> of)
    {
        var sum = 0.0;
        for (var i = _probability.Length - 1; i >= 0; i--)
        {
            sum += _probability[i] * of(i);
        }

        return sum;
    }

    private static SliceDistribution Build(double first, Func<int, double> ratio, double mean)
    {
        var probability = new List<double> { first };
        while (probability[^1] > Negligible || probability.Count <= mean)
        {
            probability.Add(probability[^1] * ratio(probability.Count - 1));
        }

        return new SliceDistribution([.. probability]);
    }

    private static SliceDistribution Trimmed(double[] probability)
    {
        var length = probability.Length;
        while (length > 1 && probability[length - 1] < Negligible)
        {
            length--;
        }

        return new SliceDistribution(length == probability.Length ? probability : probability[..length]);
    }
}
