using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Live;

/// <summary>Each step of the timeline as it stands: those that are placed, and those that follow from them.</summary>
internal sealed class LiveSteps(NightSteps steps, Retiming retiming, Taps taps, Instant now)
{
    private readonly Dictionary<string, int> _indexOf =
        steps.Steps.Index().ToDictionary(step => TimelineSteps.IdOf(step.Item.Kind, step.Item.Number), step => step.Index);

    public NightSteps Steps => steps;

    public LiveStep Of(TimelineStep planned) => planned.Kind switch
    {
        _ when _indexOf.TryGetValue(planned.Id, out var i) => new LiveStep(planned, Start(i), End(i), StateOf(i), IsTapped: true, retiming.EndsItself(i)),
        StepKind.Rack => Following(planned, steps.Pies[planned.Number - 1].Bake, IsDone(steps.Pies[planned.Number - 1].Serve)),
        StepKind.Soak => Following(planned, steps.Preheat, IsDone(steps.Pies[0].Top)),
        StepKind.SecondRise when steps is { SecondMix: { } mix, Night.SecondDough: { } second } =>
            Following(planned, mix, IsDone(steps.Pies[second.FirstPie - 1].Top)),
        StepKind.BulkRest when Batch(planned) is { } batch => Following(planned, batch.Knead, IsDone(batch.Ball)),
        StepKind.PutAway => Following(planned, steps.Pies[^1].Serve, isOver: false),
        StepKind.ColdFerment => Cold(planned, Batch(planned) is { } batch ? End(batch.Ball) : planned.Start),
        _ => new LiveStep(planned, planned.Start, planned.End, By(planned.Start, planned.End), IsTapped: false, StartsItself: false),
    };

    public Instant Start(int i) => taps.Begun(i) ?? steps.Night.Clock.At(retiming.Starts[i]);

    public Instant End(int i) => taps.Done(i) ?? Start(i) + Duration.FromMinutes(retiming.Lengths[i]);

    public bool IsDone(int i) => retiming.IsDone(i);

    public bool IsBegun(int i) => taps.Begun(i) is not null;

    private LiveState StateOf(int i) => retiming.IsDone(i) ? LiveState.Done
        : retiming.IsRunning(i) ? LiveState.Running
        : retiming.EndsItself(i) && Start(i) <= now ? LiveState.Due
        : LiveState.Later;

    private BatchSteps? Batch(TimelineStep planned) => planned.Number <= steps.Batches.Count && steps.Batches.Count > 0 ? steps.Batches[planned.Number - 1] : null;

    private LiveStep Following(TimelineStep planned, int after, bool isOver)
    {
        var start = End(after);
        var end = start + (planned.End - planned.Start);
        var state = isOver ? LiveState.Done : !retiming.IsDone(after) ? LiveState.Later : By(start, end);
        return new LiveStep(planned, start, end, state, IsTapped: false, StartsItself: false);
    }

    private LiveStep Cold(TimelineStep planned, Instant start)
    {
        var (wave, isOut) = (steps.Waves[0], IsBegun(steps.Waves[0]));
        return new LiveStep(
            planned, start, Start(wave), isOut ? LiveState.Done : start <= now ? LiveState.Running : LiveState.Later, IsTapped: false, StartsItself: false);
    }

    private LiveState By(Instant start, Instant end) => end <= now ? LiveState.Done : start <= now ? LiveState.Running : LiveState.Later;
}
