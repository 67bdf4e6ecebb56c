using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Toppings;

namespace GameNight.Nights.PastNights;

/// <summary>Pies of a night that had the same on them. Who likes one likes them all, so they are asked about once.</summary>
/// <param name="Number">The first of their numbers stands for all of them.</param>
/// <param name="Drawn">As it is drawn: without whose own pie it may have been.</param>
public sealed record PieKind(int Number, IReadOnlyList<int> Numbers, PieOrder Drawn)
{
    public IEnumerable<string> Letters => Drawn.Sectors.Select(sector => sector.Letter);
}

/// <summary>What was on the table, to be shown to everybody: no eater is named in it.</summary>
/// <param name="Combinations">By letter.</param>
/// <param name="Items">Everything that is on one of the combinations.</param>
public sealed record NightPies(
    IReadOnlyList<PieKind> Kinds, IReadOnlyDictionary<string, Combination> Combinations, IReadOnlyList<PantryItem> Items)
{
    public static NightPies None { get; } = new([], new Dictionary<string, Combination>(), []);

    public static NightPies Of(NightPlan? plan, IReadOnlyList<PantryItem> menu)
    {
        if (plan is null)
        {
            return None;
        }

        var kinds = plan.Split.Pies
            .GroupBy(pie => string.Join('/', pie.Sectors.Select(sector => sector.Letter).Order(StringComparer.Ordinal)))
            .Select(same => new PieKind(
                same.Min(pie => pie.Number),
                [.. same.Select(pie => pie.Number).Order()],
                same.MinBy(pie => pie.Number)! with { OwnPieFor = [] }))
            .OrderBy(kind => kind.Letters.Min(letter => letter.Length))
            .ThenBy(kind => string.Join('/', kind.Letters), StringComparer.Ordinal);
        var onPies = plan.Split.Combinations.SelectMany(combination => combination.ItemIds).ToHashSet();
        return new NightPies(
            [.. kinds],
            plan.Split.Combinations.ToDictionary(combination => combination.Letter),
            [.. menu.Where(item => onPies.Contains(item.Id.ToString()))]);
    }

    /// <returns>The kind of the pie with this number, or null when there was none.</returns>
    public PieKind? KindOf(int number) => Kinds.FirstOrDefault(kind => kind.Numbers.Contains(number));
}
