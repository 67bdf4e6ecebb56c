using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>
/// What goes into the dough in spoons, cups and fluid ounces, each named with the food it holds for. Null where no figure of
/// that very food is known, or where it is too little for a spoon.
/// </summary>
public static class HouseholdText
{
    /// <summary>Ounces, and spoons or cups where the food's own weight is known, beside the grams that are weighed.</summary>
    /// <returns>Nothing for who reads grams alone.</returns>
    public static string Beside(Grams mass, Func<Grams, string?> household, Measures measures) => measures.IsUsCustomary
        ? WordText.List(new[] { measures.OuncesBeside(mass), household(mass) }.OfType<string>())
        : "";

    /// <summary>Which flour the host has is not known, and it makes a difference of a tenth: both are said.</summary>
    public static string? OfFlour(Grams mass) =>
        (Household.Say(mass, HouseholdFood.BreadFlour, Words.BreadFlour), Household.Say(mass, HouseholdFood.AllPurposeFlour, Words.AllPurposeFlour)) switch
        {
            ({ } bread, { } allPurpose) => Phrase.Fill(Amounts.Either, bread, allPurpose),
            _ => null,
        };

    public static string? OfWater(Grams mass) => Household.FluidOuncesOfWater(mass);

    public static string? OfSalt(Grams mass) => Household.Say(mass, HouseholdFood.TableSalt, Words.TableSalt);

    public static string? OfOil(Grams mass) => Household.Say(mass, HouseholdFood.OliveOil, Words.OliveOil);

    public static string? OfSugar(Grams mass) => Household.Say(mass, HouseholdFood.GranulatedSugar, Words.GranulatedSugar);

    public static string? OfHoney(Grams mass) => Household.Say(mass, HouseholdFood.Honey, Words.Honey);

    /// <summary>Fresh yeast comes in cakes of many sizes and is weighed.</summary>
    public static string? OfYeast(YeastForm form, Grams mass) => form switch
    {
        YeastForm.Fresh => null,
        YeastForm.ActiveDry => Household.Measure(mass, HouseholdFood.ActiveDryYeast),
        YeastForm.Instant => Household.Measure(mass, HouseholdFood.InstantYeast),
    };
}
