namespace GameNight.Planning.Appetite;

/// <summary>Slices eaten over an exposure: 1 is a night with the usual appetite; old nights count in part.</summary>
public readonly record struct Eaten(double Slices, double Exposure);

/// <summary>A night on which nothing was left: at least so much was wanted.</summary>
internal readonly record struct AtLeast(double Slices, double Exposure, double Weight);

/// <summary>
/// A rate that differs between people: Gamma(<paramref name="Shape"/>, <paramref name="Rate"/>); counts are Poisson around it.
/// (Gelman et al., Bayesian Data Analysis, 3rd ed., sections 2.6 and 2.7.)
/// </summary>
public sealed record GammaPrior(double Shape, double Rate)
{
    private const double Step = 0.3;
    private const double Furthest = 20;

    /// <summary>Points of the integral over a rate, and how many standard deviations of its logarithm it spans.</summary>
    private const int Points = 240;
    private const double Below = 9;
    private const double Above = 9;

    public double Mean => Shape / Rate;

    /// <summary>Conjugate: slices add to the shape, nights to the rate.</summary>
    public GammaPrior After(Eaten seen) => new(Shape + seen.Slices, Rate + seen.Exposure);

    /// <summary>Log probability of a count: negative binomial.</summary>
    public double LogMarginal(Eaten seen) =>
        LogGamma.Of(Shape + seen.Slices) - LogGamma.Of(Shape) - LogGamma.Of(seen.Slices + 1)
        + Shape * Math.Log(Rate / (Rate + seen.Exposure))
        + (seen.Slices > 0 ? seen.Slices * Math.Log(seen.Exposure / (Rate + seen.Exposure)) : 0);

    /// <summary>Maximum likelihood of the negative binomial over all people, or with a hyperprior its most believable value.</summary>
    internal static GammaPrior Fitted(IReadOnlyList<Eaten> people, GammaPrior start, Hyperprior? before = null)
    {
        var (middle, strength) = DownhillSimplex.Lowest(
            (logMean, logShape) => Math.Abs(logMean) > Furthest || Math.Abs(logShape) > Furthest
                ? double.MaxValue
                : (before?.Cost(logMean, logShape) ?? 0) - people.Sum(At(logMean, logShape).LogMarginal),
            Math.Log(start.Mean), Math.Log(start.Shape), Step);
        return At(middle, strength);

        static GammaPrior At(double logMean, double logShape) => new(Math.Exp(logShape), Math.Exp(logShape - logMean));
    }

    /// <summary>
    /// A lower bound has no conjugate: the belief is integrated over the rate, and the gamma with its mean and variance goes on.
    /// </summary>
    internal GammaPrior After(IReadOnlyList<AtLeast> bounds)
    {
        if (bounds.Count == 0)
        {
            return this;
        }

        var (middle, spread) = (Math.Log(Mean), 1 / Math.Sqrt(Shape));
        Span<double> logs = stackalloc double[Points];
        Span<double> rates = stackalloc double[Points];
        for (var point = 0; point < Points; point++)
        {
            var log = middle + spread * (-Below + (Below + Above) * point / (Points - 1));
            var rate = rates[point] = Math.Exp(log);
            logs[point] = Shape * log - Rate * rate;
            foreach (var bound in bounds)
            {
                logs[point] += bound.Weight * Math.Log(PoissonAtLeast((int)bound.Slices, rate * bound.Exposure));
            }
        }

        var highest = double.NegativeInfinity;
        foreach (var log in logs)
        {
            highest = Math.Max(highest, log);
        }

        var (mass, first, second) = (0.0, 0.0, 0.0);
        for (var point = 0; point < Points; point++)
        {
            var density = Math.Exp(logs[point] - highest);
            mass += density;
            first += density * rates[point];
            second += density * rates[point] * rates[point];
        }

        var mean = first / mass;
        var variance = second / mass - mean * mean;
        return new GammaPrior(mean * mean / variance, mean / variance);
    }

    /// <summary>Chance of at least so many; never 0, whose logarithm nothing could outweigh.</summary>
    private static double PoissonAtLeast(int count, double mean)
    {
        var (fewer, one) = (0.0, Math.Exp(-mean));
        for (var k = 0; k < count; k++)
        {
            fewer += one;
            one *= mean / (k + 1);
        }

        // The first terms of the tail save what is lost when nearly all of it lies below.
        return Math.Max(Math.Max(1 - fewer, one), 1e-300);
    }
}
