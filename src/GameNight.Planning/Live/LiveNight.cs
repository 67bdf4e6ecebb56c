using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Live;

/// <summary>Works out how a night stands from its plan and from what was tapped; the same for every device that asks.</summary>
public static class LiveNight
{
    private const int MostHands = 8;

    /// <param name="request">What the timeline was made from.</param>
    /// <param name="timeline">With all its steps.</param>
    /// <param name="marks">In any order; none that was taken back.</param>
    /// <returns>Null when the timeline has no pie on the table, or was made from another request and is being made anew.</returns>
    public static LiveEvening? Of(TimelineRequest request, HostTimeline timeline, IReadOnlyList<LiveMark> marks, Instant now, StepTable table)
    {
        if (timeline is not { FirstPieAt: not null, LastPieAt: { } plannedLast })
        {
            return null;
        }

        var night = new NightInMinutes(OwnSteps.Of(request, timeline));
        if (PlacedSteps.Of(night, timeline) is not var (steps, planned))
        {
            return null;
        }

        var taps = new Taps(steps, planned, [.. marks.OrderBy(mark => mark.At).ThenBy(mark => mark.Id, StringComparer.Ordinal)], night.Clock, table);
        var hands = Math.Clamp(taps.Hands ?? night.Hands, 1, MostHands);
        var retiming = new Retiming(steps, planned, taps.Progress, taps.NotBefore, taps.Longer, hands, night.Clock.Before(now));
        var view = new LiveSteps(steps, retiming, taps, now);
        var live = timeline.Steps.Select(view.Of).OrderBy(step => step.Start).ThenBy(step => step.Kind).ThenBy(step => step.Number).ToList();
        var last = view.End(steps.Pies[^1].Serve);

        return new LiveEvening(
            live,
            live.Where(step => step is { IsTapped: true, State: not LiveState.Done, Kind: not StepKind.Bake } && !(step.StartsItself && step.State == LiveState.Running))
                .OrderBy(step => step.Start).ThenByDescending(step => step.StartsItself).ThenBy(step => step.Planned.Start).FirstOrDefault(),
            [.. LiveClocks.Of(live, view, taps, now).OrderBy(clock => clock.Ends).ThenBy(clock => clock.Id, StringComparer.Ordinal)],
            [.. Risks(steps, retiming)],
            last,
            Duration.Max(Duration.Zero, last - plannedLast),
            hands);
    }

    /// <summary>Limits that are broken whatever is done now, once for each thing that waits.</summary>
    private static IEnumerable<LiveRisk> Risks(NightSteps steps, Retiming retiming) =>
        from broken in retiming.Broken
        let first = broken.Lag.LengthOf
        where first == broken.Lag.To && !retiming.IsDone(broken.Lag.From)
        let waiting = steps.Steps[broken.Lag.To]
        select new LiveRisk(waiting.Kind, steps.Steps[broken.Lag.From].Kind, waiting.Number, Duration.FromMinutes(broken.Over));
}
