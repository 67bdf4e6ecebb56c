using System.Text.Json;
using System.Text.Json.Nodes;
using GameNight.Planning.Cheese;
using GameNight.Planning.Contract;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class NightSauceAndCheeseTests
{
    private static readonly ReferenceTables Tables = SharedFolder.Tables;
    private static readonly NightPlanner Planner = new(Tables);

    [Fact]
    public void Sauce_and_cheese_follow_what_lies_on_the_pies()
    {
        var plan = Plan(WithHouseFood(ANight().WithGuests(6).Build()));

        var sauce = plan.Amounts.Single(amount => amount.ItemId == "tomato-sauce").Amount.Expected;
        var cheese = plan.Amounts.Single(amount => amount.ItemId == "cheese-blend").Amount.Expected;
        Assert.Equal(sauce, plan.SauceToMake!.Needed);
        Assert.Equal(cheese.Value, plan.CheeseToGrate!.Parts.Sum(part => part.OnPies.Value), 1e-6);
        Assert.Equal(GramsPerCm2("cheese-blend") * plan.CheeseToGrate.Water.Value, plan.CheeseToGrate.WaterGramsPerCm2, 1e-9);
    }

    private static double GramsPerCm2(string item) => ANight().Build().Menu.Items.Single(one => one.Id == item).GramsPerCm2;

    [Fact]
    public void The_sauce_takes_its_time_in_the_timeline_and_what_is_left_keeps_from_then_on()
    {
        var plan = Plan(WithHouseFood(ANight().WithGuests(6).Build()));

        var step = Assert.Single(plan.Timeline.Steps, step => step.Kind == StepKind.Sauce);
        Assert.Equal(plan.SauceToMake!.Time, step.End - step.Start);
        Assert.Equal(step.End + Duration.FromDays(4), plan.SauceToMake.Surplus.FridgeUntil);
    }

    [Fact]
    public void Every_combination_has_its_water_load_and_a_formula_makes_it_known()
    {
        var night = ANight().WithGuests(6).Build();
        var (bare, known) = (Plan(night), Plan(WithHouseFood(night)));

        Assert.Equal(bare.Split.Combinations.Select(one => one.Letter), bare.WaterLoads!.Select(load => load.Letter));
        Assert.Null(bare.SauceToMake);
        Assert.Null(bare.CheeseToGrate);
        Assert.All(Part(bare, "tomato-sauce"), part => Assert.True(part.IsAssumed));
        Assert.All(Part(known, "tomato-sauce"), part => Assert.False(part.IsAssumed));
        Assert.All(Part(known, "cheese-blend"), part => Assert.False(part.IsAssumed));
        Assert.NotEmpty(Part(known, "tomato-sauce"));

        static IEnumerable<WaterPart> Part(NightPlan plan, string id) =>
            plan.WaterLoads!.SelectMany(load => load.Parts).Where(part => part.ItemId == id);
    }

    [Theory]
    [InlineData(Diet.NoAlcohol)]
    [InlineData(Diet.Vegan)]
    public void Wine_in_the_sauce_reaches_nobody_who_must_not_have_it(Diet diet)
    {
        var night = WithHouseFood(ANight().WithGuests(4)
            .With(AnswerState.Coming, AnEater("kept", needs: new DietaryNeeds([diet], [], [])))
            .With(AnswerState.Coming, AnEater("sulphites", needs: new DietaryNeeds([], [Allergen.Sulphites], []))).Build());

        var plan = Plan(night);

        var combinations = plan.Split.Combinations.ToDictionary(one => one.Letter);
        var served = plan.Split.Servings.Where(serving => serving.EaterId is "kept" or "sulphites").ToList();
        Assert.Equal(2, served.Select(serving => serving.EaterId).Distinct().Count());
        Assert.All(served, serving => Assert.NotEqual("tomato-sauce", combinations[serving.Letter].BaseId));
    }

    [Fact]
    public void Hard_cheese_without_a_label_reaches_no_vegetarian()
    {
        var night = WithHouseFood(ANight().WithGuests(4)
            .With(AnswerState.Coming, AnEater("kept", needs: new DietaryNeeds([Diet.Vegetarian], [], []))).Build());

        var plan = Plan(night);

        var combinations = plan.Split.Combinations.ToDictionary(one => one.Letter);
        var served = plan.Split.Servings.Where(serving => serving.EaterId == "kept").ToList();
        Assert.NotEmpty(served);
        Assert.All(served, serving => Assert.Equal("no-cheese", combinations[serving.Letter].CheeseId));
    }

    [Fact]
    public void A_base_the_menu_does_not_offer_is_not_made()
    {
        var night = WithHouseFood(ANight().WithGuests(3).Build());

        var plan = Plan(night with { Sauce = night.Sauce! with { BaseId = "gone" }, CheeseBlend = night.CheeseBlend! with { CheeseId = "tomato-sauce" } });

        Assert.Null(plan.SauceToMake);
        Assert.Null(plan.CheeseToGrate);
    }

    [Fact]
    public void Nobody_eats_and_nothing_is_cooked()
    {
        var plan = Plan(WithHouseFood(ANight().Build()));

        Assert.Null(plan.SauceToMake);
        Assert.Null(plan.CheeseToGrate);
        Assert.Empty(plan.WaterLoads!);
    }

    [Fact]
    public void Night_and_plan_come_back_as_they_were()
    {
        var night = WithHouseFood(ANight().WithGuests(5).Build());
        var plan = Plan(night);

        Assert.Equal(PlanJson.Canonical(night), PlanJson.Canonical(RoundTrip(night)));
        Assert.Equal(PlanJson.Canonical(plan), PlanJson.Canonical(RoundTrip(plan)));
        Assert.Contains("\"kind\":\"soggyMiddle\"", PlanJson.Canonical(plan with
        {
            WaterLoads = [WaterLoad.For("A", [new WetItem("soup", Planning.Toppings.MenuRole.Base, 1, new Share(1))], 600, Tables.Cheese.WaterLoad)],
        }), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_kept_before_there_was_a_formula_is_written_as_it_was()
    {
        var night = JsonNode.Parse(PlanJson.Canonical(ANight().WithGuests(2).Build()))!.AsObject();

        Assert.False(night.ContainsKey("sauce") || night.ContainsKey("cheeseBlend"));
        Assert.Null(night.Deserialize<NightSnapshot>(PlanJson.Options)!.Sauce);
    }

    [Fact]
    public void A_wide_pot_and_a_long_simmer_are_said_in_the_conflicts_of_the_plan()
    {
        var night = WithHouseFood(ANight().WithGuests(1).Build());
        var formula = night.Sauce!.Formula with { Simmer = Duration.FromMinutes(240) };

        var plan = Plan(night with { Sauce = night.Sauce with { Formula = formula } });

        Assert.Contains(plan.Conflicts, conflict => conflict is SimmersTooThick);
    }

    private static NightSnapshot WithHouseFood(NightSnapshot night) => night with
    {
        Sauce = new HouseSauce("tomato-sauce", Tables.Sauces.Formula(Tables.Sauces.Formulas.Single(row => row.Id == "deep-pot"))),
        CheeseBlend = new HouseCheese("cheese-blend", Tables.Cheese.Blends.Single(row => row.Id == "house-blend").Blend),
    };

    private static NightPlan Plan(NightSnapshot night) => Planner.Plan(night, Now, Effort.Quick);

    private static T RoundTrip<T>(T value) =>
        JsonSerializer.Deserialize<T>(JsonSerializer.Serialize(value, PlanJson.Options), PlanJson.Options)!;
}
