using GameNight.Planning.Timeline;
using static GameNight.Planning.SnapshotCheck;

namespace GameNight.Planning;

/// <summary>Ranges and ties of a host's own steps. What the night has no room for is no problem of theirs: the plan says it.</summary>
public static class OwnStepCheck
{
    /// <summary>Beside the host.</summary>
    public const int MostHelpers = 7;

    /// <summary>Fields are <c>ownSteps[number].…</c> for what one step says.</summary>
    public static IReadOnlyList<SnapshotProblem> Problems(IReadOnlyList<OwnStep> steps)
    {
        if (steps.Count > OwnStep.Most)
        {
            return [new("ownSteps", SnapshotFault.WrongCount, steps.Count, 0, OwnStep.Most)];
        }

        var numbers = steps.Select(step => step.Number).ToList();
        var isRepeated = numbers.Distinct().Count() != numbers.Count;
        return
        [
            .. isRepeated ? [new SnapshotProblem("ownSteps.number", SnapshotFault.Repeated)] : Array.Empty<SnapshotProblem>(),
            .. steps.SelectMany(step => Problems(step, numbers)),
            .. !isRepeated && OwnSteps.InOrder(steps) is null ? [new SnapshotProblem("ownSteps", SnapshotFault.Circle)] : Array.Empty<SnapshotProblem>(),
        ];
    }

    private static IEnumerable<SnapshotProblem> Problems(OwnStep step, List<int> numbers)
    {
        var path = $"ownSteps[{step.Number}]";
        if (Range($"{path}.number", step.Number, 1, OwnStep.HighestNumber) is { } number)
        {
            yield return number;
        }

        if (Range($"{path}.lengthMinutes", step.Length.TotalMinutes, 1, OwnStep.Longest.TotalMinutes) is { } length)
        {
            yield return length;
        }

        if (step.Who is { } who && Range($"{path}.who", who, 0, MostHelpers) is { } somebody)
        {
            yield return somebody;
        }

        if (!step.HasLimit)
        {
            yield return new(path, SnapshotFault.NoTime);
        }

        if (step.Until - step.From < step.Length)
        {
            yield return new($"{path}.until", SnapshotFault.BackToFront);
        }

        foreach (var (side, tie) in new[] { ("after", step.After), ("before", step.Before) })
        {
            if (tie is not null && !IsThere(tie, numbers))
            {
                yield return new($"{path}.{side}", SnapshotFault.UnknownStep);
            }
        }
    }

    private static bool IsThere(StepTie tie, List<int> numbers) => tie.Step == StepKind.Own
        ? tie.Number is { } number && numbers.Contains(number)
        : tie.Number is null && StepTie.Kinds.Contains(tie.Step);
}
