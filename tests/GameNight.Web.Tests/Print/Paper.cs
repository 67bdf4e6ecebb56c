using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Print;
using GameNight.Web.Tests.Panels;
using NodaTime;

namespace GameNight.Web.Tests.Print;

/// <summary>What the sheets of the usual night are handed besides the plan.</summary>
internal static class Paper
{
    public static PaperHead Head { get; } = new(
        "Board games", new LocalDateTime(2026, 12, 12, 18, 30), Plans.Zone, NightBuilder.Now, IsBeingRedone: false);

    public static IReadOnlyDictionary<string, Composition> Labels { get; } =
        SharedFolder.Tables.Menu.Items.ToDictionary(item => NightBuilder.Id(item.Name), item => item.Composition);

    public static IReadOnlyDictionary<string, MenuRole> Roles { get; } =
        SharedFolder.Tables.Menu.Items.ToDictionary(item => NightBuilder.Id(item.Name), item => item.Role);

    public static IReadOnlyDictionary<string, DietaryNeeds> Needs { get; } = new Dictionary<string, DietaryNeeds>
    {
        ["eva"] = new([Diet.Vegetarian], [], []),
        ["ana"] = new([Diet.Vegetarian], [], []),
        ["rui"] = new([], [], [Allergen.Nuts, Allergen.Milk]),
    };

    /// <summary>An own pie A; B with ham beside C without; a whole C twice.</summary>
    public static ToppingSplit Split { get; } = new(
        [
            new Combination("A", "tomato-sauce", "no-cheese", ["mushrooms"]),
            new Combination("B", "tomato-sauce", "cheese-blend", ["cooked-ham"]),
            new Combination("C", "no-sauce", "cheese-blend", ["anchovies"]),
        ],
        [
            new PieOrder(1, [new Sector("A", 8)], ["rui"]),
            new PieOrder(2, [new Sector("B", 4), new Sector("C", 4)], []),
            new PieOrder(3, [new Sector("C", 8)], []),
            new PieOrder(4, [new Sector("C", 8)], []),
        ],
        [new Serving("rui", 1, "A", 3), new Serving("eva", 2, "C", 2), new Serving("ana", 3, "C", 2)],
        [],
        SplitQuality.Quick,
        0,
        0,
        []);
}
