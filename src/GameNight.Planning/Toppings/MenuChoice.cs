namespace GameNight.Planning.Toppings;

/// <summary>One base, one cheese and some toppings, as places in the menu's lists; toppings ascending.</summary>
internal sealed record MenuChoice(int Base, int Cheese, IReadOnlyList<int> Toppings)
{
    public bool IsPlain => Toppings.Count == 0;

    public bool IsSameAs(MenuChoice other) =>
        Base == other.Base && Cheese == other.Cheese && Toppings.SequenceEqual(other.Toppings);
}

/// <summary>The menu by role, in the host's order: the first base and the first cheese are the house choice.</summary>
internal sealed class MenuLists(Menu menu, WetnessRule? wetness = null)
{
    public Menu Menu { get; } = menu;
    public IReadOnlyList<MenuItem> Bases { get; } = [.. menu.Of(MenuRole.Base)];
    public IReadOnlyList<MenuItem> Cheeses { get; } = [.. menu.Of(MenuRole.Cheese)];
    public IReadOnlyList<MenuItem> Toppings { get; } = [.. menu.Of(MenuRole.Topping)];

    /// <summary>
    /// Even by the low end of what is known there is more water than a middle bears, and it is the toppings that bring it.
    /// </summary>
    public bool IsTooWet(MenuChoice choice)
    {
        if (wetness is null || choice.IsPlain)
        {
            return false;
        }

        var plain = Water(Bases[choice.Base]) + Water(Cheeses[choice.Cheese]);
        return plain <= wetness.BoundGramsPerCm2
            && plain + choice.Toppings.Sum(topping => Water(Toppings[topping])) > wetness.BoundGramsPerCm2;

        double Water(MenuItem item) => wetness.AtLeastGramsPerCm2.GetValueOrDefault(item.Id);
    }

    public bool Has(MenuChoice choice, MenuItem item) => item.Role switch
    {
        MenuRole.Base => Bases[choice.Base].Id == item.Id,
        MenuRole.Cheese => Cheeses[choice.Cheese].Id == item.Id,
        MenuRole.Topping => choice.Toppings.Any(topping => Toppings[topping].Id == item.Id),
    };

    /// <summary>The named sets that tonight's menu allows, as places in its list: all on offer, not too many, none of them apart.</summary>
    public IReadOnlyList<int[]> NamedSets()
    {
        var places = Toppings.Select((item, place) => (item.Id, place)).ToDictionary(topping => topping.Id, topping => topping.place);
        return
        [
            .. (Menu.Named ?? [])
                .Where(set => set.ToppingIds.Count <= Menu.MostToppings && set.ToppingIds.All(places.ContainsKey))
                .Select(set => set.ToppingIds.Select(id => places[id]).Order().ToArray())
                .Where(set => !NeverTogether(set)),
        ];
    }

    /// <summary>True when the host keeps two of these toppings (places in the list) off one sector.</summary>
    public bool NeverTogether(IReadOnlyCollection<int> toppings) => Menu.Apart is { } apart && apart.Any(pair =>
        toppings.Any(topping => Toppings[topping].Id == pair.FirstId) && toppings.Any(topping => Toppings[topping].Id == pair.SecondId));
}
