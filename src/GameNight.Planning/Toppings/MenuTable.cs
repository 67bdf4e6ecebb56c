using GameNight.Planning.Guests;
using GameNight.Planning.Reference;

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

/// <summary>Flour on the peel, under every pie.</summary>
public enum PeelFlour
{
    Wheat,
    Semolina,
    Maize,
    Rice,
}

/// <summary>Oil that balls lie in, on every pie.</summary>
public enum BoxOil
{
    Olive,
    Rapeseed,
    Sunflower,
    Peanut,
    Sesame,
}

/// <summary>What something under every pie brings as such; its pack may say more.</summary>
public sealed record UnderRow<T>(
    T Kind, IReadOnlyList<Allergen> Contains, IReadOnlyList<Allergen> MayContain, IReadOnlyList<Allergen> Unknown, string Source)
    where T : struct, Enum
{
    private static readonly Diet[] EveryDiet = Enum.GetValues<Diet>();

    /// <summary>Flours and plant oils keep every diet.</summary>
    public Composition Composition => new(Contains, MayContain, Unknown, EveryDiet);
}

/// <summary>The menu a new kitchen starts with, and what lies under every pie.</summary>
/// <param name="Dough">The dough itself, whatever flour and oil nobody has named included.</param>
public sealed record MenuTable(
    string Note, IReadOnlyList<MenuRow> Items, Composition Dough, IReadOnlyList<UnderRow<PeelFlour>> Peel, IReadOnlyList<UnderRow<BoxOil>> Oil)
{
    internal const string File = "menu.json";

    /// <exception cref="ReferenceTableException">Not exactly one row for each kind of flour and oil.</exception>
    internal MenuTable Checked()
    {
        ReferenceText.OneRowEach(File, Peel, row => row.Kind);
        ReferenceText.OneRowEach(File, Oil, row => row.Kind);
        return this;
    }

    /// <summary>The dough with flour on the peel and oil in the box, which touch every pie.</summary>
    public Composition DoughWith(PeelFlour? peel, BoxOil? oil)
    {
        var dough = peel is { } flour ? Dough.With(Peel.Single(row => row.Kind == flour).Composition) : Dough;
        return oil is { } kind ? dough.With(Oil.Single(row => row.Kind == kind).Composition) : dough;
    }
}
