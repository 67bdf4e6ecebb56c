namespace GameNight.Planning.Toppings;

/// <summary>One base, one cheese and some toppings, as places in the menu's lists; toppings ascending.</summary>
internal sealed record MenuChoice(int Base, int Cheese, IReadOnlyList<int> Toppings)
{
    public bool IsPlain => Toppings.Count == 0;
}

/// <summary>The menu by role, in the host's order: the first base and the first cheese are the house choice.</summary>
internal sealed class MenuLists(Menu menu)
{
    public Menu Menu { get; } = menu;
    public IReadOnlyList<MenuItem> Bases { get; } = [.. menu.Of(MenuRole.Base)];
    public IReadOnlyList<MenuItem> Cheeses { get; } = [.. menu.Of(MenuRole.Cheese)];
    public IReadOnlyList<MenuItem> Toppings { get; } = [.. menu.Of(MenuRole.Topping)];
}
