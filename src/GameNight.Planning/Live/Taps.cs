using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Live;

/// <summary>What the taps say of each step: when it began, when it was done, what holds it up.</summary>
internal sealed class Taps
{
    /// <summary>Something planned so much after an own step is tapped: the own step was done, and nobody said so.</summary>
    private static readonly Duration OwnStepForgotten = Duration.FromMinutes(30);

    private readonly Dictionary<int, Instant> _begun = [];
    private readonly Dictionary<int, Instant> _done = [];

    /// <param name="marks">Who was tapped first, first.</param>
    public Taps(NightSteps steps, int[] planned, IReadOnlyList<LiveMark> marks, ServingClock clock, StepTable table)
    {
        Marks = marks;
        var indexOf = steps.Steps.Index().ToDictionary(step => TimelineSteps.IdOf(step.Item.Kind, step.Item.Number), step => step.Index);
        NotBefore = new int[steps.Steps.Count];
        Longer = new int[steps.Steps.Count];
        Array.Fill(NotBefore, int.MinValue);
        foreach (var mark in marks)
        {
            switch (mark)
            {
                case { Kind: LiveMarkKind.StepBegun, Step: { } id } when indexOf.TryGetValue(id, out var i):
                    _begun.TryAdd(i, mark.At);
                    break;
                case { Kind: LiveMarkKind.StepDone, Step: { } id } when indexOf.TryGetValue(id, out var i):
                    _done.TryAdd(i, mark.At);
                    break;
                case { Kind: LiveMarkKind.NotBefore, Until: { } until }:
                    HoldHands(steps, clock.After(until));
                    break;
                case { Kind: LiveMarkKind.HandsNow, Hands: { } hands }:
                    Hands = hands;
                    break;
                case { Kind: LiveMarkKind.WentWrong, Step: { } id, Trouble: { } trouble } when indexOf.TryGetValue(id, out var i):
                    WentWrong(steps, i, table.Of(trouble), clock.After(mark.At));
                    break;
                default:
                    break;
            }
        }

        Imply(steps, planned, clock);
        Progress = [.. Enumerable.Range(0, steps.Steps.Count).Select(i => new StepProgress(
            Begun(i) is { } begun ? clock.Before(begun) : null,
            Done(i) is { } done ? clock.Before(done) : null))];
    }

    public IReadOnlyList<LiveMark> Marks { get; }

    public StepProgress[] Progress { get; }

    /// <summary>Per step, in minutes of the clock.</summary>
    public int[] NotBefore { get; }

    public int[] Longer { get; }

    /// <summary>Null when nobody said.</summary>
    public int? Hands { get; private set; }

    public Instant? Begun(int i) => _begun.TryGetValue(i, out var at) ? at : null;

    public Instant? Done(int i) => _done.TryGetValue(i, out var at) ? at : null;

    private void HoldHands(NightSteps steps, int until)
    {
        for (var i = 0; i < NotBefore.Length; i++)
        {
            if (steps.Steps[i].Presence == Presence.Hands && !_done.ContainsKey(i))
            {
                NotBefore[i] = Math.Max(NotBefore[i], until);
            }
        }
    }

    private void WentWrong(NightSteps steps, int i, TroubleRow row, int at)
    {
        var minutes = (int)Math.Ceiling(row.Minutes);
        switch (row.Effect)
        {
            case TroubleEffect.Waits:
                NotBefore[i] = Math.Max(NotBefore[i], at + minutes);
                break;
            case TroubleEffect.TakesLonger:
                Longer[i] += minutes;
                break;
            case TroubleEffect.AllTakeLonger:
                for (var j = 0; j < Longer.Length; j++)
                {
                    Longer[j] += steps.Steps[j].Kind == row.Step && !_done.ContainsKey(j) ? minutes : 0;
                }

                break;
            case TroubleEffect.Nothing:
                break;
        }
    }

    /// <summary>Who taps that a pie is served need not tap what came before it; nor of the dough that is in it.</summary>
    private void Imply(NightSteps steps, int[] planned, ServingClock clock)
    {
        ImplyPies(steps, planned, clock);
        if (steps.Waves.Select(Begun).OfType<Instant>().ToList() is { Count: > 0 } waves)
        {
            foreach (var batch in steps.Batches)
            {
                WasDone(batch.Ball, waves.Min());
            }
        }

        foreach (var batch in steps.Batches)
        {
            if (Done(batch.Ball) is { } balled)
            {
                _begun.TryAdd(batch.Knead, Earlier(clock.At(planned[batch.Knead]), balled));
                WasDone(batch.Knead, balled);
            }

            if ((Done(batch.Knead) ?? Begun(batch.Knead)) is { } kneaded)
            {
                WasDone(batch.Mix, kneaded);
            }

            if (batch.Wake is { } wake && Done(batch.Mix) is { } mixed)
            {
                _begun.TryAdd(wake, Earlier(clock.At(planned[wake]), mixed));
            }
        }

        ImplyOwn(steps, planned, clock);
        if (steps.Batches.Select(batch => Done(batch.Mix)).OfType<Instant>().ToList() is { Count: > 0 } mixes)
        {
            foreach (var before in new[] { steps.Shop, steps.Preferment }.OfType<int>())
            {
                WasDone(before, mixes.Min());
            }
        }

        // Nothing is told twice: what was told stays, the rest was over when it was planned to be, or just before.
        void WasDone(int i, Instant latest) =>
            _done.TryAdd(i, Earlier(clock.At(planned[i] + steps.Steps[i].Minutes), latest));
    }

    private void ImplyOwn(NightSteps steps, int[] planned, ServingClock clock)
    {
        foreach (var own in steps.Own.Where(own => Done(own) is null && Begun(own) is null))
        {
            var forgotten = clock.At(planned[own] + steps.Steps[own].Minutes) + OwnStepForgotten;
            var tapped = _begun.Concat(_done).Where(tap => clock.At(planned[tap.Key]) >= forgotten).Select(tap => (Instant?)tap.Value).Min();
            if (tapped is { } at)
            {
                _done[own] = Earlier(clock.At(planned[own] + steps.Steps[own].Minutes), at);
            }
        }
    }

    private void ImplyPies(NightSteps steps, int[] planned, ServingClock clock)
    {
        for (var p = 0; p < steps.Pies.Count; p++)
        {
            var pie = steps.Pies[p];
            foreach (var (before, after) in new[] { (pie.Bake, pie.Serve), (pie.Top, pie.Bake), (pie.Shape, pie.Top) })
            {
                if ((Done(after) ?? Begun(after)) is { } at)
                {
                    _done.TryAdd(before, at);
                }
            }

            if (Done(pie.Top) is { } topped)
            {
                foreach (var preparation in steps.Preparations)
                {
                    _done.TryAdd(preparation, Earlier(clock.At(planned[preparation] + steps.Steps[preparation].Minutes), topped));
                }

                _begun.TryAdd(pie.Bake, topped);
                _begun.TryAdd(steps.Preheat, Earlier(clock.At(planned[steps.Preheat]), topped));
            }

            if (Done(pie.Shape) is { } shaped)
            {
                var wave = steps.Waves[steps.WaveOfPie[p]];
                _begun.TryAdd(wave, Earlier(clock.At(planned[wave]), shaped));
            }
        }
    }

    private static Instant Earlier(Instant one, Instant other) => one < other ? one : other;
}
