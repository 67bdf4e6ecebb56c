using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>
/// Three pies by hand: an own pie A that is plain, B with anchovies beside C with a sausage nobody has read the label of, and
/// a whole C.
/// </summary>
internal static class ATable
{
    public static ToppingSplit Split { get; } = new(
        [
            new Combination("A", "red", "no-cheese", []),
            new Combination("B", "red", "blend", ["anchovies"]),
            new Combination("C", "red", "no-cheese", ["sausage"]),
        ],
        [
            new PieOrder(1, [new Sector("A", 8)], ["rui"]),
            new PieOrder(2, [new Sector("B", 4), new Sector("C", 4)], []),
            new PieOrder(3, [new Sector("C", 8)], []),
        ],
        [
            new Serving("rui", 1, "A", 3), new Serving("eva", 2, "B", 3), new Serving("ana", 2, "C", 2), new Serving("eva", 3, "C", 2),
        ],
        [],
        SplitQuality.Quick,
        0,
        0,
        []);

    public static IReadOnlyDictionary<string, Composition> Items { get; } = new Dictionary<string, Composition>
    {
        ["red"] = AMenu.Red.Composition,
        ["blend"] = AMenu.Blend.Composition,
        ["no-cheese"] = Composition.Nothing,
        ["anchovies"] = new([Allergen.Fish], [], [], [Diet.NoPork, Diet.NoAlcohol]),
        ["sausage"] = new([], [Allergen.Mustard, Allergen.Milk], [Allergen.Sulphites, Allergen.Milk], [Diet.NoAlcohol]),
    };

    public static Composition Dough { get; } = new([Allergen.GlutenCereals], [Allergen.Soybeans], [], Enum.GetValues<Diet>());
}
