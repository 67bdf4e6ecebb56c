using GameNight.Web.Wording;

namespace GameNight.Reference.Tests;

/// <summary>What the screens say of units and kitchen measures.</summary>
internal static class MeasureAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["U.oven"] = () => Unit.Fahrenheit.ToKept(450),
        ["U.fridge"] = () => Unit.Fahrenheit.ToKept(40),
        ["U.pound"] = () => Unit.Pounds.ToKept(1),
        ["U.foot"] = () => Unit.Inches.ToKept(12),
        ["U.salt"] = () => 3 * Teaspoon(HouseholdFood.TableSalt),
        ["U.yeast"] = () => 3 * Teaspoon(HouseholdFood.ActiveDryYeast),
        ["U.oil"] = () => Household.Of(HouseholdFood.OliveOil).GramsPerCup!.Value / (3 * Teaspoon(HouseholdFood.OliveOil)),
        ["U.sugar"] = () => 48 * Teaspoon(HouseholdFood.GranulatedSugar),
        ["U.honey"] = () => 48 * Teaspoon(HouseholdFood.Honey),
        ["U.water"] = () => Household.Of(HouseholdFood.Water).GramsPerCup!.Value,
    };

    private static double Teaspoon(HouseholdFood food) => Household.Of(food).GramsPerTeaspoon!.Value;
}
