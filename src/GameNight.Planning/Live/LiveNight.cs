using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Live;

/// <summary>Works out how a night stands from its plan and from what was tapped; the same for every device that asks.</summary>
public static class LiveNight
{
    private const int MostHands = 8;

    /// <summary>Less than this is not worth a new order to somebody who has the old one in mind.</summary>
    private const int LeastMinutesGained = 3;

    /// <param name="request">What the timeline was made from.</param>
    /// <param name="timeline">With all its steps.</param>
    /// <param name="marks">In any order; none that was taken back.</param>
    /// <returns>Null when the timeline has no pie on the table, or was made from another request and is being made anew.</returns>
    public static LiveEvening? Of(TimelineRequest request, HostTimeline timeline, IReadOnlyList<LiveMark> marks, Instant now, StepTable table)
    {
        if (Standing.Of(request, timeline, marks, now, table) is not { } standing)
        {
            return null;
        }

        var (steps, taps, retiming, hands) = standing;
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
            Duration.Max(Duration.Zero, last - timeline.LastPieAt!.Value),
            hands);
    }

    /// <summary>
    /// Another order of what is left, where keeping the order breaks a limit or makes the table wait. An offer: it counts
    /// once somebody taps <see cref="LiveMarkKind.NewOrder"/>.
    /// </summary>
    /// <param name="request">What the timeline was made from.</param>
    /// <returns>Null when nothing is broken or late, or no better order was found within the effort.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was signalled.</exception>
    public static LiveOrder? AnotherOrder(
        TimelineRequest request, HostTimeline timeline, IReadOnlyList<LiveMark> marks, Instant now, StepTable table, Effort effort, CancellationToken cancellation)
    {
        if (Standing.Of(request, timeline, marks, now, table) is not { } kept)
        {
            return null;
        }

        var (steps, taps, retiming, hands) = kept;
        var clock = steps.Night.Clock;
        if ((clock.At(kept.LastPie) <= timeline.LastPieAt && retiming.Broken.Count == 0)
            || Reordering.Of(steps, retiming, taps.NotBefore, hands, clock.Before(now), effort, cancellation) is not { } starts)
        {
            return null;
        }

        // What is offered is what comes of it when it is taken, not what the search thinks.
        var taken = kept.With(starts, clock.Before(now));
        var (lessOver, sooner) = (kept.Over - taken.Over, kept.LastPie - taken.LastPie);
        if (lessOver < 0 || Math.Max(lessOver, sooner) < LeastMinutesGained || (lessOver == 0 && sooner < 0))
        {
            return null;
        }

        return new LiveOrder(
            steps.Steps.Index().ToDictionary(step => TimelineSteps.IdOf(step.Item.Kind, step.Item.Number), step => clock.At(starts[step.Index])),
            [
                .. steps.Steps.Index()
                    .Where(step => step.Item.Presence is Presence.Hands or Presence.AtStart && !taken.Retiming.IsFixed(step.Index) && !taken.Retiming.IsRunning(step.Index))
                    .OrderBy(step => taken.Retiming.Starts[step.Index]).ThenBy(step => step.Index)
                    .Select(step => new LiveWork(
                        step.Item.Kind, step.Item.Number, clock.At(taken.Retiming.Starts[step.Index]), clock.At(retiming.Starts[step.Index]))),
            ],
            Duration.FromMinutes(lessOver),
            clock.At(taken.LastPie),
            Duration.FromMinutes(sooner));
    }

    /// <summary>Limits that are broken whatever is done now, once for each thing that waits.</summary>
    private static IEnumerable<LiveRisk> Risks(NightSteps steps, Retiming retiming) =>
        from broken in retiming.Broken
        let first = broken.Lag.LengthOf
        where first == broken.Lag.To && !retiming.IsDone(broken.Lag.From)
        let waiting = steps.Steps[broken.Lag.To]
        select new LiveRisk(waiting.Kind, steps.Steps[broken.Lag.From].Kind, waiting.Number, Duration.FromMinutes(broken.Over));

    /// <summary>The plan, the taps, and the rest of the night as it follows from both.</summary>
    private sealed record Standing(NightSteps Steps, Taps Taps, Retiming Retiming, int Hands)
    {
        public static Standing? Of(TimelineRequest request, HostTimeline timeline, IReadOnlyList<LiveMark> marks, Instant now, StepTable table)
        {
            if (timeline is not { FirstPieAt: not null, LastPieAt: not null })
            {
                return null;
            }

            var night = new NightInMinutes(OwnSteps.Of(request, timeline));
            if (PlacedSteps.Of(night, timeline) is not var (steps, planned))
            {
                return null;
            }

            var inOrder = marks.OrderBy(mark => mark.At).ThenBy(mark => mark.Id, StringComparer.Ordinal).ToArray();
            var taps = new Taps(steps, planned, inOrder, night.Clock, table);
            var hands = Math.Clamp(taps.Hands ?? night.Hands, 1, MostHands);

            // What taps say of the past does not change with the order of what is left.
            planned = inOrder.Select(mark => InNewOrder(steps, mark)).OfType<int[]>().LastOrDefault() ?? planned;
            return new Standing(
                steps, taps, new Retiming(steps, planned, taps.Progress, taps.NotBefore, taps.Longer, hands, night.Clock.Before(now)), hands);
        }

        /// <summary>When the last pie is on the table, in minutes of the serving clock.</summary>
        public int LastPie => Retiming.Starts[Steps.Pies[^1].Serve] + Retiming.Lengths[Steps.Pies[^1].Serve];

        /// <summary>Minutes by which limits are broken, all together.</summary>
        public int Over => Retiming.Broken.Sum(broken => broken.Over);

        /// <summary>The same night if what is left goes on in another order.</summary>
        public Standing With(int[] starts, int now) =>
            this with { Retiming = new Retiming(Steps, starts, Taps.Progress, Taps.NotBefore, Taps.Longer, Hands, now) };

        /// <summary>Null when the mark is another, or was made for other steps than there are now.</summary>
        private static int[]? InNewOrder(NightSteps steps, LiveMark mark)
        {
            if (mark is not { Kind: LiveMarkKind.NewOrder, Starts: { } starts } || starts.Count != steps.Steps.Count)
            {
                return null;
            }

            var placed = steps.Steps.Select(step => starts.TryGetValue(TimelineSteps.IdOf(step.Kind, step.Number), out var at) ? (int?)steps.Night.Clock.Before(at) : null).ToList();
            return placed.TrueForAll(start => start is not null) ? [.. placed.Select(start => start!.Value)] : null;
        }
    }
}
