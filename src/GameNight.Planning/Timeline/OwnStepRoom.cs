namespace GameNight.Planning.Timeline;

/// <summary>Says why an own step found no room in a timeline, and where there is some.</summary>
internal static class OwnStepRoom
{
    private const int MostNamed = 3;

    /// <param name="timeline">Without the step.</param>
    public static OwnStepFindsNoRoom None(OwnStep step, TimelineRequest request, HostTimeline timeline)
    {
        var night = new NightInMinutes(request with { Own = [step, .. (request.Own ?? []).Where(other => other.Number != step.Number)] });
        var own = night.Own[0];
        List<TimelineStep> tied = [.. timeline.Steps.Where(other => step.After is { } tie && OwnSteps.Is(other, tie))];
        List<TimelineStep> before = [.. tied, .. timeline.Steps.Where(other => other.Kind == StepKind.Bake && night.HasOvenAfterPies(step))];
        List<TimelineStep> next = [.. timeline.Steps.Where(other => (step.Before is { } tie && OwnSteps.Is(other, tie)) || (other.Kind == StepKind.Preheat && night.HasOvenBeforePies(step)))];
        var earliest = before.Select(other => night.Clock.After(other.End)).Append(own.Earliest).Append(night.Now).Max();
        var latest = next.Select(other => night.Clock.Before(other.Start) - own.Minutes)
            .Concat(tied.Select(other => night.Clock.After(other.End) + ServingClock.LengthDown(TimelineLimits.OwnStepAfter)))
            .Append(own.Latest).Min();
        var hands = new HandsCalendar(night.First, night.Last, night.Crew, night.Away, night.Stations);
        var station = step.Takes;
        List<TimelineStep> work =
        [
            .. timeline.Steps.Where(other => request.BegunDough?.Contains(other) != true
                && (other.NeedsHands || (station is not null && night.Stations.Of(other.Kind, other.Number) == station))),
        ];
        foreach (var other in work)
        {
            var (start, end) = (night.Clock.After(other.Start), night.Clock.After(other.End));
            if (hands.Fits(other.Kind, other.Number, start, end - start, other.NeedsHands))
            {
                hands.Take(other.Kind, other.Number, start, end - start, other.NeedsHands);
            }
        }

        (int From, int Until)? oven = station == Station.OvenAtOtherHeat
            ? (timeline.Steps.Where(other => other.Kind == StepKind.Preheat).Min(other => night.Clock.After(other.Start)),
                timeline.Steps.Where(other => other.Kind == StepKind.Bake).Max(other => night.Clock.After(other.End)))
            : null;
        var hasTime = earliest <= latest;
        var (from, until) = (night.Clock.At(earliest), night.Clock.At(latest + own.Minutes));
        return new OwnStepFindsNoRoom(
            step.Number,
            hasTime ? from : null,
            hasTime ? until : null,
            hasTime ? [.. work.Where(other => other.Start < until && other.End > from).OrderBy(other => other.Start).Select(other => other.Kind).Distinct().Take(MostNamed)] : [],
            Nearest(hands, night, own, step.After is null && step.From is null ? latest : earliest, oven) is { } free ? night.Clock.At(free) : null,
            oven is { } taken ? night.Clock.At(taken.From) : null,
            oven is { } used ? night.Clock.At(used.Until) : null);
    }

    /// <param name="oven">The pies have it from then until then, when the step needs it at another heat.</param>
    private static int? Nearest(HandsCalendar hands, NightInMinutes night, OwnInMinutes own, int wanted, (int From, int Until)? oven)
    {
        wanted = Math.Clamp(wanted, night.Now, Math.Max(night.Now, night.Last - own.Minutes));
        var (kind, number, isWork) = (StepKind.Own, own.Step.Number, own.Step.NeedsHands);
        var before = hands.Latest(kind, number, night.Now, Math.Min(wanted, oven?.From - own.Minutes ?? wanted), own.Minutes, isWork);
        var after = hands.Earliest(kind, number, Math.Max(wanted, oven?.Until ?? wanted), Math.Max(wanted, night.Last - own.Minutes), own.Minutes, isWork);
        return (before, after) switch
        {
            ({ } early, { } late) => wanted - early <= late - wanted ? early : late,
            _ => before ?? after,
        };
    }
}
