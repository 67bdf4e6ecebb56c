using GameNight.Planning.Appetite;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning;

/// <summary>
/// Lists what is still possible after the dough is begun. Each outlook is what the planner itself would say of the night
/// with that choice.
/// </summary>
public sealed class LateOptionsFinder(ReferenceTables tables)
{
    /// <summary>Of a sum of probabilities: less than this apart they are the same.</summary>
    private const double RoundOff = 1e-9;

    /// <param name="night">With what was chosen already: that can be taken back, and is not offered again.</param>
    /// <param name="plan">Made from it.</param>
    /// <returns>None before the dough is begun and once the first pie is on the table.</returns>
    public LateOptions For(NightSnapshot night, NightPlan plan, Instant now)
    {
        if (night.Begun is null || night.ServeAt <= now)
        {
            return LateOptions.None;
        }

        var late = night.Late ?? new LateChoices();
        var (count, chosen) = (plan.Pies.Count, plan.Pies.Chosen);
        var missing = count.Proposed.Value - count.Value.Value;
        var rescue = late.Rescue is null && missing > 0
            ? RescuePlan.Soonest(LateChoices.Followed(night), missing, now, tables)
            : null;

        LateOption?[] all =
        [
            rescue is { } found ? new RescueOption(found.Dough, found.Plan, With(late with { Rescue = found.Dough })) : null,
            .. late.Course is null && missing > 0
                ? new[] { AppetiteTaken.Some, AppetiteTaken.ALot }.Select(takes => new CourseOption(takes, With(late with { Course = takes })))
                : [],
            late.BallsKept is null && missing < 0 && count.Value.Value + missing > 0
                ? new KeepBallsOption(-missing, plan.Dough.Ball.Value, With(late with { BallsKept = -missing }))
                : null,
            .. late.Redivided is null ? Divisions(night, plan, now).Select(one => one with { Outlook = With(late with { Redivided = one.Anew }) }) : [],
            missing > 0 && late.Accepted != chosen.RunOutChance ? new AcceptOption(Wanted(night), chosen) : null,
        ];
        return new LateOptions(
            [.. all.OfType<LateOption>()
                .Select(option => option with
                {
                    OfCommittedSlice = option.Chosen(late).Redivided is { } anew
                        ? Redividing.BallOf(night.Begun.Dough, anew.Balls.Value) / night.Begun.Dough.Ball.Value
                        : 1,
                    Helps = option.Outlook.RunOutChance.Value < chosen.RunOutChance.Value - RoundOff,
                })
                .Where(option => option.Helps || option is not (RescueOption or CourseOption))
                .OrderBy(option => option is RedivideOption && !option.Helps)],
            late.Rescue is null && missing > 0 && rescue is null
                ? new NoTimeForRescue(night.ServeAt - now, Duration.FromHours(tables.Steps.RescueDough.ShortestHours))
                : null);

        PieChoice With(LateChoices choices) => NightForecast.For(night with { Late = choices }, tables).Pies.Chosen;
    }

    private static Share Wanted(NightSnapshot night) =>
        night.ShortageWeight is { } weight ? new Share(1 / (weight + 1)) : night.RunOutChance;

    /// <summary>One ball more and one fewer: of the same thickness, or of the same size.</summary>
    private IEnumerable<RedivideOption> Divisions(NightSnapshot night, NightPlan plan, Instant now)
    {
        var begun = night.Begun!;
        var shaping = plan.Timeline.Steps.Where(step => step.Kind == StepKind.Shape).Select(step => step.Start).DefaultIfEmpty(night.ServeAt).Min();
        var until = shaping - Duration.FromMinutes(tables.Steps.RestAfterBalling.Minutes);
        if (until <= now)
        {
            return [];
        }

        var (shape, ranges) = (begun.Shape, tables.Dough.Ranges);
        return
            from balls in new[] { begun.Dough.Balls + 1, begun.Dough.Balls - 1 }
            where balls >= begun.Dough.Batches.Count && balls <= PieCount.Highest && balls > 0
            let ball = Redividing.BallOf(begun.Dough, balls)
            let sameThickness = Math.Round(2 * Math.Sqrt(ball.Value / shape.ThicknessGramsPerCm2 / Math.PI), 1)
            from anew in new[]
            {
                new Redivided(new PieCount(balls), new Centimetres(sameThickness), shape.ThicknessGramsPerCm2),
                new Redivided(new PieCount(balls), shape.Diameter, ball.Value / shape.AreaCm2),
            }
            where ranges.BallGrams.Holds(ball.Value)
                && ranges.DiameterCentimetres.Holds(anew.Diameter.Value)
                && ranges.ThicknessGramsPerCm2.Holds(anew.ThicknessGramsPerCm2)
            select new RedivideOption(anew, ball, until, plan.Pies.Chosen);
    }
}
