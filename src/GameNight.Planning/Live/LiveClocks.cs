using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Live;

/// <summary>The clocks that run: each is the end of something that began, so any device shows the same.</summary>
internal static class LiveClocks
{
    public static IEnumerable<LiveClock> Of(IReadOnlyList<LiveStep> live, LiveSteps view, Taps taps, Instant now)
    {
        var heard = taps.Marks.Where(mark => mark.Kind == LiveMarkKind.ClockHeard).Select(mark => mark.Step).ToHashSet();
        return Running(live, view, taps, now)
            .Concat(taps.Marks
                .Where(mark => mark is { Kind: LiveMarkKind.ClockSet, Until: not null })
                .Select(mark => new LiveClock(mark.Id, LiveClockKind.Own, 0, mark.Until!.Value, mark.Name)))
            .Where(clock => !heard.Contains(clock.Id));
    }

    private static IEnumerable<LiveClock> Running(IReadOnlyList<LiveStep> live, LiveSteps view, Taps taps, Instant now)
    {
        var steps = view.Steps;
        foreach (var (p, pie) in steps.Pies.Index())
        {
            if (view.IsBegun(pie.Bake) && !view.IsDone(pie.Bake))
            {
                yield return new LiveClock(Id(LiveClockKind.PieOut, p + 1), LiveClockKind.PieOut, p + 1, view.Start(pie.Bake) + Minutes(steps.Night.Bake + taps.Longer[pie.Bake]));
            }

            if (view.IsDone(pie.Bake) && !view.IsDone(pie.Serve))
            {
                yield return new LiveClock(
                    Id(LiveClockKind.OffTheRack, p + 1), LiveClockKind.OffTheRack, p + 1, view.End(pie.Bake) + Minutes(steps.Night.Rack));
            }

            var next = p + steps.Night.PiesPerBake;
            if (view.IsDone(pie.Bake) && next < steps.Pies.Count && !view.IsBegun(steps.Pies[next].Bake)
                && view.End(pie.Bake) + Minutes(steps.Night.Recovery) is var back && back > now)
            {
                yield return new LiveClock(Id(LiveClockKind.SurfaceReady, next + 1), LiveClockKind.SurfaceReady, next + 1, back);
            }
        }

        foreach (var (w, wave) in steps.Waves.Index())
        {
            // Once the first pie of the wave is shaped nobody asks any more.
            if (view.IsBegun(wave) && !view.IsDone(steps.Pies[steps.WaveOfPie.ToList().IndexOf(w)].Shape))
            {
                var number = steps.Waves.Count > 1 ? w + 1 : 0;
                yield return new LiveClock(Id(LiveClockKind.BallsReady, number), LiveClockKind.BallsReady, number, view.Start(wave) + Minutes(steps.Night.Temper));
            }
        }

        if (view.IsBegun(steps.Preheat) && !view.IsDone(steps.Pies[0].Top))
        {
            var hot = view.End(steps.Preheat);
            yield return hot > now
                ? new LiveClock(Id(LiveClockKind.AirHot, 0), LiveClockKind.AirHot, 0, hot)
                : new LiveClock(Id(LiveClockKind.SurfaceSoaked, 0), LiveClockKind.SurfaceSoaked, 0, hot + Minutes(steps.Night.Soak));
        }

        // Each pie counts from its own serving: the first one is told of by itself, the last one for all that is left.
        if (steps.Night.Holding is { } holding)
        {
            foreach (var (number, pie) in new[] { (1, steps.Pies[0]), (0, steps.Pies[^1]) }.Skip(steps.Pies.Count == 1 ? 1 : 0))
            {
                if (view.IsDone(pie.Serve))
                {
                    yield return new LiveClock(Id(LiveClockKind.PutAway, number), LiveClockKind.PutAway, number, view.End(pie.Serve) + Minutes(holding));
                }
            }
        }

        foreach (var (b, batch) in steps.Batches.Index())
        {
            if (batch.Wake is { } wake && view.IsBegun(wake) && !view.IsDone(batch.Mix))
            {
                // A second try foams later, and mixing waits for it.
                var mixing = TimelineSteps.IdOf(StepKind.Mix, b + 1);
                var isAgain = taps.Marks.Any(mark => mark is { Kind: LiveMarkKind.WentWrong, Trouble: StepTrouble.NoFoam } && mark.Step == mixing);
                yield return new LiveClock(
                    Id(LiveClockKind.YeastFoams, b + 1), LiveClockKind.YeastFoams, b + 1, isAgain ? steps.Night.Clock.At(taps.NotBefore[batch.Mix]) : view.End(wake));
            }
        }

        foreach (var rest in live.Where(step => step is { Kind: StepKind.BulkRest, State: not LiveState.Done, IsTapped: false }))
        {
            if (rest.Number <= steps.Batches.Count && view.IsDone(steps.Batches[rest.Number - 1].Knead))
            {
                yield return new LiveClock(Id(LiveClockKind.DoughRested, rest.Number), LiveClockKind.DoughRested, rest.Number, rest.End);
            }
        }
    }

    private static string Id(LiveClockKind kind, int number) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{kind}-{number}");

    private static Duration Minutes(int minutes) => Duration.FromMinutes(minutes);
}
