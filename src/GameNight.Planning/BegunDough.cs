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
        [StepKind.Shop, StepKind.Preferment, StepKind.WakeYeast, StepKind.Mix, StepKind.Knead, StepKind.BulkRest, StepKind.Ball];

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

    /// <summary>
    /// The night with the dough that is begun. A label nobody had read can still be read when the dough is in the fridge; one
    /// that was read only gets stricter, since what is bought next under the same name is in the next dough.
    /// </summary>
    public static NightSnapshot Opened(NightSnapshot night)
    {
        if (night.Begun is not { } begun)
        {
            return night;
        }

        var (then, now) = (begun.Dough.Formula, night.Formula);
        var label = !then.OwnParts.SequenceEqual(now.OwnParts) || now.PartsLabel is null ? then.PartsLabel
            : then.PartsLabel is null ? now.PartsLabel
            : then.PartsLabel.With(now.PartsLabel);
        return night with { Formula = then with { PartsLabel = label }, Shape = begun.Shape };
    }

    private static bool IsOwnBeforeBalled(TimelineStep step, HostTimeline timeline) =>
        step.Kind == StepKind.Own && timeline.Steps.Any(ball => ball.Kind == StepKind.Ball && step.Start < ball.End);
}
