namespace GameNight.Planning.Timeline;

/// <summary>Which own steps of a request a plan is about, and in which order they come after one another.</summary>
internal static class OwnSteps
{
    /// <summary>
    /// Without those whose time has passed, those that stand with the begun dough, and those that would have to come before it.
    /// What was tied to one that is left out is free of that tie.
    /// </summary>
    public static TimelineRequest StillToCome(TimelineRequest request)
    {
        var begun = request.BegunDough ?? [];
        return With(request, [.. (request.Own ?? []).Where(step =>
            !(step.Until - step.Length < request.Now) && !begun.Any(other => Is(other, step)) && !begun.Any(other => step.Before is { } tie && Is(other, tie)))]);
    }

    /// <summary>The request with just the own steps that were placed in the timeline: what else there is came later.</summary>
    public static TimelineRequest Of(TimelineRequest request, HostTimeline timeline)
    {
        var begun = request.BegunDough ?? [];
        return With(request, [.. (request.Own ?? []).Where(step =>
            !begun.Any(other => Is(other, step)) && timeline.Steps.Any(other => Is(other, step)))]);
    }

    public static bool Is(TimelineStep placed, OwnStep step) => placed.Kind == StepKind.Own && placed.Number == step.Number;

    public static bool Is(TimelineStep placed, StepTie tie) => placed.Kind == tie.Step && (tie.Number is null || placed.Number == tie.Number);

    /// <summary>
    /// Pairs of positions in the list, the first before the second: by either one's ties.
    /// </summary>
    public static IEnumerable<(int First, int Then)> Pairs(IReadOnlyList<OwnStep> steps)
    {
        foreach (var (i, step) in steps.Index())
        {
            if (step.After is { Step: StepKind.Own } after && PositionOf(after) is >= 0 and var before)
            {
                yield return (before, i);
            }

            if (step.Before is { Step: StepKind.Own } next && PositionOf(next) is >= 0 and var behind)
            {
                yield return (i, behind);
            }
        }

        int PositionOf(StepTie tie) => steps.ToList().FindIndex(other => other.Number == tie.Number);
    }

    /// <summary>Positions in the list so that each comes after what it follows, or null when some of them run in a circle.</summary>
    public static IReadOnlyList<int>? InOrder(IReadOnlyList<OwnStep> steps)
    {
        var pairs = Pairs(steps).ToList();
        var order = new List<int>();
        while (order.Count < steps.Count)
        {
            var free = Enumerable.Range(0, steps.Count)
                .Where(i => !order.Contains(i) && pairs.TrueForAll(pair => pair.Then != i || order.Contains(pair.First)))
                .Cast<int?>().FirstOrDefault();
            if (free is not { } next)
            {
                return null;
            }

            order.Add(next);
        }

        return order;
    }

    private static TimelineRequest With(TimelineRequest request, IReadOnlyList<OwnStep> steps) =>
        request with { Own = steps.Count > 0 ? steps : null };
}
