using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using GameNight.Web.Wording;

namespace GameNight.Web.Host.Members;

/// <summary>What a label says about one allergen.</summary>
public enum LabelSays
{
    Nothing,
    Contains,
    MayContain,
    Unknown,
}

/// <summary>
/// What a label says, as fields. A new one is unknown in everything: nobody has read it yet.
/// </summary>
public sealed class LabelForm
{
    public HashSet<Diet> Suits { get; } = [];
    public Dictionary<Allergen, LabelSays> Allergens { get; } =
        Enum.GetValues<Allergen>().ToDictionary(allergen => allergen, _ => LabelSays.Unknown);

    public Composition Composition => new(
        Of(LabelSays.Contains), Of(LabelSays.MayContain), Of(LabelSays.Unknown), [.. Suits.Order()]);

    public static LabelForm Of(Composition composition)
    {
        var form = new LabelForm();
        form.Suits.UnionWith(composition.Suits);
        foreach (var allergen in Enum.GetValues<Allergen>())
        {
            form.Allergens[allergen] = composition.Contains.Contains(allergen) ? LabelSays.Contains
                : composition.MayContain.Contains(allergen) ? LabelSays.MayContain
                : composition.Unknown.Contains(allergen) ? LabelSays.Unknown
                : LabelSays.Nothing;
        }

        return form;
    }

    private IReadOnlyList<Allergen> Of(LabelSays says) =>
        [.. Allergens.Where(label => label.Value == says).Select(label => label.Key).Order()];
}

/// <summary>
/// A menu item as fields, in the measures of the host.
/// </summary>
public sealed class MenuItemForm(MenuRole role, Measures measures, double gramsPerCm2 = MenuItemForm.UsualGramsPerCm2)
{
    private const double UsualGramsPerCm2 = 0.06;

    private PantryStock? _stock;

    public MenuRole Role => role;
    public string Name { get; set; } = "";
    public string MassPerArea { get; set; } = measures.MassPerArea.Typed(gramsPerCm2);

    /// <summary>In percent; empty where nobody knows.</summary>
    public string Water { get; set; } = "";

    /// <summary>In the measure of the host; empty where as much as it takes is bought.</summary>
    public string OnHand { get; set; } = "";

    /// <summary>In the measure of the host; empty where nobody said.</summary>
    public string Pack { get; set; } = "";

    public bool IsOffered { get; set; } = true;
    public LabelForm Label { get; private init; } = new();

    public static MenuItemForm Of(PantryItem item, Measures measures)
    {
        return new MenuItemForm(item.Role, measures, item.GramsPerCm2)
        {
            Name = item.Name,
            Water = item.WaterShare is { } water ? TypedNumbers.Text(water * 100) : "",
            OnHand = item.Stock?.OnHandGrams is { } there ? measures.Mass.Typed(there) : "",
            Pack = item.Stock?.PackGrams is { } pack ? measures.Mass.Typed(pack) : "",
            IsOffered = item.IsOffered,
            Label = LabelForm.Of(item.Composition),
            _stock = item.Stock,
        };
    }

    public (double? GramsPerCm2, double? WaterShare, PantryStock? Stock, IReadOnlyDictionary<string, string> Problems) ReadMass()
    {
        var numbers = new TypedNumbers("menu.items");
        var mass = numbers.Read("gramsPerCm2", MassPerArea, 0, 1, measures.MassPerArea, gramsPerCm2);
        double? water = string.IsNullOrWhiteSpace(Water) ? null : numbers.Read("waterShare", Water, 0, 100) / 100;
        double? onHand = string.IsNullOrWhiteSpace(OnHand)
            ? null
            : numbers.Read("onHandGrams", OnHand, 0, MenuCheck.MostOnHandGrams, measures.Mass, _stock?.OnHandGrams);
        double? pack = string.IsNullOrWhiteSpace(Pack)
            ? null
            : numbers.Read("packGrams", Pack, MenuCheck.LeastPackGrams, MenuCheck.MostPackGrams, measures.Mass, _stock?.PackGrams);
        return numbers.Problems.Count == 0
            ? (mass, water, new PantryStock(onHand, pack), numbers.Problems)
            : (null, null, null, numbers.Problems);
    }
}
