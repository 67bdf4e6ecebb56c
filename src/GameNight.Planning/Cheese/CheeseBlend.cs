using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Cheese;

/// <summary>What a cheese does on a pie. Each has a row in shared/reference/cheese.json.</summary>
public enum CheeseKind
{
    /// <summary>Melts and browns; grated.</summary>
    LowMoisture,

    /// <summary>For its taste; grated fine.</summary>
    Hard,

    /// <summary>Milky and wet; in strips, drained.</summary>
    Fresh,
}

/// <summary>The cheese of a pie as shares of what lies on it; the three add up to 1.</summary>
/// <param name="Drained">What the fresh cheese loses by draining, as a share of its mass as bought, 0 to 0.3.</param>
/// <param name="HardIsVegetarian">The hard cheese's label says so; otherwise the blend is not vegetarian when it holds any.</param>
public sealed record CheeseBlend(
    Share LowMoisture, Share Hard, Share Fresh, Share Drained, bool HardIsVegetarian = false)
{
    /// <summary>Shares that are typed as thirds still add up.</summary>
    public const double SumTolerance = 0.001;

    public double Sum => LowMoisture.Value + Hard.Value + Fresh.Value;

    public Share Of(CheeseKind kind) => kind switch
    {
        CheeseKind.LowMoisture => LowMoisture,
        CheeseKind.Hard => Hard,
        CheeseKind.Fresh => Fresh,
    };

    /// <summary>What the cheeses bring of allergens, and the diets that all of them keep.</summary>
    public Composition Composition(CheeseTable table, FoodTable foods) => Enum.GetValues<CheeseKind>()
        .Where(kind => Of(kind).Value > 0)
        .Select(kind => foods.Of(table.Of(kind).Food).Composition is var label && kind == CheeseKind.Hard && HardIsVegetarian
            ? label with { Suits = [Guests.Diet.Vegetarian, .. label.Suits] }
            : label)
        .Aggregate(Guests.Composition.Nothing, (all, part) => all.With(part));
}
