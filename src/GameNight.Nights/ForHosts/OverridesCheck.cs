using GameNight.Nights.Records;
using GameNight.Planning;

namespace GameNight.Nights.ForHosts;

/// <summary>Ranges of what a host sets by hand for one night, before it is kept.</summary>
internal static class OverridesCheck
{
    public static IReadOnlyList<SnapshotProblem> Problems(NightOverrides overrides, SnapshotCheck check) =>
    [
        .. check.Problems(overrides.ToByHand()),
        .. OwnStepCheck.Problems([.. (overrides.Own ?? []).Select(own => own.Step)]),
        .. (overrides.Own ?? []).Where(own => own.Name.Length is 0 or > NamedOwnStep.LongestName).Select(own => new SnapshotProblem(
            $"ownSteps[{own.Step.Number}].name", SnapshotFault.WrongCount, own.Name.Length, 1, NamedOwnStep.LongestName)),
        .. overrides.Helpers?.Count > HelperOfNight.Most
            ? [new SnapshotProblem("helpers", SnapshotFault.WrongCount, overrides.Helpers.Count, 0, HelperOfNight.Most)]
            : Array.Empty<SnapshotProblem>(),
        .. (overrides.Helpers ?? []).Where(helper => helper.Name is { Length: 0 or > HelperOfNight.LongestName }).Select(helper => new SnapshotProblem(
            "helpers.name", SnapshotFault.WrongCount, helper.Name!.Length, 1, HelperOfNight.LongestName)),
    ];
}
