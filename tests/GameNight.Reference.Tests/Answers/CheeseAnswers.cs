using GameNight.Planning.Cheese;
using GameNight.Planning.Dough;
using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using GameNight.TestKit;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of cheese, water on the pie, and what a pie holds.</summary>
internal static class CheeseAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["A10.cheese.low"] = () => SauceAnswers.OnRegulated(0.08),
        ["A10.cheese.high"] = () => SauceAnswers.OnRegulated(0.10),
        ["A10.menu.cheese"] = () => SauceAnswers.OnMenu(MenuRole.Cheese),
        ["A10.cheese.perArea"] = () => 80 / SauceAnswers.RegulatedAreaCm2,
        ["A10.cheese.perArea.high"] = () => 100 / SauceAnswers.RegulatedAreaCm2,
        ["W1"] = WaterOnRegulated,
        ["W2"] = () => SharedFolder.Tables.Cheese.WaterLoad.BoundGramsPerCm2,
        ["I7.energy"] = () => Margherita().Kilocalories,
        ["I7.per100"] = () => Margherita().Kilocalories / Margherita().Mass.Value * 100,
        ["I7.mass"] = () => Margherita().Mass.Value,
        ["I7.protein"] = () => Margherita().Protein.Value,
        ["I7.fat"] = () => Margherita().Fat.Value,
        ["I7.carbohydrate"] = () => Margherita().Carbohydrate.Value,
        ["I7.sodium"] = () => Margherita().SodiumMilligrams,
        ["I7.salt"] = () => Margherita().Salt.Value,
    };

    private static double WaterOnRegulated()
    {
        var foods = SharedFolder.Tables.Foods;
        WetItem[] items =
        [
            new("tomato", MenuRole.Base, 80 / SauceAnswers.RegulatedAreaCm2, new Share(foods.Of(Food.CannedTomatoes).Water / 100)),
            new("mozzarella", MenuRole.Cheese, 100 / SauceAnswers.RegulatedAreaCm2, new Share(foods.Of(Food.FreshMozzarella).Water / 100)),
        ];
        return WaterLoad.For("A", items, SauceAnswers.RegulatedAreaCm2, SharedFolder.Tables.Cheese.WaterLoad).GramsPerCm2.Expected;
    }

    /// <summary>Its dough, and what lies on it. Water and yeast are weighed but bring no figures.</summary>
    private static FoodFigures Margherita()
    {
        var formula = new DoughFormula(
            new Share(0.62), new Share(0.028), default, default, false, YeastForm.Fresh, default, default);
        var dough = DoughBatch.Weighing(new Grams(250), formula, new Share(0.002));
        var water = FoodFigures.None with { Mass = dough.Water + dough.Yeast, Water = dough.Water };
        return water + SharedFolder.Tables.Foods.Sum(
        [
            new FoodPart(Food.BreadFlour, dough.Flour),
            new FoodPart(Food.Salt, dough.Salt),
            new FoodPart(Food.CrushedTomatoes, new Grams(80)),
            new FoodPart(Food.LowMoistureMozzarella, new Grams(90)),
            new FoodPart(Food.OliveOil, new Grams(5)),
        ]);
    }
}
