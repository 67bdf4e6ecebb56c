using GameNight.Nights.Records;

namespace GameNight.Nights.PastNights;

/// <summary>How many liked a kind of pie best.</summary>
public sealed record PieVotes(PieKind Kind, int Votes);

/// <summary>What the look-backs of a night say together, question by question: few say everything.</summary>
/// <param name="People">How many said anything at all.</param>
/// <param name="Pies">Kinds with at least one vote, most votes first.</param>
/// <param name="PieVoices">How many named a best pie.</param>
/// <param name="SlicesEach">Mean of the slices that people say they ate; null below <see cref="FewestForAverage"/>.</param>
public sealed record Opinions(
    int People,
    IReadOnlyDictionary<Enough, int> Enough,
    IReadOnlyDictionary<Evening, int> Evening,
    IReadOnlyList<PieVotes> Pies,
    int PieVoices,
    double? SlicesEach,
    int SlicesVoices)
{
    /// <summary>Below it an average would be one or two people, and would point at them.</summary>
    public const int FewestForAverage = 3;

    /// <summary>A single vote is somebody's taste, not what won.</summary>
    private const int FewestVotesToWin = 2;

    public int EnoughVoices => Enough.Values.Sum();

    public int EveningVoices => Evening.Values.Sum();

    /// <summary>From -1 (too little) over 0 (right) to 1 (too much); null below <see cref="FewestForAverage"/>.</summary>
    public double? AverageEnough => Average(Enough, EnoughVoices);

    /// <summary>From -1 (poor) over 0 (fine) to 1 (lovely); null below <see cref="FewestForAverage"/>.</summary>
    public double? AverageEvening => Average(Evening, EveningVoices);

    /// <summary>What was liked best, several at the same number of votes; none when no two people agree.</summary>
    public IReadOnlyList<PieKind> Winners => [.. Pies
        .Where(row => row.Votes >= FewestVotesToWin && row.Votes == Pies[0].Votes).Select(row => row.Kind)];

    public static Opinions Of(IEnumerable<LookBackFacts> lookBacks, NightPies pies)
    {
        var said = lookBacks.Where(SaysSomething).ToList();
        var votes = said
            .Select(facts => facts.BestPies.Select(pies.KindOf).OfType<PieKind>().Distinct().ToList())
            .Where(kinds => kinds.Count > 0).ToList();
        var slices = said.Select(facts => facts.Slices).OfType<double>().ToList();
        return new Opinions(
            said.Count,
            Count(said.Select(facts => facts.Enough)),
            Count(said.Select(facts => facts.Evening)),
            [.. votes.SelectMany(kinds => kinds).GroupBy(kind => kind)
                .Select(same => new PieVotes(same.Key, same.Count()))
                .OrderByDescending(row => row.Votes).ThenBy(row => row.Kind.Number)],
            votes.Count,
            slices.Count >= FewestForAverage ? slices.Average() : null,
            slices.Count);
    }

    public static bool SaysSomething(LookBackFacts facts) =>
        facts.Enough is not null || facts.Evening is not null || facts.Slices is not null
        || facts.BestPies.Count > 0 || facts.Words.Length > 0;

    private static Dictionary<T, int> Count<T>(IEnumerable<T?> values)
        where T : struct, Enum
    {
        var given = values.OfType<T>().ToList();
        return Enum.GetValues<T>().ToDictionary(value => value, value => given.Count(one => one.Equals(value)));
    }

    /// <summary>The three values lie at -1, 0 and 1.</summary>
    private static double? Average<T>(IReadOnlyDictionary<T, int> counts, int voices)
        where T : struct, Enum =>
        voices < FewestForAverage ? null : counts.Sum(row => row.Value * (Convert.ToInt32(row.Key, null) - 1.0)) / voices;
}

/// <summary>
/// What other guests may read of the look-backs: averages over at least <see cref="Opinions.FewestForAverage"/> voices on that
/// very question, no count and nobody's own.
/// </summary>
/// <param name="Best">Null when too few named a pie; empty when no two agree.</param>
public sealed record Averages(double? Enough, double? Evening, IReadOnlyList<PieKind>? Best)
{
    public static Averages Of(Opinions opinions) => new(
        opinions.AverageEnough,
        opinions.AverageEvening,
        opinions.PieVoices >= Opinions.FewestForAverage ? opinions.Winners : null);
}
