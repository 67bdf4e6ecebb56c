using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

public sealed record MenuRow(
    string Name,
    MenuRole Role,
    double GramsPerCm2,
    IReadOnlyList<Allergen> Contains,
    IReadOnlyList<Allergen> MayContain,
    IReadOnlyList<Allergen> Unknown,
    IReadOnlyList<Diet> Suits,
    double? WaterShare = null)
{
    public Composition Composition => new(Contains, MayContain, Unknown, Suits);
}

/// <summary>The menu a new kitchen starts with.</summary>
public sealed record MenuTable(string Note, IReadOnlyList<MenuRow> Items, Composition Dough)
{
    internal const string File = "menu.json";
}
