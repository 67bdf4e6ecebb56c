namespace GameNight.Planning.Timeline;

/// <summary>How far a step is, in minutes of the serving clock.</summary>
internal readonly record struct StepProgress(int? Begun, int? Done);

/// <summary>
/// Times the rest of a night anew without solving anything: what is begun stands, everything else keeps its order and its
/// lags and begins no earlier than planned, so that it moves as little as it must.
/// </summary>
/// <remarks>
/// Longest paths over the lags and the chains of the hands (a partial-order schedule: Policella and others, 2004). A greatest
/// lag that what is begun has already broken is left broken, and told; so is one that would hold up a pie for the sake of a later one.
/// </remarks>
internal sealed class Retiming
{
    private readonly NightSteps _steps;
    private readonly int[] _planned;
    private readonly StepProgress[] _progress;
    private readonly int[] _notBefore;
    private readonly int[] _lengths;
    private readonly int _now;

    /// <summary>What a warm ball can wait out: an evening that runs late goes on and is not put off until the morning.</summary>
    private readonly AwayWindows _breaks;
    private readonly List<Lag> _chains = [];
    private readonly HashSet<int> _firstOfLane = [];

    /// <summary>From then on a pair of hands had nothing that was not done.</summary>
    private readonly int _handsFree;

    /// <param name="planned">Starts of the plan.</param>
    /// <param name="notBefore">Per step: an earliest start that a mark asks for, or <see cref="int.MinValue"/>.</param>
    /// <param name="longer">Per step: minutes that it takes more than planned.</param>
    /// <param name="hands">Pairs of hands there are now.</param>
    public Retiming(NightSteps steps, int[] planned, StepProgress[] progress, int[] notBefore, int[] longer, int hands, int now)
    {
        (_steps, _planned, _progress, _notBefore, _now) = (steps, planned, progress, notBefore, now);
        _breaks = steps.Night.Away.NoLongerThan(ServingClock.LengthDown(TimelineLimits.TemperedBeforeShaped));
        Starts = new int[steps.Steps.Count];
        _lengths = [.. steps.Steps.Select((step, i) => step.Minutes + longer[i])];
        _handsFree = progress.Index()
            .Where(one => steps.Steps[one.Index].Presence == Presence.Hands && one.Item.Done is not null)
            .Select(one => one.Item.Done!.Value).OrderDescending().Skip(hands - 1).FirstOrDefault(int.MinValue);
        Chain(steps.Night.Crew.With(hands));
        Expect();
        RunOn();
        Broken = [.. steps.Lags.Select(lag => (Lag: lag, Over: Starts[lag.From] + MinutesOf(lag) - Starts[lag.To])).Where(broken => broken.Over > 0)];
    }

    public int[] Starts { get; }

    public IReadOnlyList<int> Lengths => _lengths;

    /// <summary>What keeps each pair of hands, and each place of hob and oven, to its order.</summary>
    public IReadOnlyList<Lag> Chains => _chains;

    /// <summary>Lags that do not hold any more, and by how many minutes.</summary>
    public IReadOnlyList<(Lag Lag, int Over)> Broken { get; }

    public bool IsDone(int i) => _progress[i].Done is not null
        || (EndsItself(i) && _progress[i].Begun is { } begun && begun + _lengths[i] <= _now);

    /// <summary>
    /// The steps that decide when this one begins, itself included: each is pushed by the one before it. It ends at a step
    /// that begins when it was planned to.
    /// </summary>
    public IEnumerable<int> ChainTo(int step)
    {
        var lags = _steps.Lags.Concat(_chains).ToLookup(lag => lag.To);
        var seen = new HashSet<int>();
        while (seen.Add(step))
        {
            yield return step;
            if (Starts[step] <= Math.Max(_planned[step], _notBefore[step]))
            {
                yield break;
            }

            var pushing = lags[step].Where(lag => Starts[lag.From] + MinutesOf(lag) == Starts[step] && !seen.Contains(lag.From)).Cast<Lag?>().FirstOrDefault();
            step = pushing?.From ?? step;
        }
    }

    /// <summary>Begun by a tap, or first in line for hands when its time has come.</summary>
    public bool IsRunning(int i) => !IsDone(i) && (_progress[i].Begun is not null || (_firstOfLane.Contains(i) && Starts[i] <= _now));

    /// <summary>It is only begun; nobody says when it is done.</summary>
    public bool EndsItself(int i) => _steps.Steps[i].Presence == Presence.AtStart;

    /// <summary>
    /// A step that should be over and is not told done runs on until now: what comes after waits for it. One after the other,
    /// because what a first one holds up has not begun.
    /// </summary>
    private void RunOn()
    {
        var runOn = new HashSet<int>();
        while (Enumerable.Range(0, Starts.Length)
            .Where(i => !runOn.Contains(i) && IsRunning(i) && !EndsItself(i) && Starts[i] + _lengths[i] + Tail(i) < _now)
            .OrderBy(i => Starts[i]).Select(i => (int?)i).FirstOrDefault() is { } over)
        {
            runOn.Add(over);
            _lengths[over] = _now - Starts[over] - Tail(over);
            Expect();
        }
    }

    /// <summary>Nobody taps between shaping a pie and topping it: what is shaped too long may well be topped by now.</summary>
    private int Tail(int i) => _steps.Steps[i] is { Kind: StepKind.Shape, Number: var pie } && _progress[_steps.Pies[pie - 1].Top].Done is null
        ? _lengths[_steps.Pies[pie - 1].Top]
        : 0;

    /// <summary>Each pair of hands keeps its work in the planned order; what is done already does not count.</summary>
    private void Chain(Crew crew)
    {
        var lanes = Enumerable.Repeat((Last: -1, End: int.MinValue), crew.People).ToArray();
        var open = Enumerable.Range(0, _planned.Length)
            .Where(i => _steps.Steps[i].Presence == Presence.Hands && _progress[i].Done is null)
            .OrderBy(i => _progress[i].Begun is null).ThenBy(i => _planned[i]).ThenBy(i => i);
        foreach (var i in open)
        {
            var end = _planned[i] + _lengths[i];

            // Of those who are free then, who can do the least; else who is free first.
            var able = crew.PeopleFor(_steps.Steps[i].Kind, _steps.Steps[i].Number).ToList();
            var lane = able.OrderBy(person => Math.Max(lanes[person].End, _planned[i])).ThenBy(crew.RankOf).ThenBy(person => lanes[person].End).First();
            if (lanes[lane].Last < 0)
            {
                _firstOfLane.Add(i);
            }
            else
            {
                _chains.Add(new Lag(lanes[lane].Last, i, _steps.Steps[lanes[lane].Last].Minutes, lanes[lane].Last));
            }

            lanes[lane] = (i, Math.Max(end, lanes[lane].End));
        }

        foreach (var station in _steps.Stations)
        {
            ChainPlaces(station);
        }
    }

    /// <summary>Each ring of the hob keeps its steps in the planned order, and so does the oven.</summary>
    private void ChainPlaces(SharedResource station)
    {
        var places = Enumerable.Repeat((Last: -1, End: int.MinValue), station.Capacity).ToArray();
        foreach (var i in station.Uses.Select(use => use.Task).Where(i => !IsDone(i)).OrderBy(i => _progress[i].Begun is null).ThenBy(i => _planned[i]).ThenBy(i => i))
        {
            var place = Enumerable.Range(0, places.Length).MinBy(one => places[one].End);
            if (places[place].Last >= 0)
            {
                _chains.Add(new Lag(places[place].Last, i, _steps.Steps[places[place].Last].Minutes, places[place].Last));
            }

            places[place] = (i, _planned[i] + _lengths[i]);
        }
    }

    private void Expect()
    {
        for (var i = 0; i < Starts.Length; i++)
        {
            var (begun, done) = _progress[i];
            Starts[i] = begun ?? (done is { } at ? Math.Min(_planned[i], at) : Earliest(i));
            if (done is { } end)
            {
                _lengths[i] = Math.Max(0, end - Starts[i]);
            }
        }

        if (!Settle(lag => !_steps.ReachesAhead(lag)))
        {
            // Greatest lags that contradict what is begun: the least ones hold, the others are told as broken.
            for (var i = 0; i < Starts.Length; i++)
            {
                Starts[i] = IsFixed(i) ? Starts[i] : Earliest(i);
            }

            Settle(lag => lag.Minutes >= 0);
        }
    }

    private int Earliest(int i)
    {
        var wanted = Math.Max(_planned[i], _notBefore[i]);
        return _steps.Steps[i].Presence == Presence.Hands
            ? Free(i, Math.Max(wanted, _handsFree))
            : Free(i, Math.Max(wanted, _now));
    }

    /// <summary>It has begun or is over: nothing moves it any more.</summary>
    public bool IsFixed(int i) => _progress[i].Begun is not null || _progress[i].Done is not null;

    /// <summary>Pushes every step behind what it must come after; false when the lags never agree.</summary>
    private bool Settle(Func<Lag, bool> counts)
    {
        var lags = _steps.Lags.Concat(_chains).Where(counts).ToList();
        for (var round = 0; round <= Starts.Length; round++)
        {
            var moved = false;
            foreach (var lag in lags)
            {
                var start = Starts[lag.From] + MinutesOf(lag);
                if (start > Starts[lag.To] && !IsFixed(lag.To))
                {
                    Starts[lag.To] = Free(lag.To, start);
                    moved = true;
                }
            }

            if (!moved)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Work that is to begin keeps out of the host's unavailable hours; what should run by now is not moved.</summary>
    private int Free(int i, int minute) => minute <= _now ? minute : AwayFor(i).NextFree(minute, _steps.Steps[i].FreeMinutes);

    /// <summary>The hours that hold for a step now.</summary>
    public AwayWindows AwayFor(int i) => _steps.Steps[i].Kind is StepKind.Temper or StepKind.Preheat or StepKind.SecondMix or StepKind.Shape or StepKind.Top or StepKind.Bake or StepKind.Serve
        ? _breaks
        : _steps.Night.Away;

    /// <summary>The lag with the length that its step turned out to have.</summary>
    public int MinutesOf(Lag lag) => lag.LengthOf is not { } step ? lag.Minutes
        : lag.Minutes + (step == lag.From ? 1 : -1) * (_lengths[step] - _steps.Steps[step].Minutes);
}
