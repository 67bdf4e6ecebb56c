namespace GameNight.Planning.Timeline;

/// <summary>Says why an own step found no room in a timeline, and where there is some.</summary>
internal static class OwnStepRoom
{
    private const int MostNamed = 3;

    /// <param name="timeline">Without the step.</param>
    public static OwnStepFindsNoRoom None(OwnStep step, TimelineRequest request, HostTimeline timeline)
    {
        var night = new NightInMinutes(request with { Own = [step] });
        var own = night.Own[0];
        List<TimelineStep> before = [.. timeline.Steps.Where(other => step.After is { } tie && OwnSteps.Is(other, tie))];
        List<TimelineStep> next = [.. timeline.Steps.Where(other => step.Before is { } tie && OwnSteps.Is(other, tie))];
        var earliest = before.Select(other => night.Clock.After(other.End)).Append(own.Earliest).Append(night.Now).Max();
        var latest = next.Select(other => night.Clock.Before(other.Start) - own.Minutes)
            .Concat(before.Select(other => night.Clock.After(other.End) + ServingClock.LengthDown(TimelineLimits.OwnStepAfter)))
            .Append(own.Latest).Min();
        var hands = new HandsCalendar(night.First, night.Last, night.Crew, night.Away);
        List<TimelineStep> work = [.. timeline.Steps.Where(other => other.NeedsHands && request.BegunDough?.Contains(other) != true)];
        foreach (var other in work)
        {
            var (start, end) = (night.Clock.After(other.Start), night.Clock.After(other.End));
            if (hands.Fits(other.Kind, other.Number, start, end - start))
            {
                hands.Take(other.Kind, other.Number, start, end - start);
            }
        }

        var hasTime = earliest <= latest;
        var (from, until) = (night.Clock.At(earliest), night.Clock.At(latest + own.Minutes));
        return new OwnStepFindsNoRoom(
            step.Number,
            hasTime ? from : null,
            hasTime ? until : null,
            hasTime ? [.. work.Where(other => other.Start < until && other.End > from).OrderBy(other => other.Start).Select(other => other.Kind).Distinct().Take(MostNamed)] : [],
            Nearest(hands, night, own, step.After is null && step.From is null ? latest : earliest) is { } free ? night.Clock.At(free) : null);
    }

    private static int? Nearest(HandsCalendar hands, NightInMinutes night, OwnInMinutes own, int wanted)
    {
        var length = own.Step.NeedsHands ? own.Minutes : 0;
        wanted = Math.Clamp(wanted, night.Now, Math.Max(night.Now, night.Last - own.Minutes));
        var before = hands.Latest(StepKind.Own, own.Step.Number, night.Now, wanted, length);
        var after = hands.Earliest(StepKind.Own, own.Step.Number, wanted, Math.Max(wanted, night.Last - own.Minutes), length);
        return (before, after) switch
        {
            ({ } early, { } late) => wanted - early <= late - wanted ? early : late,
            _ => before ?? after,
        };
    }
}
