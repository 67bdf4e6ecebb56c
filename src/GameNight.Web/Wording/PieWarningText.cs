using System.Diagnostics;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Web.Wording;

/// <summary>Says what must not touch what, for those who top, bake and cut. A test demands a sentence for every warning.</summary>
/// <param name="nameOf">From an eater's id to a name.</param>
public sealed class PieWarningText(Func<string, string> nameOf)
{
    public string Say(PieWarning warning) => warning switch
    {
        KeptApart w => $"Own pie for {WordText.And([.. w.EaterIds.Select(nameOf)])}. Baked first, own board and cutter, clean hands.{Never(w.MustNotTouch)}",
        HalfKeptClear w => $"Nothing of {w.OtherLetter} on {w.Letter}: somebody who eats {w.Letter} {Rules(w)}. Cut {w.Letter} first.",
        KeptFromOwnPies w => $"Holds or may hold {And(w.Allergens)}: must not touch {Pies(w.PieNumbers)}, nor their board and cutter.",
        _ => throw new UnreachableException($"No wording for {warning.GetType().Name}."),
    };

    private static string Never(IReadOnlyList<Allergen> allergens) =>
        allergens.Count == 0 ? "" : $" Must not touch {And(allergens)}.";

    private static string Rules(HalfKeptClear warning) => WordText.And(
    [
        .. warning.Allergens.Count > 0 ? [$"must not have {And(warning.Allergens)}"] : Array.Empty<string>(),
        .. warning.Diets.Select(Keeps),
    ]);

    private static string Keeps(Diet diet) => diet switch
    {
        Diet.Vegetarian => "is vegetarian",
        Diet.Vegan => "is vegan",
        Diet.NoPork => "eats no pork",
        Diet.NoAlcohol => "takes no alcohol",
    };

    private static string And(IReadOnlyList<Allergen> allergens) => WordText.And([.. allergens.Select(WordText.Say)]);

    private static string Pies(IReadOnlyList<int> numbers) =>
        $"{(numbers.Count == 1 ? "pie" : "pies")} {WordText.And(WordText.Ranges(numbers))}";
}
