using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Live;
using GameNight.Web.Host.Plan;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Panels;

public class StepAmountsTests
{
    private static readonly NightSnapshot Night = NightBuilder.ANight().WithGuests(6).Build();

    [Fact]
    public void Yeast_that_is_woken_and_its_water_stand_at_their_own_step_and_no_more_at_mixing()
    {
        var plan = WholeDoughs.PlanOf(WholeDoughs.Formula with { Yeast = YeastForm.ActiveDry, Preferment = null });

        var wake = Of(StepKind.WakeYeast, 1, plan);
        var mix = Of(StepKind.Mix, 1, plan);

        Assert.Equal(["Water for the yeast, at 37 °C", "Active dry yeast"], wake.Select(one => one.Name.Replace('\u00a0', ' ')));
        Assert.Empty(wake.Select(one => one.Name).Intersect(mix.Select(one => one.Name)));

        // By hand: a tenth of the water wakes the yeast, the rest is poured at mixing.
        var water = plan.Dough.Batches[0].FinalWater;
        Assert.Contains(WeighText.Number(plan.Dough, water * 0.1), wake[0].Amount, StringComparison.Ordinal);
        Assert.Single(mix, one => one.Amount.StartsWith(WeighText.Number(plan.Dough, water * 0.9), StringComparison.Ordinal));
    }

    [Fact]
    public void All_of_a_batch_is_weighed_at_one_step_or_another()
    {
        var plan = WholeDoughs.PlanOf(WholeDoughs.Formula with { Soaker = null });
        var rows = Weighing.Of(plan, Measures.Metric).Where(bowl => bowl.IsCounted).SelectMany(bowl => bowl.Rows).Select(row => row.Name).Order();

        Assert.Equal(rows, Of(StepKind.Preferment, 0, plan).Concat(Of(StepKind.Mix, 1, plan)).Select(one => one.Name).Order());
        Assert.NotEmpty(Of(StepKind.Mix, plan.Dough.Batches.Count, plan));
        Assert.Empty(Of(StepKind.Mix, plan.Dough.Batches.Count + 1, plan));
    }

    /// <summary>One preferment for all batches: by hand, the sum of what each of them holds of it.</summary>
    [Fact]
    public void A_preferment_is_weighed_for_all_batches_at_once()
    {
        var plan = WholeDoughs.PlanOf(WholeDoughs.Formula with { Flours = null }, kitchen: kitchen => kitchen with { BatchCapacity = new Grams(900) });
        Assert.True(plan.Dough.Batches.Count > 1);
        var flour = new Grams(plan.Dough.Batches.Sum(batch => batch.Preferment!.Flour.Value));

        Assert.Contains(QuantityText.Grams(flour), Of(StepKind.Preferment, 0, plan)[0].Amount, StringComparison.Ordinal);
    }

    [Fact]
    public void Balls_sauce_cheese_and_toppings_have_their_amounts_and_a_pie_has_none()
    {
        var plan = Plans.Of(Night);

        var balls = Assert.Single(Of(StepKind.Ball, 1, plan));
        Assert.Contains(QuantityText.Grams(plan.Dough.Ball.Value), balls.Amount, StringComparison.Ordinal);
        Assert.All([StepKind.Sauce, StepKind.GrateCheese, StepKind.PrepareToppings], step => Assert.NotEmpty(Of(step, 0, plan)));
        Assert.Equal(
            plan.Amounts.Where(amount => Night.Menu.Items.Single(item => item.Id == amount.ItemId).Role == GameNight.Planning.Toppings.MenuRole.Topping).Select(amount => QuantityText.Grams(amount.Amount.Expected)).Order(),
            Of(StepKind.PrepareToppings, 0, plan).Select(one => one.Amount).Order());
        Assert.All([StepKind.Shape, StepKind.Bake, StepKind.Serve, StepKind.Temper, StepKind.Own], step => Assert.Empty(Of(step, 1, plan)));
    }

    /// <summary>By hand: what is weighed in, less what simmers off; salt comes after.</summary>
    [Fact]
    public void A_sauce_is_weighed_simmered_down_and_salted_in_that_order()
    {
        var usual = Plans.Of(Night);
        var table = SharedFolder.Tables.Sauces;
        var sauce = SaucePlan.For(table.Formula(table.Formulas.Single(row => row.Id == "deep-pot")), new Grams(900), new Grams(120), [new Grams(400)], table, SharedFolder.Tables.Foods);

        var amounts = Of(StepKind.Sauce, 0, usual with { SauceToMake = sauce }).Select(one => (one.Name, one.Amount)).ToList();

        var left = new Grams(sauce.Weigh.Sum(share => share.Grams.Value) - sauce.Evaporated.Value);
        Assert.Equal([("Simmer it down to", QuantityText.Grams(left)), ("Salt, at the end", QuantityText.Grams(sauce.Salt))], amounts[^2..]);
        Assert.Equal(sauce.Weigh.Count + 2, amounts.Count);
    }

    private static IReadOnlyList<StepAmount> Of(StepKind step, int number, NightPlan plan) =>
        StepAmounts.Of(step, number, plan, Night.Menu, Plans.Items, Measures.Metric);
}
