using System.Diagnostics;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>Says what must not touch what, for those who top, bake and cut. A test demands a sentence for every warning.</summary>
/// <param name="nameOf">From an eater's id to a name.</param>
/// <param name="items">Menu item id to name.</param>
/// <param name="measures">What the reader reads; null for metric ones.</param>
public sealed class PieWarningText(Func<string, string> nameOf, IReadOnlyDictionary<string, string>? items = null, Measures? measures = null)
{
    public string Say(PieWarning warning) => warning switch
    {
        KeptApart { MustNotTouch: [] } w => Fill(PieWords.KeptApart, Names(w)),
        KeptApart w => Fill(PieWords.KeptApartFrom, Names(w), And(w.MustNotTouch)),
        OnAnotherDough w => Fill(PieWords.OnAnotherDough, SecondDoughText.Where(w.On, w.PaperUpTo, measures ?? Measures.Metric)),
        PartKeptClear w => Fill(PieWords.PartKeptClear, w.OtherLetter, w.Letter, Rules(w)),
        KeptFromOwnPies w => Count(
            PieWords.ResourceManager, nameof(PieWords.KeptFromOwnPiesOther), w.PieNumbers.Count,
            And(w.Allergens), WordText.And(WordText.Ranges(w.PieNumbers))),
        _ => throw new UnreachableException($"No wording for {warning.GetType().Name}."),
    };

    private string Names(KeptApart warning) => WordText.And([.. warning.EaterIds.Select(nameOf)]);

    private string Rules(PartKeptClear warning) => WordText.And(
    [
        .. warning.Allergens.Count > 0 ? [Fill(PieWords.MustNotHave, And(warning.Allergens))] : Array.Empty<string>(),
        .. warning.Diets.Select(Keeps),
        .. warning.ItemIds.Count > 0
            ? [Fill(PieWords.MustNotHave, WordText.And([.. warning.ItemIds.Select(id => items?.GetValueOrDefault(id) ?? Words.Something)]))]
            : Array.Empty<string>(),
    ]);

    private static string Keeps(Diet diet) => diet switch
    {
        Diet.Vegetarian => PieWords.IsVegetarian,
        Diet.Vegan => PieWords.IsVegan,
        Diet.NoPork => PieWords.EatsNoPork,
        Diet.NoAlcohol => PieWords.TakesNoAlcohol,
    };

    private static string And(IReadOnlyList<Allergen> allergens) => WordText.And([.. allergens.Select(WordText.Say)]);
}
