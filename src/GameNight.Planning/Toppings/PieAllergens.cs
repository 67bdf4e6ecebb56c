using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>
/// What is known of the fourteen allergens on one pie, whose halves touch. The lists are different things, and none of them,
/// nor being in no list, means that the allergen is absent.
/// </summary>
/// <param name="Contains">Something on the pie contains it.</param>
/// <param name="MayContain">A label of something on the pie warns of it; not what is contained.</param>
/// <param name="SharedKitchen">May be there too: something else on the table holds it; in neither list before.</param>
/// <param name="Unknown">
/// Of something on the pie, or elsewhere on the table, nobody has read it. Not what is contained, but perhaps what is also in
/// another list: a warning that was read does not settle a label that was not.
/// </param>
public sealed record PieAllergens(
    int PieNumber,
    IReadOnlyList<Allergen> Contains,
    IReadOnlyList<Allergen> MayContain,
    IReadOnlyList<Allergen> SharedKitchen,
    IReadOnlyList<Allergen> Unknown)
{
    private static readonly Allergen[] All = Enum.GetValues<Allergen>();

    /// <summary>Nothing is known of what is not on the menu any more.</summary>
    private static readonly Composition Unread = new([], [], All, []);

    /// <summary>Named by no label. That is no promise.</summary>
    public IEnumerable<Allergen> NotNamed => All.Except([.. Contains, .. MayContain, .. SharedKitchen, .. Unknown]);

    /// <summary>For every pie of the split, from what the labels say of dough, bases, cheeses and toppings.</summary>
    /// <param name="items">Menu item id to what its label says.</param>
    public static IReadOnlyList<PieAllergens> Of(
        ToppingSplit split, IReadOnlyDictionary<string, Composition> items, Composition dough)
    {
        var labels = split.Combinations.ToDictionary(
            combination => combination.Letter,
            combination => combination.ItemIds.Select(id => items.GetValueOrDefault(id, Unread)).Append(dough).ToList());
        var table = split.Pies.SelectMany(pie => pie.Sectors).SelectMany(sector => labels[sector.Letter]).Distinct().ToList();
        return [.. split.Pies.Select(pie => Of(pie.Number, [.. pie.Sectors.SelectMany(sector => labels[sector.Letter])], table))];
    }

    private static PieAllergens Of(int pieNumber, List<Composition> onIt, List<Composition> table)
    {
        var contains = Where(allergen => onIt.Exists(label => label.Contains.Contains(allergen)));
        var mayContain = Where(allergen => onIt.Exists(label => label.MayContain.Contains(allergen))).Except(contains).ToList();
        var shared = Where(allergen => table.Exists(label => label.Contains.Contains(allergen) || label.MayContain.Contains(allergen)))
            .Except(contains).Except(mayContain).ToList();
        var unknown = Where(allergen => table.Exists(label => label.Unknown.Contains(allergen))).Except(contains).ToList();
        return new PieAllergens(pieNumber, contains, mayContain, shared, unknown);
    }

    private static List<Allergen> Where(Func<Allergen, bool> holds) => [.. All.Where(holds)];
}
