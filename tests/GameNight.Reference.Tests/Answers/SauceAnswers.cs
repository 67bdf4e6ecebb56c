using GameNight.Planning.Dough;
using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using NodaTime;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of sauce, alcohol and foods.</summary>
internal static class SauceAnswers
{
    private const double TeaspoonsPerTablespoon = 3;

    /// <summary>The largest regulated pie; amounts are given on the whole of it.</summary>
    internal static readonly double RegulatedAreaCm2 =
        new PieShape(new Centimetres(35), 0.26, new Centimetres(1.5), default, default, 6).AreaCm2;

    private static readonly SauceTable Sauces = SharedFolder.Tables.Sauces;

    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["G5.15"] = () => Simmered(15),
        ["G5.30"] = () => Simmered(30),
        ["G5.60"] = () => Simmered(60),
        ["G5.90"] = () => Simmered(90),
        ["G5.120"] = () => Simmered(120),
        ["G5.150"] = () => Simmered(150),
        ["G5.offHeat"] = () => Simmered(0),
        ["G5.flamed"] = () => Row(AlcoholCooking.Flamed),
        ["G5.noHeat"] = () => Row(AlcoholCooking.NoHeat),
        ["G5.notStirred"] = () => Row(AlcoholCooking.NotStirred),
        ["A10.sauce.low"] = () => OnRegulated(0.06),
        ["A10.sauce.high"] = () => OnRegulated(0.08),
        ["A10.menu.sauce"] = () => OnMenu(MenuRole.Base),
        ["A10.sauce.perArea"] = () => 60 / RegulatedAreaCm2,
        ["A10.sauce.perArea.high"] = () => 80 / RegulatedAreaCm2,
        ["A10.oil.low"] = () => 4 / RegulatedAreaCm2,
        ["A10.oil.high"] = () => 5 / RegulatedAreaCm2,
        ["J.breadFlour"] = () => Energy(Food.BreadFlour),
        ["J.oliveOil"] = () => Energy(Food.OliveOil),
        ["J.paste"] = () => Energy(Food.TomatoPaste),
        ["J.onion"] = () => Energy(Food.Onion),
        ["J.garlic"] = () => Energy(Food.Garlic),
        ["J.sugar"] = () => Energy(Food.Sugar),
        ["J.tomatoes"] = () => Energy(Food.CannedTomatoes),
        ["J.crushed"] = () => Energy(Food.CrushedTomatoes),
        ["J.mozzarella"] = () => Energy(Food.LowMoistureMozzarella),
        ["J.parmesan"] = () => Energy(Food.Parmesan),
        ["J.salt"] = () => Of(Food.Salt).SodiumMilligrams,
        ["J.tomatoes.water"] = () => Of(Food.CannedTomatoes).Water.Value,
        ["J.crushed.water"] = () => Of(Food.CrushedTomatoes).Water.Value,
        ["J.paste.water"] = () => Of(Food.TomatoPaste).Water.Value,
        ["J.mozzarella.water"] = () => Of(Food.LowMoistureMozzarella).Water.Value,
        ["J.parmesan.water"] = () => Of(Food.Parmesan).Water.Value,
        ["J.mozzarella.sodium"] = () => Of(Food.LowMoistureMozzarella).SodiumMilligrams,
        ["J.paste.spoon"] = () => Tablespoon(Food.TomatoPaste),
        ["J.oil.spoon"] = () => Tablespoon(Food.OliveOil),
        ["J.parmesan.spoon"] = () => Tablespoon(Food.Parmesan),
        ["J.garlic.clove"] = () => SharedFolder.Tables.Foods.Of(Food.Garlic).GramsPerPiece!.Value,
        ["J.onion.medium"] = () => SharedFolder.Tables.Foods.Of(Food.Onion).GramsPerPiece!.Value,
        ["J.oregano.spoon"] = () => Tablespoon(Food.DriedOregano) / TeaspoonsPerTablespoon,
        ["J.basil.spoon"] = () => Tablespoon(Food.DriedBasil),
    };

    internal static double OnRegulated(double gramsPerCm2) =>
        SpreadAmount.For(RegulatedAreaCm2, gramsPerCm2, wholePies: 1, perPieByHand: null).PerPie.Value.Value;

    /// <summary>What the starting menu's first item of a role brings to the regulated pie, in grams.</summary>
    internal static double OnMenu(MenuRole role) => OnRegulated(SharedFolder.Tables.Menu.Items.First(item => item.Role == role).GramsPerCm2);

    private static double Simmered(int minutes) => Sauces.Retention.After(Duration.FromMinutes(minutes)).Percent;

    private static double Row(AlcoholCooking cooking) => 100 * Sauces.Alcohol.Single(row => row.Cooking == cooking).Retained;

    private static FoodFigures Of(Food food) => SharedFolder.Tables.Foods.Of(food).Of(new Grams(100));

    private static double Energy(Food food) => Of(food).Kilocalories;

    private static double Tablespoon(Food food) => TeaspoonsPerTablespoon * SharedFolder.Tables.Foods.Of(food).GramsPerTeaspoon!.Value;
}
