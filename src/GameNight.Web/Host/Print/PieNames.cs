using GameNight.Planning.Toppings;
using GameNight.Web.Drawings;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Print;

/// <summary>What is on a sector, and which part of the pie it is, in words.</summary>
/// <param name="items">Menu item id to name.</param>
public sealed class PieNames(ToppingSplit split, IReadOnlyDictionary<string, string> items)
{
    public IReadOnlyDictionary<string, Combination> Combinations { get; } =
        split.Combinations.ToDictionary(combination => combination.Letter);

    public string Of(Combination combination) => WordText.List(combination.ItemIds.Select(id => items.GetValueOrDefault(id, Words.Something)));

    public string Of(Sector sector) => Of(Combinations[sector.Letter]);

    /// <summary>As the pie is drawn.</summary>
    public static string Part(PieOrder pie, int index) => PiePart.Of(pie)[index].Name;

    /// <summary>"Pie 3", or "Pies 3, 4 and 7".</summary>
    public static string Numbers(IReadOnlyList<int> numbers) => Phrase.Count(
        PieWords.ResourceManager, nameof(PieWords.NumbersOther), numbers.Count, WordText.And(WordText.Ranges(numbers)));
}
