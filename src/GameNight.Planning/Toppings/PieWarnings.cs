using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>Finds, pie by pie, what must not touch what: from whose slices are where and from what the labels say.</summary>
/// <param name="needs">Eater id to must-nots.</param>
/// <param name="items">Menu item id to what its label says.</param>
/// <param name="second">Null where there is none (any more).</param>
public sealed class PieWarnings(
    ToppingSplit split, IReadOnlyDictionary<string, DietaryNeeds> needs, IReadOnlyDictionary<string, Composition> items,
    SecondDough? second = null)
{
    private readonly Dictionary<string, Combination> _combinations =
        split.Combinations.ToDictionary(combination => combination.Letter);

    public IReadOnlyList<PieWarning> Of(PieOrder pie) => [.. OwnPie(pie), .. AnotherDough(pie), .. Parts(pie), .. OwnPiesNear(pie)];

    private IEnumerable<PieWarning> OwnPie(PieOrder pie) =>
        pie.IsOwnPie ? [new KeptApart(pie.OwnPieFor, MustNotTouch(pie))] : [];

    private IEnumerable<PieWarning> AnotherDough(PieOrder pie) =>
        pie.IsOnSecondDough && second is not null ? [new OnAnotherDough(second.Recipe.On, second.Recipe.PaperUpTo)] : [];

    private IEnumerable<PieWarning> Parts(PieOrder pie) =>
        from kept in pie.Sectors
        from other in pie.Sectors
        where kept.Letter != other.Letter
        let eaters = NeedsOn(pie, kept)
        let allergens = eaters.SelectMany(one => one.Avoids.Concat(one.MustNotTouch)).Distinct().Order()
            .Where(allergen => IsOrMayBeOn(other.Letter, allergen)).ToList()
        let diets = eaters.SelectMany(one => one.Diets).Distinct().Order()
            .Where(diet => !Suits(other.Letter, diet)).ToList()
        let itemsKeptOff = eaters.SelectMany(one => one.KeptOff ?? []).Distinct().Order(StringComparer.Ordinal)
            .Where(_combinations[other.Letter].ItemIds.Contains).ToList()
        where allergens.Count + diets.Count + itemsKeptOff.Count > 0
        select new PartKeptClear(kept.Letter, other.Letter, allergens, diets, itemsKeptOff);

    private IEnumerable<PieWarning> OwnPiesNear(PieOrder pie)
    {
        var near = split.Pies
            .Where(own => own.IsOwnPie && own.Number != pie.Number)
            .Select(own => (own.Number, Allergens: MustNotTouch(own).Where(allergen => IsOrMayBeOn(pie, allergen)).ToList()))
            .Where(own => own.Allergens.Count > 0)
            .ToList();
        return near.Count == 0
            ? []
            : [new KeptFromOwnPies([.. near.Select(own => own.Number)], [.. near.SelectMany(own => own.Allergens).Distinct().Order()])];
    }

    private List<Allergen> MustNotTouch(PieOrder own) =>
        [.. own.OwnPieFor.SelectMany(id => NeedsOf(id).MustNotTouch).Distinct().Order()];

    private List<DietaryNeeds> NeedsOn(PieOrder pie, Sector sector) =>
    [
        .. split.Servings
            .Where(serving => serving.PieNumber == pie.Number && serving.Letter == sector.Letter)
            .Select(serving => NeedsOf(serving.EaterId)),
    ];

    private DietaryNeeds NeedsOf(string eaterId) => needs.GetValueOrDefault(eaterId, DietaryNeeds.None);

    /// <summary>What is in the main dough is in the whole kitchen, and no own pie is kept from it; the second dough is another matter.</summary>
    private bool IsOrMayBeOn(PieOrder pie, Allergen allergen) =>
        pie.Sectors.Any(sector => IsOrMayBeOn(sector.Letter, allergen))
        || (pie.IsOnSecondDough && second?.Composition.IsOrMayBe(allergen) != false);

    /// <summary>Of what is not on the menu any more nothing is known.</summary>
    private bool IsOrMayBeOn(string letter, Allergen allergen) =>
        _combinations[letter].ItemIds.Any(id => items.GetValueOrDefault(id)?.IsOrMayBe(allergen) ?? true);

    private bool Suits(string letter, Diet diet) =>
        _combinations[letter].ItemIds.All(id => items.GetValueOrDefault(id)?.Suits.Contains(diet) ?? false);
}
