using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// One batch of dough: what to weigh. The ingredients add up to <see cref="Total"/>; <see cref="HeldBackFlour"/>,
/// <see cref="Flours"/>, <see cref="Preferment"/> and <see cref="Soaker"/> say how they are parted and add nothing.
/// </summary>
/// <param name="Flours">The flours of a blend, which add up to <see cref="Flour"/> less what is soaked, which is no flour; null for one flour.</param>
public sealed record DoughBatch(
    int Number,
    int Balls,
    Grams Flour,
    Grams HeldBackFlour,
    Grams Water,
    Grams Salt,
    Grams Oil,
    Grams Sugar,
    Grams Yeast,
    IReadOnlyList<NamedMass>? Extras = null,
    IReadOnlyList<NamedMass>? Flours = null,
    BatchPortion? Preferment = null,
    BatchPortion? Soaker = null)
{
    /// <summary>Rounding of doubles on a batch of kilograms; what is below it is nothing.</summary>
    private const double RoundOffGrams = 1e-6;

    public Grams Total => Flour + Water + Salt + Oil + Sugar + Yeast + Together(Extras);

    /// <summary>Flour that goes into the dough itself, the held back included.</summary>
    public Grams FinalFlour => Left(Flour, portion => portion.Flour);
    public Grams FinalWater => Left(Water, portion => portion.Water);
    public Grams FinalYeast => Left(Yeast, portion => portion.Yeast);

    /// <summary>A batch that weighs exactly <paramref name="total"/>, yeast included.</summary>
    /// <param name="yeast">Yeast as a share of flour, in the form it is bought in; zero until the dose is known.</param>
    /// <exception cref="ArgumentOutOfRangeException">Preferment and soaker take more flour or water than the formula has.</exception>
    public static DoughBatch Weighing(Grams total, DoughFormula formula, Share yeast, int number = 1, int balls = 1)
    {
        var flour = total / (formula.TotalPerFlour + yeast.Value);
        if (!((formula.FlourAhead - 1) * flour.Value <= RoundOffGrams
            && (formula.WaterAhead - formula.Water.Value) * flour.Value <= RoundOffGrams))
        {
            throw new ArgumentOutOfRangeException(
                nameof(formula), formula.WaterAhead,
                $"Preferment and soaker take 0 to 1 of the flour and 0 to {formula.Water.Value} of it as water.");
        }

        return new DoughBatch(
            number,
            balls,
            flour,
            flour * formula.HeldBackFlour,
            flour * formula.Water,
            flour * formula.Salt,
            flour * formula.Oil,
            flour * formula.Sugar,
            flour * yeast,
            formula.Extras?.Select(extra => new NamedMass(extra.Name, flour * extra.OfFlour)).ToList(),
            formula.Flours is { Count: > 0 } flours ? Parts(flours, flour * (1 - (formula.Soaker?.OfFlour.Value ?? 0))) : null,
            formula.Preferment is { } preferment
                ? Portion(preferment.Name, flour * preferment.OfFlour, preferment.WaterPerFlour, flour * yeast * preferment.OfYeast)
                : null,
            formula.Soaker is { } soaker
                ? Portion(soaker.Name, flour * soaker.OfFlour, soaker.WaterPerFlour, default)
                : null);
    }

    internal static Grams Together(IEnumerable<NamedMass>? parts) =>
        parts?.Aggregate(default(Grams), (sum, part) => sum + part.Mass) ?? default;

    private static List<NamedMass> Parts(IReadOnlyList<FlourPart> flours, Grams flour)
    {
        var all = flours.Sum(part => part.OfFlour.Value);
        return [.. flours.Select(part => new NamedMass(part.Name, flour * (part.OfFlour.Value / all)))];
    }

    private static BatchPortion Portion(string name, Grams flour, Share water, Grams yeast) =>
        new(name, flour, flour * water, yeast);

    private Grams Left(Grams all, Func<BatchPortion, Grams> ahead) => new(Math.Max(
        0, all.Value - (Preferment is null ? 0 : ahead(Preferment).Value) - (Soaker is null ? 0 : ahead(Soaker).Value)));
}
