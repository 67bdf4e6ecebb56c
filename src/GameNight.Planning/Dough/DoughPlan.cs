using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>The dough is made in so many batches because the bowl or mixer holds so much.</summary>
public sealed record BatchesByCapacity(Grams Capacity, int Batches) : Reason;

/// <summary>The ball follows from the diameter and the thickness of the pie.</summary>
public sealed record BallFromShape(Centimetres Diameter, double ThicknessGramsPerCm2) : Reason;

/// <summary>This share is added for what stays in the bowl and on the bench.</summary>
public sealed record LossAdded(Share Loss) : Reason;

/// <summary>One ball does not fit into the bowl or mixer; the dough is planned as if it did.</summary>
public sealed record BallLargerThanBowl(Grams Ball, Grams Capacity) : Conflict;

/// <summary>The fridge has places for fewer balls than the dough makes.</summary>
public sealed record FridgeTooSmall(int Balls, int Places) : Conflict;

/// <summary>All dough of the night: balls, total mass, and the batches to weigh.</summary>
/// <param name="Formula">As the host has it; the batches follow <see cref="AsWeighed"/>.</param>
/// <param name="Hydration">Water per flour as weighed, with the band in which the right one lies; null in plans of earlier versions.</param>
/// <param name="OnScale">The batches as the kitchen's scales can weigh them; null when the scales are not known.</param>
public sealed record DoughPlan(
    Explained<Grams> Ball,
    int Balls,
    Grams Total,
    DoughFormula Formula,
    IReadOnlyList<DoughBatch> Batches,
    IReadOnlyList<Reason> Because,
    IReadOnlyList<Conflict> Conflicts,
    Estimate<Share>? Hydration = null,
    IReadOnlyList<RoundedBatch>? OnScale = null)
{
    /// <param name="capacity">How much dough one batch may be, limited by bowl or mixer.</param>
    /// <param name="ballByHand">The host's own ball mass, or null to follow the shape.</param>
    public static DoughPlan For(
        int pies, PieShape shape, DoughFormula formula, Grams capacity, Grams? ballByHand, Hydration hydration, DoughTable table)
    {
        var ball = Explained.Decide(
            ballByHand, shape.Ball, new BallFromShape(shape.Diameter, shape.ThicknessGramsPerCm2));
        var perBall = ball.Value * (1 + formula.Loss.Value);
        var weighed = formula with { Water = hydration.Water.Expected };
        var batches = BatchSplit(pies, perBall, capacity)
            .Select((balls, index) => DoughBatch.Weighing(perBall * balls, weighed, default, index + 1, balls))
            .ToList();

        return new DoughPlan(
            ball,
            pies,
            perBall * pies,
            formula,
            batches,
            [
                new LossAdded(formula.Loss), new BatchesByCapacity(capacity, batches.Count), .. hydration.Because,
                .. FormulaWarnings.Reasons(formula, table),
            ],
            pies == 0
                ? []
                : [
                    .. perBall > capacity ? [new BallLargerThanBowl(ball.Value, capacity)] : Array.Empty<Conflict>(),
                    .. FormulaWarnings.Conflicts(formula, ball.Value, table),
                ],
            hydration.Water);
    }

    /// <summary>The formula with the water that this kitchen's flour takes.</summary>
    public DoughFormula AsWeighed => Hydration is null ? Formula : Formula with { Water = Hydration.Expected };

    public Grams Flour => Sum(batch => batch.Flour);
    public Grams Water => Sum(batch => batch.Water);

    /// <summary>The same dough with the yeast weighed in; total mass and balls stay as they are.</summary>
    public DoughPlan WithYeast(Share yeast) => this with
    {
        Batches = [.. Batches.Select(batch =>
            DoughBatch.Weighing(batch.Total, AsWeighed, yeast, batch.Number, batch.Balls))],
    };

    /// <summary>The same dough with what the kitchen's scales make of it.</summary>
    public DoughPlan Rounded(KitchenScale? scale) => scale is null
        ? this
        : this with
        {
            OnScale = [.. Batches.Select(batch => ScaleRounding.Of(batch, scale))],
            Because =
            [
                .. Because,
                .. Batches.DistinctBy(batch => batch.Balls).Select(batch => ScaleRounding.Dissolving(batch, scale)).OfType<Reason>(),
            ],
        };

    /// <summary>Whole balls per batch, as even as possible, no batch above capacity unless a single ball is.</summary>
    private static IEnumerable<int> BatchSplit(int balls, Grams perBall, Grams capacity)
    {
        if (balls == 0)
        {
            return [];
        }

        var ballsPerBatch = Math.Max(1, (int)Math.Floor(capacity / perBall));
        var batches = (balls + ballsPerBatch - 1) / ballsPerBatch;
        return Enumerable.Range(0, batches).Select(index => balls / batches + (index < balls % batches ? 1 : 0));
    }

    private Grams Sum(Func<DoughBatch, Grams> part) => Batches.Aggregate(default(Grams), (sum, batch) => sum + part(batch));
}
