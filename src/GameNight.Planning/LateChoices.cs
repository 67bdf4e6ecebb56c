using GameNight.Planning.Appetite;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning;

/// <summary>The begun dough divided anew: the same dough in so many balls, for pies of this shape.</summary>
public sealed record Redivided(PieCount Balls, Centimetres Diameter, double ThicknessGramsPerCm2);

/// <summary>A second dough, made on the day at room temperature, of the same formula with its own yeast.</summary>
public sealed record RescueDough(PieCount Balls, Instant MixAt, Instant BallAt);

/// <summary>What a host chose to do about late changes to a dough that is begun. Null where nothing was chosen.</summary>
/// <param name="BallsKept">Frozen or kept cold instead of baked.</param>
/// <param name="Course">One more course beside the pies.</param>
/// <param name="Accepted">The run-out chance that was looked at and accepted.</param>
public sealed record LateChoices(
    Redivided? Redivided = null,
    int? BallsKept = null,
    AppetiteTaken? Course = null,
    RescueDough? Rescue = null,
    Share? Accepted = null)
{
    public bool AreNone => this == new LateChoices();

    /// <summary>The night with the dough and the courses as chosen. Without a begun dough there is nothing to choose about.</summary>
    public static NightSnapshot Followed(NightSnapshot night)
    {
        if (night is not { Begun: { } begun, Late: { } late })
        {
            return night;
        }

        return night with
        {
            Begun = late.Redivided is { } anew ? anew.Of(begun) : begun,
            Courses = late.Course is { } takes ? [.. night.Courses ?? [], new Course("late", takes)] : night.Courses,
        };
    }

    /// <summary>Pies that the begun dough is enough for, with what was chosen.</summary>
    public static PieCount Balls(NightSnapshot night, BegunDough begun) =>
        new(Math.Min(
            PieCount.Highest,
            Math.Max(0, begun.Dough.Balls - (night.Late?.BallsKept ?? 0)) + (night.Late?.Rescue?.Balls.Value ?? 0)));
}

internal static class Redividing
{
    /// <summary>The same dough, weighed into other balls.</summary>
    public static BegunDough Of(this Redivided anew, BegunDough begun)
    {
        var (dough, balls) = (begun.Dough, anew.Balls.Value);
        var ball = BallOf(dough, balls);
        var batches = dough.Batches.Count;
        return begun with
        {
            Shape = begun.Shape with { Diameter = anew.Diameter, ThicknessGramsPerCm2 = anew.ThicknessGramsPerCm2 },
            Dough = dough with
            {
                Balls = balls,
                Ball = new Explained<Grams>(ball, ball, IsByHand: false,
                    [new BallFromShape(anew.Diameter, anew.ThicknessGramsPerCm2), new DoughRedivided(dough.Balls, balls)]),
                Batches = [.. dough.Batches.Select((batch, index) =>
                    batch with { Balls = balls / batches + (index < balls % batches ? 1 : 0) })],
            },
        };
    }

    public static Grams BallOf(DoughPlan dough, int balls) => dough.Ball.Value * ((double)dough.Balls / balls);
}
