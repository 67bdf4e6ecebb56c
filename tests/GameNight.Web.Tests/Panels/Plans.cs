using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

/// <summary>Plans to show, made by the planner itself.</summary>
internal static class Plans
{
    public const string Zone = "Europe/Lisbon";

    /// <summary>Eight adults, two of whom are vegetarian and one of whom must not touch nuts or milk.</summary>
    public static NightPlan Usual { get; } = Of(NightBuilder.ANight()
        .WithGuests(5)
        .With(AnswerState.Coming, NightBuilder.AnEater("eva", needs: new DietaryNeeds([Diet.Vegetarian], [], [])))
        .With(AnswerState.Coming, NightBuilder.AnEater("ana", needs: new DietaryNeeds([Diet.Vegetarian], [], [])))
        .With(AnswerState.Coming, NightBuilder.AnEater("rui", needs: new DietaryNeeds([], [], [Allergen.Nuts, Allergen.Milk])))
        .Build());

    /// <summary>Of maize, which may hold soya, on baking paper up to 230 °C; the oven of these nights is at 250 °C.</summary>
    public static SecondDough Maize { get; } = new(
        new Composition([], [Allergen.Soybeans], [], Enum.GetValues<Diet>()),
        new SecondDoughRecipe(
            new Grams(160), new Grams(125), new Grams(2.5), default, new Grams(3.5), Duration.FromMinutes(60), SecondDoughOn.BakingPaper, new Celsius(230)));

    /// <summary>Seven adults, one of whom must not have gluten and gets a pie of maize.</summary>
    public static NightPlan OnTwoDoughs { get; } = Of(NightBuilder.ANight()
        .WithGuests(6)
        .With(AnswerState.Coming, NightBuilder.AnEater("rui", needs: new DietaryNeeds([], [Allergen.GlutenCereals], [])))
        .But(night => night with { Menu = night.Menu with { SecondDough = Maize } })
        .Build());

    public static NightPlan Empty { get; } = Of(NightBuilder.ANight().Build());

    public static IReadOnlyDictionary<string, string> Items { get; } =
        SharedFolder.Tables.Menu.Items.ToDictionary(item => NightBuilder.Id(item.Name), item => item.Name);

    public static IReadOnlyDictionary<string, string> Names { get; } = new Dictionary<string, string>
    {
        ["eva"] = "Eva",
        ["ana"] = "Ana",
        ["rui"] = "Rui",
    };

    public static NightPlan Of(NightSnapshot night) =>
        new NightPlanner(SharedFolder.Tables).Plan(night, NightBuilder.Now, Effort.Quick);
}
