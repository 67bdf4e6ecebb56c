using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Cheese;

/// <summary>What to look for with the cheese. Each has a row in shared/reference/cheese.json.</summary>
public enum CheeseCue
{
    KeptCold,
    ReadyGratedCarriesStarch,
    FreshInStrips,
}

/// <summary>One cheese of the blend.</summary>
/// <param name="OnPies">Grated, or drained and in strips.</param>
/// <param name="ToBuy">As it is bought: with what stays in the grater, or drips off.</param>
public sealed record CheesePart(CheeseKind Kind, Food Food, Grams OnPies, Grams ToBuy);

/// <summary>All cheese of the night, and what it brings to a square centimetre of pie.</summary>
/// <param name="Parts">Only cheeses that the blend holds.</param>
/// <param name="Water">Share of the blend that is water as it goes on the pie.</param>
public sealed record CheesePlan(
    IReadOnlyList<CheesePart> Parts,
    Share Water,
    double WaterGramsPerCm2,
    double FatGramsPerCm2,
    double SaltGramsPerCm2,
    IReadOnlyList<CheeseCue> Cues)
{
    /// <param name="gramsPerCm2">Cheese on a square centimetre, 0 to 1.</param>
    /// <param name="onPies">Cheese on all pies.</param>
    /// <exception cref="ArgumentOutOfRangeException">Shares do not add up to 1, or the drained share is out of its range.</exception>
    public static CheesePlan For(CheeseBlend blend, double gramsPerCm2, Grams onPies, CheeseTable table, FoodTable foods)
    {
        Demand(blend, table);
        var parts = Enum.GetValues<CheeseKind>()
            .Where(kind => blend.Of(kind).Value > 0)
            .Select(kind => Part(table.Of(kind), onPies * (blend.Of(kind).Value / blend.Sum), DrainedOf(blend, kind)))
            .ToList();
        var gram = new Grams(1);
        var (water, fat, salt) = (0.0, 0.0, 0.0);
        foreach (var part in parts)
        {
            // What drips off is counted as water; fat and salt stay behind in less cheese.
            var (share, drained) = (blend.Of(part.Kind).Value / blend.Sum, DrainedOf(blend, part.Kind));
            var figures = foods.Of(part.Food).Of(gram);
            water += share * Draining.WaterAfter(new Share(figures.Water.Value), drained).Value;
            fat += share * figures.Fat.Value / (1 - drained.Value);
            salt += share * figures.Salt.Value / (1 - drained.Value);
        }

        return new CheesePlan(
            parts, new Share(water), water * gramsPerCm2, fat * gramsPerCm2, salt * gramsPerCm2, [.. CuesOf(parts)]);
    }

    private static void Demand(CheeseBlend blend, CheeseTable table)
    {
        if (Math.Abs(blend.Sum - 1) > CheeseBlend.SumTolerance)
        {
            throw new ArgumentOutOfRangeException(nameof(blend), blend.Sum, "The shares of a blend add up to 1 (0.999 to 1.001).");
        }

        if (!table.Drained.Holds(blend.Drained.Value))
        {
            throw new ArgumentOutOfRangeException(
                nameof(blend), blend.Drained.Value, FormattableString.Invariant($"Draining takes {table.Drained.Low} to {table.Drained.High}: {table.Drained.Source}."));
        }
    }

    private static CheesePart Part(CheeseRow row, Grams onPies, Share drained) =>
        new(row.Kind, row.Food, onPies, onPies / ((1 - row.Lost) * (1 - drained.Value)));

    private static Share DrainedOf(CheeseBlend blend, CheeseKind kind) => kind == CheeseKind.Fresh ? blend.Drained : default;

    private static IEnumerable<CheeseCue> CuesOf(List<CheesePart> parts)
    {
        yield return CheeseCue.KeptCold;
        if (parts.Any(part => part.Kind != CheeseKind.Fresh))
        {
            yield return CheeseCue.ReadyGratedCarriesStarch;
        }

        if (parts.Any(part => part.Kind == CheeseKind.Fresh))
        {
            yield return CheeseCue.FreshInStrips;
        }
    }
}
