using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Timeline;

namespace GameNight.Planning;

/// <summary>
/// A dough that is begun: what answers, recipes, kitchen and numbers set by hand do not move any more. Forecast, split, sauce,
/// cheese and the evening still follow them.
/// </summary>
/// <param name="Shape">The pie the balls were weighed for.</param>
/// <param name="Steps">
/// From shopping to balling, as they were planned when the dough was begun, with the host's own steps that lay before its end.
/// </param>
public sealed record BegunDough(
    DoughPlan Dough, YeastDose Yeast, WaterTemperature Water, PieShape Shape, IReadOnlyList<TimelineStep> Steps)
{
    private static readonly StepKind[] Kinds =
        [StepKind.Shop, StepKind.Preferment, StepKind.Mix, StepKind.Knead, StepKind.BulkRest, StepKind.Ball];

    /// <summary>What must be kept of a plan once its dough is begun.</summary>
    /// <returns>Null when the plan has no dough, or no time for it.</returns>
    public static BegunDough? Of(NightSnapshot night, NightPlan plan) =>
        plan.Dough.Balls == 0 || plan.Timeline.DoughCommitment is null
            ? null
            : new BegunDough(
                plan.Dough,
                plan.Yeast,
                plan.Water,
                night.Begun?.Shape ?? night.Shape,
                [
                    .. plan.Timeline.Steps.Where(step => Kinds.Contains(step.Kind) || IsOwnBeforeBalled(step, plan.Timeline))
                        .Select(step => step with { CanWait = default }),
                ]);

    private static bool IsOwnBeforeBalled(TimelineStep step, HostTimeline timeline) =>
        step.Kind == StepKind.Own && timeline.Steps.Any(ball => ball.Kind == StepKind.Ball && step.Start < ball.End);
}
