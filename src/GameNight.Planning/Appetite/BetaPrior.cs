namespace GameNight.Planning.Appetite;

/// <summary>How often somebody came of how many nights; old nights count in part.</summary>
public readonly record struct Attended(double Came, double Nights);

/// <summary>
/// A chance that differs between people: Beta(<paramref name="Alpha"/>, <paramref name="Beta"/>). (Gelman et al., Bayesian
/// Data Analysis, 3rd ed., section 5.1.)
/// </summary>
public sealed record BetaPrior(double Alpha, double Beta)
{
    private const double Step = 0.5;

    /// <summary>Farther out nothing changes any more, and powers overflow.</summary>
    private const double Furthest = 20;

    public double Mean => Alpha / (Alpha + Beta);

    /// <summary>So many nights it weighs.</summary>
    public double Strength => Alpha + Beta;

    public double StandardDeviation => Math.Sqrt(Mean * (1 - Mean) / (Strength + 1));

    public static BetaPrior Of(double mean, double strength) => new(mean * strength, (1 - mean) * strength);

    /// <summary>What is believed of somebody after their own nights.</summary>
    public BetaPrior After(Attended seen) => new(Alpha + seen.Came, Beta + seen.Nights - seen.Came);

    /// <summary>Matched to mean and variance of the people's own shares; a rough start.</summary>
    /// <param name="people">At least two, with a night each.</param>
    public static BetaPrior ByMoments(IReadOnlyList<Attended> people)
    {
        var shares = people.Select(one => one.Came / one.Nights).ToList();
        var mean = shares.Average();
        var variance = shares.Sum(share => (share - mean) * (share - mean)) / (shares.Count - 1);
        return Of(mean, mean * (1 - mean) / variance - 1);
    }

    /// <summary>Maximum likelihood of the beta-binomial over all people, or with a hyperprior its most believable value.</summary>
    internal static BetaPrior Fitted(IReadOnlyList<Attended> people, BetaPrior start, Hyperprior? before = null)
    {
        var (middle, strength) = DownhillSimplex.Lowest(
            (logit, logStrength) => Math.Abs(logit) > Furthest || Math.Abs(logStrength) > Furthest
                ? double.MaxValue
                : (before?.Cost(logit, logStrength) ?? 0) - people.Sum(At(logit, logStrength).LogMarginal),
            Math.Log(start.Alpha / start.Beta), Math.Log(start.Strength), Step);
        return At(middle, strength);

        static BetaPrior At(double logit, double logStrength) => Of(1 / (1 + Math.Exp(-logit)), Math.Exp(logStrength));
    }

    /// <summary>Log probability of what somebody did, but for the number of orders it can happen in.</summary>
    private double LogMarginal(Attended seen) =>
        LogGamma.Of(Alpha + seen.Came) - LogGamma.Of(Alpha)
        + LogGamma.Of(Beta + seen.Nights - seen.Came) - LogGamma.Of(Beta)
        - LogGamma.Of(Strength + seen.Nights) + LogGamma.Of(Strength);
}
