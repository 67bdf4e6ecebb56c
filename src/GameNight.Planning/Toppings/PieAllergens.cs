using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>
/// What is known of the fourteen allergens on one pie, whose halves touch. The lists are different things, and none of them,
/// nor being in no list, means that the allergen is absent.
/// </summary>
/// <param name="Contains">Something on the pie contains it.</param>
/// <param name="MayContain">A label of something on the pie warns of it; not what is contained.</param>
/// <param name="SharedMayContain">
/// May be there from the shared kitchen: something else on the table holds it, or may; in neither list before.
/// </param>
/// <param name="Unknown">
/// Nobody has read it on a label of something on the pie. Not what is contained, but perhaps what may be contained too: a
/// warning that was read does not settle a label that was not.
/// </param>
/// <param name="SharedUnknown">Nobody has read it on a label of something else on the table; neither contained nor unknown here.</param>
public sealed record PieAllergens(
    int PieNumber,
    IReadOnlyList<Allergen> Contains,
    IReadOnlyList<Allergen> MayContain,
    IReadOnlyList<Allergen> SharedMayContain,
    IReadOnlyList<Allergen> Unknown,
    IReadOnlyList<Allergen> SharedUnknown)
{
    private static readonly Allergen[] All = Enum.GetValues<Allergen>();

    /// <summary>Nothing is known of what is not on the menu any more.</summary>
    private static readonly Composition Unread = new([], [], All, []);

    /// <summary>Named by no label. That is no promise.</summary>
    public IEnumerable<Allergen> NotNamed => All.Except([.. Contains, .. MayContain, .. SharedMayContain, .. Unknown, .. SharedUnknown]);

    /// <summary>For every pie of the split, from what the labels say of dough, bases, cheeses and toppings.</summary>
    /// <param name="items">Menu item id to what its label says.</param>
    /// <param name="secondDough">Null where there is none (any more).</param>
    public static IReadOnlyList<PieAllergens> Of(
        ToppingSplit split, IReadOnlyDictionary<string, Composition> items, Composition dough, Composition? secondDough = null)
    {
        var labels = split.Combinations.ToDictionary(
            combination => combination.Letter,
            combination => combination.ItemIds.Select(id => items.GetValueOrDefault(id, Unread)).ToList());
        var pies = split.Pies.Select(pie => (pie.Number, OnIt: OnPie(pie))).ToList();
        var table = pies.SelectMany(pie => pie.OnIt).Distinct().ToList();
        return [.. pies.Select(pie => Of(pie.Number, pie.OnIt, table))];

        List<Composition> OnPie(PieOrder pie) =>
            [.. pie.Sectors.SelectMany(sector => labels[sector.Letter]), pie.IsOnSecondDough ? secondDough ?? Unread : dough];
    }

    private static PieAllergens Of(int pieNumber, List<Composition> onIt, List<Composition> table)
    {
        var contains = Where(onIt, label => label.Contains);
        var mayContain = Where(onIt, label => label.MayContain, except: contains);
        var shared = Where(table, label => label.Contains.Concat(label.MayContain), except: [.. contains, .. mayContain]);
        var unknown = Where(onIt, label => label.Unknown, except: contains);
        var sharedUnknown = Where(table, label => label.Unknown, except: [.. contains, .. unknown]);
        return new PieAllergens(pieNumber, contains, mayContain, shared, unknown, sharedUnknown);
    }

    private static List<Allergen> Where(
        List<Composition> labels, Func<Composition, IEnumerable<Allergen>> named, params IReadOnlyList<Allergen> except) =>
        [.. labels.SelectMany(named).Distinct().Except(except).Order()];
}
