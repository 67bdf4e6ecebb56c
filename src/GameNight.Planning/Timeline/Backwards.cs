using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>
/// Plans the host's time backwards from the moment the first pie is on the table: pies, oven, balls out of the fridge,
/// preparations, dough and shopping. Never moves that moment by itself: what cannot work is a conflict with the nearest
/// thing that would.
/// </summary>
/// <remarks>
/// The host's unavailable hours hold for helpers too: they come to the host's kitchen. Work with hands and the baking of a
/// pie lie wholly outside them, taking balls out and switching the oven on begin outside them, everything else runs through.
/// </remarks>
public static class Backwards
{
    /// <exception cref="ArgumentException">A count or a duration of the request is out of its range.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled; there is no answer in part.</exception>
    /// <exception cref="InvalidOperationException">The answer failed its own check: a defect, never the host's doing.</exception>
    public static HostTimeline From(TimelineRequest request, Effort effort, CancellationToken cancellation)
    {
        if (request.Pies == 0)
        {
            return Nothing([]);
        }

        if (request.ServeAt <= request.Now)
        {
            return Nothing([new ServingTimeHasPassed(request.ServeAt)]);
        }

        var timeline = request.MixAt is { } mixAt
            ? WithChosenMixTime(request, mixAt, effort, cancellation)
            : WithFreeMixTime(request, effort, cancellation);
        if (timeline.Steps.Count > 0)
        {
            TimelineCheck.Require(request, timeline);
        }

        return timeline;
    }

    private static HostTimeline WithChosenMixTime(
        TimelineRequest request, Instant mixAt, Effort effort, CancellationToken cancellation)
    {
        var night = new NightInMinutes(request);
        if (Attempt(night, effort, cancellation) is { } asChosen)
        {
            return asChosen;
        }

        var free = request with { MixAt = null };
        var timeline = WithFreeMixTime(free, effort, cancellation);
        if (timeline.DoughCommitment is not { } mixing)
        {
            // The night does not work at any mixing time, so the chosen one is not what stands in the way.
            return timeline;
        }

        var range = QuickPlacement.MixRange(new NightInMinutes(free));
        var misfit = new ChosenMixTimeDoesNotFit(
            mixAt,
            range is { } some ? Instant.Min(mixing, night.Clock.At(some.Earliest)) : mixing,
            range is { } other ? Instant.Max(mixing, night.Clock.At(other.Latest)) : mixing);
        return timeline with { Conflicts = [misfit, .. timeline.Conflicts] };
    }

    private static HostTimeline WithFreeMixTime(
        TimelineRequest request, Effort effort, CancellationToken cancellation) =>
        Attempt(new NightInMinutes(request), effort, cancellation)
        ?? Nothing(NearestFix.For(request, cancellation));

    /// <summary>A timeline, or null when none was found.</summary>
    private static HostTimeline? Attempt(NightInMinutes night, Effort effort, CancellationToken cancellation)
    {
        var quick = QuickPlacement.Of(night);
        if (effort.Slices == 0)
        {
            return quick.Works ? Timeline(quick.Steps, quick.Starts, TimelineQuality.Quick, 0, 0) : null;
        }

        var steps = quick.Steps;
        var network = steps.Network();
        var (earliest, latest) = steps.Bounds(night.Now);
        if (network.FindCycle() is not null || !network.Narrow(earliest, latest, steps, out _))
        {
            return null;
        }

        var terms = NightCost.Terms(steps);
        var found = NightScheduleModel.Solve(
            steps, terms, earliest, latest, quick.Works ? quick.Starts : null, effort, cancellation, out var slices);
        if (found is null)
        {
            return null;
        }

        // The solver starts from the quick answer; should it ever end worse, the quick one stands.
        return quick.Works && quick.Cost < NightCost.Of(steps, terms, found.Starts)
            ? Timeline(steps, quick.Starts, TimelineQuality.Quick, found.GapPercent, slices)
            : Timeline(
                steps,
                found.Starts,
                found.IsProved ? TimelineQuality.Proved : TimelineQuality.BestFound,
                found.GapPercent,
                slices);
    }

    private static HostTimeline Timeline(
        NightSteps steps, int[] starts, TimelineQuality quality, double gapPercent, int slices)
    {
        var clock = steps.Night.Clock;
        var firstOut = starts[steps.Waves[0]];
        var lastBalled = steps.Batches.Max(batch => starts[batch.Ball] + steps.Steps[batch.Ball].Minutes);
        var lastPie = starts[steps.Pies[^1].Serve] + steps.Night.Serve;
        return new HostTimeline(
            TimelineSteps.From(steps, starts),
            AnswerBy: clock.At(starts[steps.Shop]),
            DoughCommitment: clock.At(starts[steps.Batches[0].Mix]),
            ColdFermentLength: Duration.FromMinutes(firstOut - lastBalled),
            FirstPieAt: clock.At(starts[steps.Pies[0].Serve] + steps.Night.Serve),
            LastPieAt: clock.At(lastPie),
            quality,
            gapPercent,
            slices,
            NearestFix.ForLastPie(steps.Night, lastPie) is { } late ? [late] : []);
    }

    private static HostTimeline Nothing(IReadOnlyList<Conflict> conflicts) => new(
        [], null, null, Duration.Zero, null, null, TimelineQuality.Quick, 0, 0, conflicts);
}
