using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// One batch of dough: what to weigh. The ingredients add up to <see cref="Total"/>; <see cref="HeldBackFlour"/> is part
/// of <see cref="Flour"/>, weighed apart.
/// </summary>
public sealed record DoughBatch(
    int Number,
    int Balls,
    Grams Flour,
    Grams HeldBackFlour,
    Grams Water,
    Grams Salt,
    Grams Oil,
    Grams Sugar,
    Grams Yeast)
{
    public Grams Total => Flour + Water + Salt + Oil + Sugar + Yeast;

    /// <summary>A batch that weighs exactly <paramref name="total"/>, yeast included.</summary>
    /// <param name="yeast">Yeast as a share of flour, in the form it is bought in; zero until the dose is known.</param>
    public static DoughBatch Weighing(Grams total, DoughFormula formula, Share yeast, int number = 1, int balls = 1)
    {
        var flour = total / (formula.TotalPerFlour + yeast.Value);
        return new DoughBatch(
            number,
            balls,
            flour,
            flour * formula.HeldBackFlour,
            flour * formula.Water,
            flour * formula.Salt,
            flour * formula.Oil,
            flour * formula.Sugar,
            flour * yeast);
    }
}
