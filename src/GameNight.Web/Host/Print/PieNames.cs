using GameNight.Nights.Records;
using GameNight.Planning.Toppings;
using GameNight.Web.Drawings;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Print;

/// <summary>What is on a sector, and which part of the pie it is, in words.</summary>
/// <param name="items">Menu item id to name.</param>
/// <param name="named">Sets of toppings that have a name in this house.</param>
public sealed class PieNames(
    ToppingSplit split, IReadOnlyDictionary<string, string> items, IReadOnlyList<NamedToppings>? named = null)
{
    public IReadOnlyDictionary<string, Combination> Combinations { get; } =
        split.Combinations.ToDictionary(combination => combination.Letter);

    /// <summary>"Woodland: Tomato sauce, Cheese blend, Mushrooms": what is on it is said under every name.</summary>
    public string Of(Combination combination) => Named(combination, combination.ItemIds.Select(ItemOf));

    /// <summary>The same with the items as words among others.</summary>
    public string Within(Combination combination) => Named(combination, combination.ItemIds.Select(id => ItemOf(id).ToLowerInvariant()));

    public string Of(Sector sector) => Of(Combinations[sector.Letter]);

    private string Named(Combination combination, IEnumerable<string> onIt) =>
        named?.FirstOrDefault(set => set.Is(combination)) is { } house
            ? Phrase.Fill(PieWords.CalledWith, house.Name, WordText.List(onIt))
            : WordText.List(onIt);

    private string ItemOf(string id) => items.GetValueOrDefault(id, Words.Something);

    /// <summary>As the pie is drawn.</summary>
    public static string Part(PieOrder pie, int index) => PiePart.Of(pie)[index].Name;

    /// <summary>"Pie 3", or "Pies 3, 4 and 7".</summary>
    public static string Numbers(IReadOnlyList<int> numbers) => Phrase.Count(
        PieWords.ResourceManager, nameof(PieWords.NumbersOther), numbers.Count, WordText.And(WordText.Ranges(numbers)));
}
