using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.TestKit;
using GameNight.TestKit.Nights;

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
