namespace GameNight.Planning.Timeline;

/// <summary>
/// Minutes between two starts that the host would rather not have, by weight: the part of
/// start(<paramref name="Later"/>) − start(<paramref name="Earlier"/>) + <paramref name="Plus"/> above zero.
/// </summary>
/// <param name="IsNeverNegative">The lags see to it, so that nothing needs cutting off.</param>
internal readonly record struct CostTerm(int Weight, int Later, int Earlier, int Plus, bool IsNeverNegative);

/// <summary>
/// What makes one plan better than another: first an earlier last pie, then fewer inconvenient minutes, then, at a
/// thousandth of a minute each, work done later. The one objective of quick placement, solver and comparison.
/// </summary>
internal readonly record struct NightCost(int LastPie, long Inconvenience) : IComparable<NightCost>
{
    /// <summary>One weighted minute in <see cref="Inconvenience"/>; a start a minute later takes one off.</summary>
    public const int Scale = 1000;

    private const int FermentOffWanted = 2;
    private const int DoughSession = 1;
    private const int BetweenMixAndKnead = 3;
    private const int LongerBulkRest = 1;
    private const int ShoppedAhead = 1;
    private const int PreparedAhead = 1;
    private const int BreatherMissed = 5;
    private const int OvenIdle = 1;
    private const int OutOfFridge = 1;
    private const int ReadyTooJust = 10;
    private const int AfterFirstPie = 1;
    private const int StandingPie = 2;
    private const int OwnStepWaits = 1;

    public static NightCost Of(NightSteps steps, IReadOnlyList<CostTerm> terms, int[] starts)
    {
        long sum = 0;
        foreach (var term in terms)
        {
            sum += (long)Scale * term.Weight * Math.Max(0, starts[term.Later] - starts[term.Earlier] + term.Plus);
        }

        foreach (var start in starts)
        {
            sum -= start;
        }

        return new NightCost(starts[steps.Pies[^1].Serve], sum);
    }

    public static IReadOnlyList<CostTerm> Terms(NightSteps steps)
    {
        var night = steps.Night;
        var terms = new List<CostTerm>();
        if (steps.Shop is { } shop)
        {
            Waiting(ShoppedAhead, shop, steps.FirstOfDough, 0);
        }

        foreach (var batch in steps.Batches)
        {
            if (batch.Wake is { } wake)
            {
                Waiting(BetweenMixAndKnead, wake, batch.Mix, 0);
            }

            Waiting(BetweenMixAndKnead, batch.Mix, batch.Knead, 0);
            Waiting(LongerBulkRest, batch.Knead, batch.Ball, night.BulkRest);
            Waiting(DoughSession, steps.Batches[0].Mix, batch.Ball, 0);
            var fermentStart = steps.Steps[batch.Ball].Minutes;
            terms.Add(new(FermentOffWanted, steps.Waves[0], batch.Ball, -fermentStart - night.Wanted, false));
            terms.Add(new(FermentOffWanted, batch.Ball, steps.Waves[0], fermentStart + night.Wanted, false));
        }

        foreach (var preparation in steps.Preparations)
        {
            Waiting(PreparedAhead, preparation, steps.Pies[0].Shape, 0);
            var minutes = steps.Steps[preparation].Minutes;
            var breather = ServingClock.LengthDown(TimelineLimits.BreatherBeforeShaping);
            terms.Add(new(BreatherMissed, preparation, steps.Pies[0].Shape, minutes + breather, false));
        }

        if (steps.SecondMix is { } secondMix && night.SecondDough is { } second)
        {
            Waiting(LongerBulkRest, secondMix, steps.Pies[second.FirstPie - 1].Shape, second.Rise);
        }

        Waiting(OvenIdle, steps.Preheat, steps.Pies[0].Bake, night.Soak);
        var ahead = ServingClock.LengthDown(TimelineLimits.ReadyAhead);
        terms.Add(new(ReadyTooJust, steps.Preheat, steps.Pies[0].Bake, night.Preheat + night.Soak + ahead, false));
        terms.Add(new(ReadyTooJust, steps.Waves[0], steps.Pies[0].Shape, night.Temper + night.BallsAhead, false));
        for (var p = 0; p < steps.Pies.Count; p++)
        {
            var pie = steps.Pies[p];
            if (p == 0 || steps.WaveOfPie[p] != steps.WaveOfPie[p - 1])
            {
                Waiting(OutOfFridge, steps.Waves[steps.WaveOfPie[p]], pie.Shape, 0);
            }

            Waiting(StandingPie, pie.Shape, pie.Top, 0);
            Waiting(StandingPie, pie.Top, pie.Bake, 0);
            Waiting(StandingPie, pie.Bake, pie.Serve, night.Rack);
            if (p > 0)
            {
                terms.Add(new(AfterFirstPie, pie.Serve, steps.Pies[0].Serve, 0, true));
            }
        }

        foreach (var (own, i) in night.Own.Zip(steps.Own))
        {
            if (steps.Tied(own.Step.After).Cast<int?>().LastOrDefault() is { } before)
            {
                Waiting(OwnStepWaits, before, i, 0);
            }
        }

        return terms;

        void Waiting(int weight, int first, int then, int rest)
        {
            if (first != then)
            {
                terms.Add(new(weight, then, first, -steps.Steps[first].Minutes - rest, true));
            }
        }
    }

    public static bool operator <(NightCost left, NightCost right) => left.CompareTo(right) < 0;
    public static bool operator >(NightCost left, NightCost right) => left.CompareTo(right) > 0;
    public static bool operator <=(NightCost left, NightCost right) => left.CompareTo(right) <= 0;
    public static bool operator >=(NightCost left, NightCost right) => left.CompareTo(right) >= 0;

    public int CompareTo(NightCost other) =>
        LastPie != other.LastPie ? LastPie.CompareTo(other.LastPie) : Inconvenience.CompareTo(other.Inconvenience);
}
