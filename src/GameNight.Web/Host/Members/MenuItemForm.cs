using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Web.Host.Members;

/// <summary>What a label says about one allergen.</summary>
public enum LabelSays
{
    Nothing,
    Contains,
    MayContain,
    Unknown,
}

/// <summary>A menu item as fields. A new one is unknown in everything: nobody has read its label yet.</summary>
public sealed class MenuItemForm(MenuRole role)
{
    public MenuRole Role => role;
    public string Name { get; set; } = "";
    public string GramsPerCm2 { get; set; } = "0.06";
    public bool IsOffered { get; set; } = true;
    public HashSet<Diet> Suits { get; } = [];
    public Dictionary<Allergen, LabelSays> Labels { get; } =
        Enum.GetValues<Allergen>().ToDictionary(allergen => allergen, _ => LabelSays.Unknown);

    public Composition Composition => new(
        Of(LabelSays.Contains), Of(LabelSays.MayContain), Of(LabelSays.Unknown), [.. Suits.Order()]);

    public static MenuItemForm Of(PantryItem item)
    {
        var form = new MenuItemForm(item.Role)
        {
            Name = item.Name,
            GramsPerCm2 = TypedNumbers.Text(item.GramsPerCm2),
            IsOffered = item.IsOffered,
        };
        form.Suits.UnionWith(item.Composition.Suits);
        foreach (var allergen in Enum.GetValues<Allergen>())
        {
            form.Labels[allergen] = item.Composition.Contains.Contains(allergen) ? LabelSays.Contains
                : item.Composition.MayContain.Contains(allergen) ? LabelSays.MayContain
                : item.Composition.Unknown.Contains(allergen) ? LabelSays.Unknown
                : LabelSays.Nothing;
        }

        return form;
    }

    public (double? GramsPerCm2, IReadOnlyDictionary<string, string> Problems) ReadMass()
    {
        var numbers = new TypedNumbers();
        var mass = numbers.Read("gramsPerCm2", GramsPerCm2, 0, 1);
        return (numbers.Problems.Count == 0 ? mass : null, numbers.Problems);
    }

    private IReadOnlyList<Allergen> Of(LabelSays says) =>
        [.. Labels.Where(label => label.Value == says).Select(label => label.Key).Order()];
}
