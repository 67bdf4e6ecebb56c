namespace GameNight.Planning.Timeline;

/// <summary>How far a step ties the host down.</summary>
internal enum Presence
{
    /// <summary>Nobody has to be there.</summary>
    None,

    /// <summary>Somebody starts it (a ball out of the fridge, the oven on) and leaves.</summary>
    AtStart,

    /// <summary>Somebody is near from start to end, with hands free for other work: a pie in the oven.</summary>
    Nearby,

    /// <summary>One pair of hands from start to end.</summary>
    Hands,
}

/// <summary>A step that is given a start; steps that only follow another (rests, racks) are not placed by themselves.</summary>
internal readonly record struct StepToPlace(StepKind Kind, int Number, int Minutes, Presence Presence)
{
    /// <summary>How many minutes from its start must lie outside the host's unavailable hours.</summary>
    public int FreeMinutes => Presence switch
    {
        Presence.None => 0,
        Presence.AtStart => 1,
        Presence.Nearby or Presence.Hands => Math.Max(1, Minutes),
    };
}

/// <summary>Start to start: <paramref name="To"/> begins at least so many minutes after <paramref name="From"/>.</summary>
/// <param name="LengthOf">
/// The step whose length is part of the minutes: they change when it turns out longer or shorter. Null when none is.
/// </param>
internal readonly record struct Lag(int From, int To, int Minutes, int? LengthOf = null);

/// <summary>
/// The steps of a night that need a start, and every lag between them. Batches and pies keep their order, which leaves the
/// solver nothing to exchange.
/// </summary>
/// <remarks>
/// Getting a pie into the oven is part of topping, getting it out takes no hands of its own. Each place in the oven is a
/// surface with its own recovery, and pies take the places in turn.
/// </remarks>
internal sealed class NightSteps : IFreeTimes
{
    private readonly List<StepToPlace> _steps = [];
    private readonly List<Lag> _lags = [];
    private readonly HashSet<Lag> _reachAhead = [];

    /// <param name="waveOfPie">Which wave of balls out of the fridge each pie belongs to, from 0, never falling.</param>
    /// <param name="isFirstStraightFromRack">The first pie is not kept waiting to have the oven sooner for the others.</param>
    public NightSteps(NightInMinutes night, IReadOnlyList<int> waveOfPie, bool isFirstStraightFromRack)
    {
        Night = night;
        WaveOfPie = waveOfPie;
        Shop = night.BegunDough is null ? Add(StepKind.Shop, 0, night.Shop, Presence.Hands) : null;
        Preferment = night.Preferment is { } ahead ? Add(StepKind.Preferment, 0, ahead.Mix, Presence.Hands) : null;
        Batches = [.. Enumerable.Range(0, night.Batches).Select(batch => new BatchSteps(
            night.YeastWakes is { } wakes ? Add(StepKind.WakeYeast, batch + 1, wakes, Presence.AtStart) : null,
            Add(StepKind.Mix, batch + 1, night.Mix, Presence.Hands),
            Add(StepKind.Knead, batch + 1, night.Knead, night.IsKneadedByHand ? Presence.Hands : Presence.AtStart),
            Add(StepKind.Ball, batch + 1, night.Balling[batch], Presence.Hands)))];
        Waves = [.. Enumerable.Range(0, waveOfPie[^1] + 1).Select(
            wave => Add(StepKind.Temper, wave + 1, night.Temper, Presence.AtStart))];
        Preparations =
        [
            Add(StepKind.Sauce, 0, night.Sauce, Presence.Hands),
            Add(StepKind.PrepareToppings, 0, night.PrepareToppings, Presence.Hands),
            Add(StepKind.GrateCheese, 0, night.GrateCheese, Presence.Hands),
        ];
        Preheat = Add(StepKind.Preheat, 0, night.Preheat, Presence.AtStart);
        Pies = [.. Enumerable.Range(1, night.Pies).Select(pie => new PieSteps(
            Add(StepKind.Shape, pie, night.Shape, Presence.Hands),
            Add(StepKind.Top, pie, night.Top, Presence.Hands),
            Add(StepKind.Bake, pie, night.Bake, Presence.Nearby),
            Add(StepKind.Serve, pie, night.Serve, Presence.Hands)))];
        SecondMix = night.SecondDough is { } second ? Add(StepKind.SecondMix, 0, second.Mix, Presence.Hands) : null;

        Own = [.. night.Own.Select(own => Add(StepKind.Own, own.Step.Number, own.Minutes, own.Step.NeedsHands ? Presence.Hands : Presence.AtStart))];

        if (Shop is { } shop)
        {
            TieDough(shop);
        }

        TiePreparations();
        TiePies(isFirstStraightFromRack);
        TieSecondDough();
        TieOwn();
    }

    public NightInMinutes Night { get; }
    public IReadOnlyList<int> WaveOfPie { get; }
    public IReadOnlyList<StepToPlace> Steps => _steps;
    public IReadOnlyList<Lag> Lags => _lags;

    /// <summary>
    /// A greatest lag from something that serves several pies to a later one of them. A plan keeps it; on the night nothing that
    /// could begin waits because a pie to come will be late: nobody knows yet that it will.
    /// </summary>
    public bool ReachesAhead(Lag lag) => _reachAhead.Contains(lag);

    /// <summary>Null when the dough is begun: then shopping and batches stand as they are and are not placed.</summary>
    public int? Shop { get; }

    /// <summary>Null without one, and when the dough is begun.</summary>
    public int? Preferment { get; }

    public IReadOnlyList<BatchSteps> Batches { get; }

    /// <summary>What of the dough is mixed first.</summary>
    public int FirstOfDough => Preferment ?? Batches[0].Wake ?? Batches[0].Mix;

    public IReadOnlyList<int> Waves { get; }

    /// <summary>Sauce, toppings, cheese.</summary>
    public IReadOnlyList<int> Preparations { get; }

    /// <summary>Null without a second dough.</summary>
    public int? SecondMix { get; }

    public int Preheat { get; }
    public IReadOnlyList<PieSteps> Pies { get; }

    /// <summary>In the order of <see cref="NightInMinutes.Own"/>.</summary>
    public IReadOnlyList<int> Own { get; }

    /// <summary>The steps that a tie names; of a begun dough there are none here.</summary>
    public IEnumerable<int> Tied(StepTie? tie) => tie is null
        ? []
        : _steps.Index().Where(step => step.Item.Kind == tie.Step && (tie.Number is null || step.Item.Number == tie.Number)).Select(step => step.Index);

    /// <summary>Steps that have ended when an own step begins: by its tie, and because the oven is theirs until then.</summary>
    public IEnumerable<int> BeforeOf(OwnInMinutes own) =>
        Night.HasOvenAfterPies(own.Step) ? Tied(own.Step.After).Append(Pies[^1].Bake).Distinct() : Tied(own.Step.After);

    /// <summary>Steps that begin when an own step has ended: by its tie, and because the oven is theirs from then on.</summary>
    public IEnumerable<int> NextOf(OwnInMinutes own) =>
        Night.HasOvenBeforePies(own.Step) ? Tied(own.Step.Before).Append(Preheat).Distinct() : Tied(own.Step.Before);

    /// <summary>Places of hob and oven, with the steps that take one.</summary>
    public IEnumerable<SharedResource> Stations => Night.Stations.Scarce.Select(one => new SharedResource(
        one.Places, [.. _steps.Index().Where(step => Night.Stations.Of(step.Item.Kind, step.Item.Number) == one.Station).Select(step => (step.Index, 1))]));

    public TemporalNetwork Network()
    {
        var network = new TemporalNetwork(_steps.Count);
        foreach (var lag in _lags)
        {
            network.AtLeast(lag.From, lag.To, lag.Minutes);
        }

        return network;
    }

    /// <summary>The widest bounds of all starts: the first pie is on the table at the serving time; mixing where the host says.</summary>
    public (int[] Earliest, int[] Latest) Bounds(int from)
    {
        var earliest = Enumerable.Repeat(from, _steps.Count).ToArray();
        var latest = _steps.Select(step => Night.Last - step.Minutes).ToArray();
        earliest[Pies[0].Serve] = latest[Pies[0].Serve] = -Night.Serve;
        foreach (var wave in Waves)
        {
            earliest[wave] = Math.Max(from, Night.Balled);
        }

        if (Shop is not null && Night.MixAt is { } mixAt)
        {
            earliest[Batches[0].Mix] = Math.Max(from, mixAt);
            latest[Batches[0].Mix] = mixAt;
        }

        foreach (var (own, i) in Night.Own.Zip(Own))
        {
            earliest[i] = Math.Max(from, own.Earliest);
            latest[i] = own.Latest;
        }

        return (earliest, latest);
    }

    public int NextFree(int i, int minute) => Night.Away.NextFree(minute, _steps[i].FreeMinutes);

    public int PreviousFree(int i, int minute) => Night.Away.PreviousFree(minute, _steps[i].FreeMinutes);

    private void TieDough(int shop)
    {
        After(shop, FirstOfDough, 0, Minutes(TimelineLimits.ShoppedBeforeMixed));
        if (Preferment is { } preferment && Night.Preferment is { } ahead)
        {
            _lags.Add(new Lag(preferment, Batches[0].Mix, ahead.AtLeast));
            _lags.Add(new Lag(Batches[0].Mix, preferment, -ahead.AtMost));
        }

        for (var b = 0; b < Batches.Count; b++)
        {
            var batch = Batches[b];
            if (batch.Wake is { } wake)
            {
                After(wake, batch.Mix, 0, Minutes(TimelineLimits.WokenBeforeMixed));
            }

            if (b >= Night.Bowls)
            {
                After(Batches[b - Night.Bowls].Ball, batch.Mix, 0);
            }

            After(batch.Mix, batch.Knead, 0, Minutes(TimelineLimits.MixedBeforeKneaded));
            After(batch.Knead, batch.Ball, Night.BulkRest, Night.BulkRest + Minutes(TimelineLimits.RestedBeforeBalled));
            After(batch.Ball, Waves[0], Night.Shortest);
            AtMostAfter(batch.Ball, Waves[^1], Night.Longest);
            if (b > 0)
            {
                // There is one mixer bowl; by hand two people may well knead side by side.
                var before = Batches[b - 1];
                if (Night.IsKneadedByHand)
                {
                    _lags.Add(new Lag(before.Mix, batch.Mix, 0));
                }
                else
                {
                    After(before.Knead, batch.Mix, 0);
                }
            }
        }
    }

    private void TiePreparations()
    {
        foreach (var preparation in Preparations)
        {
            if (Shop is { } shop)
            {
                After(shop, preparation, 0);
            }

            After(preparation, Pies[0].Shape, 0);
            AtMostAfter(preparation, Pies[0].Top, Minutes(TimelineLimits.PreparedBeforeTopped));
        }

        foreach (var (before, next) in Waves.Zip(Waves.Skip(1)))
        {
            _lags.Add(new Lag(before, next, 0));
        }

        After(Preheat, Pies[0].Bake, Night.Soak, Night.Soak + Minutes(TimelineLimits.HotBeforeFirstPie));
    }

    private void TiePies(bool isFirstStraightFromRack)
    {
        for (var p = 0; p < Pies.Count; p++)
        {
            var pie = Pies[p];
            var wave = Waves[WaveOfPie[p]];
            After(wave, pie.Shape, 0, Minutes(TimelineLimits.TemperedBeforeShaped));
            if (p > 0 && WaveOfPie[p] == WaveOfPie[p - 1])
            {
                _reachAhead.Add(_lags[^1]);
            }

            After(pie.Shape, pie.Top, 0, Minutes(TimelineLimits.ShapedBeforeTopped));
            After(pie.Top, pie.Bake, 0, Minutes(TimelineLimits.ToppedBeforeOven));
            var mostRacked = p == 0 && isFirstStraightFromRack ? 0 : Minutes(TimelineLimits.RackedBeforeServed);
            After(pie.Bake, pie.Serve, Night.Rack, Night.Rack + mostRacked);
            if (p == 0)
            {
                continue;
            }

            var before = Pies[p - 1];
            _lags.Add(new Lag(before.Shape, pie.Shape, 0));
            _lags.Add(new Lag(before.Top, pie.Top, 0));
            _lags.Add(new Lag(before.Bake, pie.Bake, 0));
            _lags.Add(new Lag(before.Serve, pie.Serve, 0));
            AtMostAfter(before.Bake, pie.Bake, Minutes(TimelineLimits.HotBetweenPies));
            _reachAhead.Add(_lags[^1]);
            if (p >= Night.PiesPerBake)
            {
                After(Pies[p - Night.PiesPerBake].Bake, pie.Bake, Night.Recovery);
            }

            if (p >= Night.OwnPies && Night.OwnPies > 0)
            {
                // Nothing that an own pie must not touch is handled before the last of them is out of the oven.
                After(Pies[Night.OwnPies - 1].Bake, pie.Top, 0);
            }
        }
    }

    /// <summary>
    /// Before flour of the main dough is about that evening, and risen when its first pie is shaped. How long it may wait is
    /// counted to the first pie of all: what lies on it is never far behind.
    /// </summary>
    private void TieSecondDough()
    {
        if (SecondMix is not { } mix || Night.SecondDough is not { } second)
        {
            return;
        }

        if (Shop is { } shop)
        {
            After(shop, mix, 0);
        }

        After(mix, Pies[0].Shape, 0, second.Rise + Minutes(TimelineLimits.RisenBeforeShaped));
        After(mix, Pies[second.FirstPie - 1].Shape, second.Rise);
    }

    private void TieOwn()
    {
        foreach (var (own, i) in Night.Own.Zip(Own))
        {
            foreach (var step in BeforeOf(own))
            {
                After(step, i, 0);
            }

            if (Tied(own.Step.After).Cast<int?>().LastOrDefault() is { } last)
            {
                AtMostAfter(last, i, Minutes(TimelineLimits.OwnStepAfter));
            }

            foreach (var next in NextOf(own))
            {
                After(i, next, 0);
            }
        }
    }

    private static int Minutes(NodaTime.Duration limit) => ServingClock.LengthDown(limit);

    private int Add(StepKind kind, int number, int minutes, Presence presence)
    {
        _steps.Add(new StepToPlace(kind, number, minutes, presence));
        return _steps.Count - 1;
    }

    private void After(int first, int then, int atLeast, int? atMost = null)
    {
        _lags.Add(new Lag(first, then, _steps[first].Minutes + atLeast, first));
        if (atMost is { } most)
        {
            AtMostAfter(first, then, most);
        }
    }

    private void AtMostAfter(int first, int then, int atMost) =>
        _lags.Add(new Lag(then, first, -_steps[first].Minutes - atMost, first));
}

/// <summary>Where the steps of a batch stand in the list.</summary>
/// <param name="Wake">Null when its yeast goes in as it is.</param>
internal readonly record struct BatchSteps(int? Wake, int Mix, int Knead, int Ball);

/// <summary>Where the steps of a pie stand in the list.</summary>
internal readonly record struct PieSteps(int Shape, int Top, int Bake, int Serve);
