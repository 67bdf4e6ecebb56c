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
            return Nothing(request, []);
        }

        if (request.ServeAt <= request.Now)
        {
            return Nothing(request, [new ServingTimeHasPassed(request.ServeAt)]);
        }

        var all = OwnSteps.StillToCome(request);
        var timeline = all.Own is { } own ? WithOwnSteps(all, own, effort, cancellation) : Placed(all, effort, cancellation);
        timeline = timeline with { AnswerBy = AnswersClose(timeline.Steps, request) };
        if (timeline.FirstPieAt is not null)
        {
            TimelineCheck.Require(request, timeline);
        }

        return timeline;
    }

    private static HostTimeline Placed(TimelineRequest request, Effort effort, CancellationToken cancellation) =>
        request is { BegunDough: null, MixAt: { } mixAt }
            ? WithChosenMixTime(request, mixAt, effort, cancellation)
            : WithFreeMixTime(request, effort, cancellation);

    /// <summary>
    /// The night comes first: when not all own steps fit, it is planned with those that do, one after the other, and each that does
    /// not is told.
    /// </summary>
    private static HostTimeline WithOwnSteps(
        TimelineRequest request, IReadOnlyList<OwnStep> own, Effort effort, CancellationToken cancellation)
    {
        if (Attempt(new NightInMinutes(request), effort, cancellation) is { } all)
        {
            return all;
        }

        var without = Placed(request with { Own = null }, effort, cancellation);
        if (without.FirstPieAt is null)
        {
            return without;
        }

        IReadOnlyList<Conflict> misfit = [.. without.Conflicts.OfType<ChosenMixTimeDoesNotFit>()];
        var around = misfit.Count > 0 ? request with { MixAt = null } : request;
        List<OwnStep> fitting = [];
        foreach (var step in (OwnSteps.InOrder(own) ?? []).Select(i => own[i]))
        {
            cancellation.ThrowIfCancellationRequested();
            if (QuickPlacement.Of(new NightInMinutes(around with { Own = [.. fitting, step] })).Works)
            {
                fitting.Add(step);
            }
        }

        var night = new NightInMinutes(around with { Own = fitting });
        var timeline = fitting.Count > 0 && Attempt(night, effort, cancellation) is { } some
            ? some with { Conflicts = [.. misfit, .. some.Conflicts] }
            : without;
        IEnumerable<OwnStep> left = timeline == without ? own : own.Except(fitting);
        return timeline with { Conflicts = [.. left.Select(step => OwnStepRoom.None(step, request, timeline)), .. timeline.Conflicts] };
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
        if (timeline.Begins(StepKind.Mix) is not { } mixing)
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
        ?? Nothing(request, NearestFix.For(request, cancellation));

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
        var found = NightSchedule.Solve(
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
        var placed = TimelineSteps.From(steps, starts);
        var lastPie = starts[steps.Pies[^1].Serve] + steps.Night.Serve;
        return new HostTimeline(
            placed,
            AnswerBy: HostTimeline.Begins(placed, StepKind.Shop),
            DoughCommitment: DoughBegins(placed),
            ColdFermentLength: placed.Where(step => step.Kind == StepKind.ColdFerment).Min(step => step.End - step.Start),
            FirstPieAt: clock.At(starts[steps.Pies[0].Serve] + steps.Night.Serve),
            LastPieAt: clock.At(lastPie),
            quality,
            gapPercent,
            slices,
            NearestFix.ForLastPie(steps.Night, lastPie) is { } late ? [late] : []);
    }

    private static Instant? AnswersClose(IReadOnlyList<TimelineStep> steps, TimelineRequest request) =>
        HostTimeline.Begins(steps, StepKind.Shop) is { } shopping ? HostTimeline.AnswersClose(shopping, request) : null;

    private static Instant? DoughBegins(IReadOnlyList<TimelineStep> steps) =>
        HostTimeline.Begins(steps, StepKind.Preferment) ?? HostTimeline.Begins(steps, StepKind.WakeYeast) ?? HostTimeline.Begins(steps, StepKind.Mix);

    /// <summary>Nothing can be placed; a dough that is begun stands all the same, and is cold until it must be tempered.</summary>
    private static HostTimeline Nothing(TimelineRequest request, IReadOnlyList<Conflict> conflicts)
    {
        var begun = request.BegunDough ?? [];
        var cold = begun.Count == 0
            ? Duration.Zero
            : request.ServeAt - request.Durations.Temper - begun.Max(step => step.End);
        return new HostTimeline(
            begun, AnswersClose(begun, request), DoughBegins(begun), Duration.Max(Duration.Zero, cold), null, null,
            TimelineQuality.Quick, 0, 0, conflicts);
    }
}
