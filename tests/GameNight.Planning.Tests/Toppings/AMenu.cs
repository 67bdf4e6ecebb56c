using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>A menu like a kitchen's: red and white base, blend, dairy-free and no cheese, up to fourteen toppings.</summary>
internal static class AMenu
{
    private static readonly Diet[] Every = Enum.GetValues<Diet>();
    private static readonly Diet[] NoMeat = Every;
    private static readonly Diet[] NotVegan = [Diet.Vegetarian, Diet.NoPork, Diet.NoAlcohol];

    public static Composition Wheat { get; } = Of([Allergen.GlutenCereals], Every);
    /// <summary>Of maize and soya, on baking paper up to 230 °C; one pie takes 160 g of the mix.</summary>
    public static SecondDough Maize { get; } = new(Of([Allergen.Soybeans], Every), Recipe(SecondDoughOn.BakingPaper, 230));

    /// <summary>With egg and milk, and nobody has read whether there are nuts.</summary>
    public static SecondDough Rich { get; } =
        new(Of([Allergen.Eggs, Allergen.Milk], [Diet.Vegetarian, Diet.NoPork, Diet.NoAlcohol]) with { Unknown = [Allergen.Nuts] }, Recipe(SecondDoughOn.OwnPan));

    public static MenuItem Red { get; } = new("red", MenuRole.Base, 0.3, Of([], NoMeat));
    public static MenuItem White { get; } = new("white", MenuRole.Base, 0.3, Of([Allergen.Milk], NotVegan));
    public static MenuItem Blend { get; } = new("blend", MenuRole.Cheese, 0.3, Of([Allergen.Milk], NotVegan));
    public static MenuItem DairyFree { get; } = new("dairy-free", MenuRole.Cheese, 0.3, Of([Allergen.Nuts], Every));
    public static MenuItem NoCheese { get; } = new("no-cheese", MenuRole.Cheese, 0, Composition.Nothing);

    public static IReadOnlyList<MenuItem> Toppings { get; } =
    [
        Topping("mushrooms", [], Every),
        Topping("salami", [], [Diet.NoAlcohol]),
        Topping("onions", [], Every),
        Topping("olives", [], Every),
        Topping("ham", [], [Diet.NoAlcohol]),
        Topping("peppers", [], Every),
        Topping("anchovies", [Allergen.Fish], [Diet.NoPork, Diet.NoAlcohol]),
        Topping("pesto", [Allergen.Milk, Allergen.Nuts], NotVegan),
        Topping("artichokes", [], Every),
        Topping("chicken", [], [Diet.NoPork, Diet.NoAlcohol]),
        Topping("spinach", [], Every),
        Topping("egg", [Allergen.Eggs], NotVegan),
        Topping("shrimps", [Allergen.Crustaceans], [Diet.NoPork, Diet.NoAlcohol]),
        Topping("pineapple", [], Every),
    ];

    public static Menu With(int toppings, int mostToppings = 3) =>
        new([Red, White, Blend, DairyFree, NoCheese, .. Toppings.Take(toppings)], mostToppings, Wheat);

    public static Composition Of(IReadOnlyList<Allergen> contains, IReadOnlyList<Diet> suits) => new(contains, [], [], suits);

    private static SecondDoughRecipe Recipe(SecondDoughOn on, double? paperUpTo = null) => new(
        new Grams(160), new Grams(125), new Grams(2.5), new Grams(8), new Grams(3), Duration.FromMinutes(60), on,
        paperUpTo is { } limit ? new Celsius(limit) : null);

    private static MenuItem Topping(string id, IReadOnlyList<Allergen> contains, IReadOnlyList<Diet> suits) =>
        new(id, MenuRole.Topping, 0.1, Of(contains, suits));
}
