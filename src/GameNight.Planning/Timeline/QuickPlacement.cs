namespace GameNight.Planning.Timeline;

/// <summary>
/// A night placed by a simple rule: pies from the serving time on, balls out and oven on before them, preparations as late
/// as leaves a breather, and the dough at the most convenient mixing time.
/// </summary>
internal sealed class QuickPlacement
{
    private static readonly int Ahead = ServingClock.LengthDown(TimelineLimits.ReadyAhead);

    private readonly int _now;
    private readonly QuickDough? _dough;

    /// <param name="isAhead">The first balls are warm a while before they are needed, where that fits.</param>
    private QuickPlacement(NightInMinutes night, int now, bool isAhead)
    {
        _now = now;
        var ahead = isAhead ? night.BallsAhead : 0;
        Pies = QuickPies.Place(night, night.Away, now, ahead);
        Stuck = Pies.Stuck;

        // Without room for all pies the steps are still wanted, to say what stands in the way. Each ball is then free to
        // leave the fridge by itself, and the first pie goes straight from the rack if only the host's hours forbid it.
        Steps = Stuck is null
            ? new NightSteps(night, Pies.WaveOfPie, Pies.IsFirstStraightFromRack)
            : new NightSteps(
                night,
                [.. Enumerable.Range(0, night.Pies)],
                QuickPies.Place(night, AwayWindows.None, night.First, ahead).IsFirstStraightFromRack);
        Starts = new int[Steps.Steps.Count];
        if (Stuck is null)
        {
            Terms = NightCost.Terms(Steps);
            TakeOver();
            var own = new QuickOwnSteps(Steps, Starts, Pies.Hands, now);
            Stuck = PlacePreheat() ?? PlaceSecondDough(Pies.Hands) ?? PlacePreparations(Pies.Hands) ?? own.PlaceBeforeDough([]);
            _dough = Stuck is null && Steps.Shop is { } shop
                ? new QuickDough(Steps, shop, Terms, Starts, Pies.Hands, own, now)
                : null;
        }
    }

    public QuickPies Pies { get; }
    public NightSteps Steps { get; }
    public IReadOnlyList<CostTerm> Terms { get; private set; } = [];
    public int[] Starts { get; }
    public Stuck? Stuck { get; private set; }

    public bool Works => Stuck is null;

    public NightCost Cost => NightCost.Of(Steps, Terms, Starts);

    /// <summary>The most convenient placement the rule finds.</summary>
    public static QuickPlacement Of(NightInMinutes night)
    {
        var placement = new QuickPlacement(night, night.Now, isAhead: true);
        placement.PlaceDough(dough => dough.PlaceBest());
        return placement.Works ? placement : JustInTime(night, dough => dough.PlaceBest());
    }

    /// <summary>Whether the rule finds any placement: for trying many serving times.</summary>
    public static bool WorksFor(NightInMinutes night) => JustInTime(night, dough => dough.PlaceAny()).Works;

    /// <summary>The latest mixing time had there been time enough before; null when even that does not help.</summary>
    public static int? LatestMix(NightInMinutes night) => new QuickPlacement(night, night.First, isAhead: false)._dough?.Latest();

    /// <summary>The earliest and the latest mixing time, or null when there is none; not all between them need work.</summary>
    public static (int Earliest, int Latest)? MixRange(NightInMinutes night)
    {
        var earliest = new QuickPlacement(night, night.Now, isAhead: true)._dough?.Earliest();
        var dough = new QuickPlacement(night, night.Now, isAhead: false)._dough;
        return dough?.Latest() is { } latest && (earliest ?? dough.Earliest()) is { } first ? (first, latest) : null;
    }

    private static QuickPlacement JustInTime(NightInMinutes night, Func<QuickDough, bool> place)
    {
        var placement = new QuickPlacement(night, night.Now, isAhead: false);
        placement.PlaceDough(place);
        return placement;
    }

    private void PlaceDough(Func<QuickDough, bool> place)
    {
        if (_dough is not null && !place(_dough))
        {
            Stuck = new Stuck(StepKind.Mix, 1);
        }
    }

    private void TakeOver()
    {
        for (var p = 0; p < Steps.Pies.Count; p++)
        {
            Starts[Steps.Pies[p].Shape] = Pies.Pies[p].Shape;
            Starts[Steps.Pies[p].Top] = Pies.Pies[p].Top;
            Starts[Steps.Pies[p].Bake] = Pies.Pies[p].Bake;
            Starts[Steps.Pies[p].Serve] = Pies.Pies[p].Serve;
        }

        for (var wave = 0; wave < Steps.Waves.Count; wave++)
        {
            Starts[Steps.Waves[wave]] = Pies.Waves[wave];
        }
    }

    private Stuck? PlacePreheat()
    {
        var night = Steps.Night;
        var latest = Starts[Steps.Pies[0].Bake] - night.Soak - night.Preheat;
        var earliest = Math.Max(_now, latest - ServingClock.LengthDown(TimelineLimits.HotBeforeFirstPie));
        if (night.Away.BeginAhead(earliest, latest, Ahead) is not { } preheat)
        {
            return new Stuck(StepKind.Preheat, 0);
        }

        Starts[Steps.Preheat] = preheat;
        return null;
    }

    private Stuck? PlaceSecondDough(HandsCalendar hands)
    {
        if (Steps.SecondMix is not { } mix || Steps.Night.SecondDough is not { } second)
        {
            return null;
        }

        var mixed = Starts[Steps.Pies[0].Shape] - second.Mix;
        var latest = Math.Min(mixed, Starts[Steps.Pies[second.FirstPie - 1].Shape] - second.Rise - second.Mix);
        var earliest = mixed - second.Rise - ServingClock.LengthDown(TimelineLimits.RisenBeforeShaped);
        if (hands.Latest(StepKind.SecondMix, 0, Math.Max(_now, earliest), latest, second.Mix) is not { } start)
        {
            return new Stuck(StepKind.SecondMix, 0);
        }

        hands.Take(StepKind.SecondMix, 0, start, second.Mix);
        Starts[mix] = start;
        return null;
    }

    /// <summary>The shortest nearest to the pies: then least time is spent waiting in the fridge.</summary>
    private Stuck? PlacePreparations(HandsCalendar hands)
    {
        var night = Steps.Night;
        var shape = Starts[Steps.Pies[0].Shape];
        var breather = ServingClock.LengthDown(TimelineLimits.BreatherBeforeShaping);
        var earliestEnd = Starts[Steps.Pies[0].Top] - ServingClock.LengthDown(TimelineLimits.PreparedBeforeTopped);
        foreach (var preparation in Steps.Preparations.OrderBy(i => Steps.Steps[i].Minutes))
        {
            var (kind, minutes) = (Steps.Steps[preparation].Kind, Steps.Steps[preparation].Minutes);
            var earliest = Math.Max(_now, earliestEnd - minutes);
            var start = hands.Latest(kind, 0, earliest, shape - breather - minutes, minutes)
                ?? hands.Latest(kind, 0, Math.Max(earliest, shape - breather - minutes), shape - minutes, minutes);
            if (start is not { } found)
            {
                return new Stuck(kind, 0);
            }

            hands.Take(kind, 0, found, minutes);
            Starts[preparation] = found;
        }

        return null;
    }
}
