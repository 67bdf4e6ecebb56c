using GameNight.Planning.Cheese;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Toppings;

namespace GameNight.Planning;

/// <summary>A base of the menu that is made here, by a formula.</summary>
/// <param name="BaseId">Of the menu; when the menu does not offer it, no sauce is made.</param>
/// <param name="Tins">Sizes of tins that can be bought, 1 to 6; null for usual ones.</param>
public sealed record HouseSauce(string BaseId, SauceFormula Formula, IReadOnlyList<Grams>? Tins = null);

/// <summary>A cheese of the menu that is blended here.</summary>
/// <param name="CheeseId">Of the menu; when the menu does not offer it, nothing is blended.</param>
public sealed record HouseCheese(string CheeseId, CheeseBlend Blend);

/// <summary>Hands the models of sauce, cheese and water load what they need of the night.</summary>
public static class NightSauceAndCheese
{
    private static readonly Composition NobodyRead = new([], [], Enum.GetValues<Allergen>(), []);

    /// <summary>
    /// The menu with what sauce and cheese that are made here bring by themselves, wine and hard cheese above all: what
    /// the host wrote on the item, and that; the dough as its label is.
    /// </summary>
    public static Menu MenuOf(NightSnapshot night, ReferenceTables tables) => night.Menu with
    {
        Dough = DoughLabelOf(night),
        Items =
        [
            .. night.Menu.Items.Select(item =>
                item.Id == night.Sauce?.BaseId ? item with { Composition = item.Composition.With(night.Sauce.Formula.Composition(tables.Foods)) }
                : item.Id == night.CheeseBlend?.CheeseId
                    ? item with { Composition = item.Composition.With(night.CheeseBlend.Blend.Composition(tables.Cheese, tables.Foods)) }
                : item),
        ],
    };

    /// <summary>
    /// What is known of the dough, the begun one where there is one: flour of the house with what the labels of the host's own parts say. Of parts whose labels
    /// nobody read nothing is known, and that is not the same as not contained. Honey keeps no pie vegan.
    /// </summary>
    public static Composition DoughLabelOf(NightSnapshot night)
    {
        var (formula, dough) = (BegunDough.Opened(night).Formula, night.Menu.Dough);
        if (formula.OwnParts.Count > 0)
        {
            dough = dough.With(formula.PartsLabel ?? NobodyRead);
        }

        return formula is { SugarIsHoney: true, Sugar.Value: > 0 }
            ? dough with { Suits = [.. dough.Suits.Where(diet => diet != Diet.Vegan)] }
            : dough;
    }

    /// <summary>Null when no formula is set, or none of its base is on the pies.</summary>
    internal static SaucePlan? Sauce(NightSnapshot night, IReadOnlyList<ItemAmount> amounts, ReferenceTables tables) =>
        night.Sauce is { } sauce && Item(night, sauce.BaseId, MenuRole.Base) is { } item && Needed(amounts, item) is { } needed
            ? SaucePlan.For(
                sauce.Formula, needed, NightRequests.PerPie(night, item), sauce.Tins ?? tables.Sauces.TinSizes, tables.Sauces, tables.Foods)
            : null;

    /// <summary>Null when no blend is set, or none of it is on the pies.</summary>
    internal static CheesePlan? Cheese(NightSnapshot night, IReadOnlyList<ItemAmount> amounts, ReferenceTables tables) =>
        night.CheeseBlend is { } cheese && Item(night, cheese.CheeseId, MenuRole.Cheese) is { } item && Needed(amounts, item) is { } needed
            ? CheesePlan.For(
                cheese.Blend,
                NightRequests.PerPie(night, item).Value / night.Shape.CheeseAreaCm2,
                needed,
                tables.Cheese,
                tables.Foods)
            : null;

    /// <summary>For every combination on the pies. What is made here is known; of other items what the menu says.</summary>
    internal static IReadOnlyList<WaterLoad> WaterLoads(
        NightSnapshot night, ToppingSplit split, SaucePlan? sauce, CheesePlan? cheese, ReferenceTables tables)
    {
        var items = night.Menu.Items.ToDictionary(item => item.Id);
        return
        [
            .. split.Combinations.Select(combination => WaterLoad.For(
                combination.Letter,
                [.. combination.ItemIds.Select(id => Wet(night, items[id], sauce, cheese))],
                night.Shape.ToppedAreaCm2,
                tables.Cheese.WaterLoad)),
        ];
    }

    /// <summary>What the split must know of water before it knows how much of anything there will be: as if for all pies.</summary>
    internal static WetnessRule Wetness(NightSnapshot night, int pies, ReferenceTables tables)
    {
        IReadOnlyList<ItemAmount> all =
            [.. night.Menu.Items.Select(item => new ItemAmount(item.Id, SpreadAmount.WithBand(NightRequests.PerPie(night, item) * Math.Max(1, pies))))];
        var (sauce, cheese) = (Sauce(night, all, tables), Cheese(night, all, tables));
        return new WetnessRule(
            tables.Cheese.WaterLoad.BoundGramsPerCm2,
            night.Menu.Items.ToDictionary(
                item => item.Id,
                item => WaterLoad.For(item.Id, [Wet(night, item, sauce, cheese)], night.Shape.ToppedAreaCm2, tables.Cheese.WaterLoad).GramsPerCm2.Low));
    }

    private static WetItem Wet(NightSnapshot night, MenuItem item, SaucePlan? sauce, CheesePlan? cheese) => new(
        item.Id,
        item.Role,
        NightRequests.PerPie(night, item).Value / night.Shape.ToppedAreaCm2,
        item.Id == night.Sauce?.BaseId && sauce is not null ? sauce.Water
            : item.Id == night.CheeseBlend?.CheeseId && cheese is not null ? cheese.Water
            : item.WaterShare);

    private static MenuItem? Item(NightSnapshot night, string id, MenuRole role) =>
        night.Menu.Items.FirstOrDefault(item => item.Id == id && item.Role == role);

    private static Grams? Needed(IReadOnlyList<ItemAmount> amounts, MenuItem item) =>
        amounts.FirstOrDefault(amount => amount.ItemId == item.Id)?.Amount.Expected is { Value: > 0 } needed ? needed : null;
}
