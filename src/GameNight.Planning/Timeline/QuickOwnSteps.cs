namespace GameNight.Planning.Timeline;

/// <summary>
/// Places own steps among what stands already: what follows something as soon as it can, everything else as late as its
/// limits allow.
/// </summary>
internal sealed class QuickOwnSteps
{
    private static readonly StepKind[] OfDough = [StepKind.Shop, StepKind.Preferment, StepKind.WakeYeast, StepKind.Mix, StepKind.Knead, StepKind.Ball];

    private readonly NightSteps _steps;
    private readonly int[] _starts;
    private readonly HandsCalendar _hands;
    private readonly int _now;
    private readonly List<(int First, int Then)> _pairs;
    private readonly List<int> _order;
    private readonly bool[] _waitsForDough;

    /// <param name="starts">Of all steps; those of pies, oven and preparations are known.</param>
    public QuickOwnSteps(NightSteps steps, int[] starts, HandsCalendar hands, int now)
    {
        (_steps, _starts, _hands, _now) = (steps, starts, hands, now);
        List<OwnStep> own = [.. steps.Night.Own.Select(one => one.Step)];
        _pairs = [.. OwnSteps.Pairs(own)];
        _order = [.. OwnSteps.InOrder(own) ?? throw new ArgumentException("Own steps run in a circle.", nameof(steps))];
        _waitsForDough = WithDough();
    }

    public bool AnyWithDough => _waitsForDough.Contains(true);

    /// <returns>What found no time, or null.</returns>
    public Stuck? PlaceBeforeDough(List<TakenHands> taken) => Place(false, taken);

    /// <summary>Once the dough stands: what is tied to it, and what lies days before the pies.</summary>
    public Stuck? PlaceWithDough(List<TakenHands> taken) => Place(true, taken);

    private Stuck? Place(bool withDough, List<TakenHands> taken)
    {
        var latest = new int[_order.Count];
        foreach (var i in _order.AsEnumerable().Reverse().Where(i => _waitsForDough[i] == withDough))
        {
            var own = _steps.Night.Own[i];
            latest[i] = _steps.NextOf(own).Where(next => !IsOwn(next)).Select(next => _starts[next] - own.Minutes)
                .Concat(_pairs.Where(pair => pair.First == i).Select(pair => latest[pair.Then] - own.Minutes))
                .Append(own.Latest).Min();
        }

        foreach (var i in _order.Where(i => _waitsForDough[i] == withDough))
        {
            var (own, index) = (_steps.Night.Own[i], _steps.Own[i]);
            List<int> after = [.. _steps.Tied(own.Step.After)];
            List<int> before = [.. _steps.BeforeOf(own)];
            var ended = before.Concat(_pairs.Where(pair => pair.Then == i).Select(pair => _steps.Own[pair.First]))
                .Select(one => _starts[one] + _steps.Steps[one].Minutes).ToList();
            var earliest = ended.Append(_now).Append(own.Earliest).Max();
            var last = after.Count > 0
                ? Math.Min(latest[i], _starts[after[^1]] + _steps.Steps[after[^1]].Minutes + ServingClock.LengthDown(TimelineLimits.OwnStepAfter))
                : latest[i];
            if (Find(own, earliest, last, isSoon: ended.Count > 0) is not { } start)
            {
                return new Stuck(StepKind.Own, own.Step.Number);
            }

            _starts[index] = start;
            if (!own.IsAtOneTime)
            {
                taken.Add(_hands.Take(StepKind.Own, own.Step.Number, start, own.Minutes, own.Step.NeedsHands));
            }
        }

        return null;
    }

    private int? Find(OwnInMinutes own, int earliest, int latest, bool isSoon)
    {
        if (earliest > latest)
        {
            return null;
        }

        // What a step at one time takes was taken before everything else.
        return own.IsAtOneTime ? earliest
            : isSoon ? _hands.Earliest(StepKind.Own, own.Step.Number, earliest, latest, own.Minutes, own.Step.NeedsHands)
            : _hands.Latest(StepKind.Own, own.Step.Number, earliest, latest, own.Minutes, own.Step.NeedsHands);
    }

    /// <summary>Tied to the dough by itself or by another, or over before the first balls are out.</summary>
    private bool[] WithDough()
    {
        var with = new bool[_order.Count];
        if (_steps.Shop is null)
        {
            return with;
        }

        foreach (var (i, own) in _steps.Night.Own.Index())
        {
            with[i] = new[] { own.Step.After, own.Step.Before }.Any(tie => tie is not null && OfDough.Contains(tie.Step))
                || own.Latest < _starts[_steps.Waves[0]];
        }

        for (var round = 0; round < with.Length; round++)
        {
            foreach (var (first, then) in _pairs)
            {
                with[first] = with[then] = with[first] || with[then];
            }
        }

        return with;
    }

    private bool IsOwn(int step) => _steps.Steps[step].Kind == StepKind.Own;
}
