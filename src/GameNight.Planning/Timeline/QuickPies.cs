namespace GameNight.Planning.Timeline;

/// <summary>Where one pie is placed.</summary>
internal readonly record struct PieTimes(int Shape, int Top, int Bake, int Serve);

/// <summary>A step for which no time was found.</summary>
internal readonly record struct Stuck(StepKind Kind, int Number);

/// <summary>
/// Places pie after pie as early as oven and hands allow, from the first pie on, which is on the table at the serving time.
/// </summary>
internal sealed class QuickPies
{
    private readonly NightInMinutes _night;
    private readonly AwayWindows _away;
    private readonly HandsCalendar _hands;
    private readonly int _now;
    private readonly int _ahead;
    private readonly List<PieTimes> _pies = [];
    private readonly List<int> _waves = [];
    private readonly List<int> _waveOfPie = [];

    private QuickPies(NightInMinutes night, AwayWindows away, int now, int ahead)
    {
        _night = night;
        _away = away;
        _hands = new HandsCalendar(night.First, night.Last, night.Crew, away, night.Stations);
        _now = now;
        _ahead = ahead;
    }

    public IReadOnlyList<PieTimes> Pies => _pies;

    /// <summary>The hands that are left.</summary>
    public HandsCalendar Hands => _hands;

    /// <summary>When the waves of balls leave the fridge.</summary>
    public IReadOnlyList<int> Waves => _waves;

    public IReadOnlyList<int> WaveOfPie => _waveOfPie;

    public bool IsFirstStraightFromRack { get; private set; }

    /// <summary>What could not be placed, or null when everything is.</summary>
    public Stuck? Stuck { get; private set; }

    /// <param name="ahead">The first balls are ready to be shaped these minutes before they are needed, where that fits.</param>
    public static QuickPies Place(NightInMinutes night, AwayWindows away, int now, int ahead)
    {
        var pies = new QuickPies(night, away, now, ahead);
        pies.Stuck = pies.ReserveOwn() ?? pies.PlaceFirst() ?? pies.PlaceOthers() ?? pies.PlaceWaves();
        return pies;
    }

    /// <summary>What the host does at a time of the clock: everything else is placed around it.</summary>
    private Stuck? ReserveOwn()
    {
        foreach (var own in _night.Own.Where(own => own.IsAtOneTime))
        {
            if (!_hands.Fits(StepKind.Own, own.Step.Number, own.Earliest, own.Minutes, own.Step.NeedsHands))
            {
                return new Stuck(StepKind.Own, own.Step.Number);
            }

            _hands.Take(StepKind.Own, own.Step.Number, own.Earliest, own.Minutes, own.Step.NeedsHands);
        }

        return null;
    }

    private Stuck? PlaceFirst()
    {
        var serve = -_night.Serve;
        if (!_hands.Fits(StepKind.Serve, 1, serve, _night.Serve))
        {
            return new Stuck(StepKind.Serve, 1);
        }

        for (var racked = 0; racked <= ServingClock.LengthDown(TimelineLimits.RackedBeforeServed); racked++)
        {
            var bake = serve - racked - _night.Rack - _night.Bake;
            if (TryAt(1, bake, new PieTimes(_now, _now, bake, serve), serve))
            {
                IsFirstStraightFromRack = racked == 0;
                return null;
            }
        }

        return new Stuck(StepKind.Shape, 1);
    }

    private Stuck? PlaceOthers()
    {
        for (var p = 1; p < _night.Pies; p++)
        {
            var last = _pies[p - 1];
            var earliest = last.Bake;
            if (p >= _night.PiesPerBake)
            {
                earliest = Math.Max(earliest, _pies[p - _night.PiesPerBake].Bake + _night.Bake + _night.Recovery);
            }

            var latest = Math.Min(_night.Last, last.Bake + _night.Bake + ServingClock.LengthDown(TimelineLimits.HotBetweenPies));
            var bake = earliest;
            while (bake <= latest && !TryAt(p + 1, bake, last, int.MaxValue))
            {
                bake++;
            }

            if (bake > latest)
            {
                return new Stuck(StepKind.Shape, p + 1);
            }
        }

        return null;
    }

    /// <param name="before">No step of the pie comes before the same step of the pie before it.</param>
    private bool TryAt(int number, int bake, PieTimes before, int serveUntil)
    {
        if (!_away.IsFree(bake, Math.Max(1, _night.Bake)))
        {
            return false;
        }

        var topFrom = Math.Max(before.Top, bake - ServingClock.LengthDown(TimelineLimits.ToppedBeforeOven) - _night.Top);
        if (number > _night.OwnPies && _night.OwnPies > 0)
        {
            topFrom = Math.Max(topFrom, _pies[_night.OwnPies - 1].Bake + _night.Bake);
        }

        var racked = bake + _night.Bake + _night.Rack;
        var mostRacked = racked + ServingClock.LengthDown(TimelineLimits.RackedBeforeServed);
        if (_hands.Latest(StepKind.Top, number, topFrom, bake - _night.Top, _night.Top) is not { } top)
        {
            return false;
        }

        var takenTop = _hands.Take(StepKind.Top, number, top, _night.Top);
        var shapeFrom = top - ServingClock.LengthDown(TimelineLimits.ShapedBeforeTopped) - _night.Shape;
        if (_hands.Latest(StepKind.Shape, number, Math.Max(shapeFrom, before.Shape), top - _night.Shape, _night.Shape) is { } shape)
        {
            var takenShape = _hands.Take(StepKind.Shape, number, shape, _night.Shape);
            var serve = _hands.Earliest(
                StepKind.Serve, number, Math.Max(racked, before.Serve), Math.Min(mostRacked, serveUntil), _night.Serve);
            if (serve is { } served)
            {
                _hands.Take(StepKind.Serve, number, served, _night.Serve);
                _pies.Add(new PieTimes(shape, top, bake, served));
                return true;
            }

            _hands.GiveBack(takenShape);
        }

        _hands.GiveBack(takenTop);
        return false;
    }

    /// <summary>
    /// How long ahead of need the first wave is warm: a little less than wished for where that saves a wave, and as wished where too little
    /// would be left.
    /// </summary>
    private int Ahead(int latest, int mostTempered)
    {
        var left = latest + mostTempered - _pies.Last(pie => pie.Shape <= latest + mostTempered).Shape;
        return left >= ServingClock.LengthDown(TimelineLimits.ReadyAhead) ? Math.Min(_ahead, left) : _ahead;
    }

    /// <summary>A wave leaves the fridge as late as its first pie allows and holds the pies it can wait for.</summary>
    private Stuck? PlaceWaves()
    {
        for (var p = 0; p < _pies.Count; p++)
        {
            var mostTempered = _night.Temper + ServingClock.LengthDown(TimelineLimits.TemperedBeforeShaped);
            if (_waves.Count == 0 || _pies[p].Shape > _waves[^1] + mostTempered)
            {
                var latest = _pies[p].Shape - _night.Temper;
                var earliest = Math.Max(Math.Max(_now, _night.Balled), _pies[p].Shape - mostTempered);
                if (_away.BeginAhead(earliest, latest, _waves.Count == 0 ? Ahead(latest, mostTempered) : 0) is not { } wave)
                {
                    return new Stuck(StepKind.Temper, _waves.Count + 1);
                }

                _waves.Add(wave);
            }

            _waveOfPie.Add(_waves.Count - 1);
        }

        return null;
    }
}
