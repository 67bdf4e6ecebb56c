using GameNight.Planning.Toppings;
using GameNight.Web.Wording;

namespace GameNight.Web.Host.Print;

/// <summary>What is on a sector, and which part of the pie it is, in words.</summary>
/// <param name="items">Menu item id to name.</param>
public sealed class PieNames(ToppingSplit split, IReadOnlyDictionary<string, string> items)
{
    public IReadOnlyDictionary<string, Combination> Combinations { get; } =
        split.Combinations.ToDictionary(combination => combination.Letter);

    public string Of(Combination combination) => WordText.List(combination.ItemIds.Select(id => items.GetValueOrDefault(id, "something")));

    public string Of(Sector sector) => Of(Combinations[sector.Letter]);

    /// <summary>As the pie is drawn: the first half is on the left.</summary>
    public static string Part(PieOrder pie, int index) => pie.Sectors.Count switch
    {
        1 => "Whole pie",
        2 => index == 0 ? "Left half" : "Right half",
        _ => $"Part {index + 1}",
    };

    /// <summary>"Pie 3", or "Pies 3, 4 and 7".</summary>
    public static string Numbers(IReadOnlyList<int> numbers) =>
        $"{(numbers.Count == 1 ? "Pie" : "Pies")} {WordText.And(WordText.Ranges(numbers))}";
}
