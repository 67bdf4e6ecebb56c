using System.Text.RegularExpressions;
using Bunit;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Print;
using GameNight.Web.Tests.Panels;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Components;

namespace GameNight.Web.Tests.Print;

/// <summary>The sheets that stay in the kitchen: plan, amounts, steps.</summary>
public class KitchenSheetTests : BunitContext
{
    [Fact]
    public void The_plan_holds_the_head_every_weight_and_every_caution()
    {
        var sheet = PlanOf(Plans.Usual);

        var text = sheet.Find(".paper").TextContent;
        Assert.Contains("Board games", sheet.Find("thead .paper-head").TextContent, StringComparison.Ordinal);
        Assert.Contains("Plan of Wed 9 Dec, 18:00", sheet.Find("thead .paper-head").TextContent, StringComparison.Ordinal);
        Assert.All(Plans.Usual.Dough.Batches, batch =>
        {
            Assert.Contains(QuantityText.GramNumber(batch.Flour), text, StringComparison.Ordinal);
            Assert.Contains(QuantityText.GramNumber(batch.Yeast), text, StringComparison.Ordinal);
        });
        Assert.All(Plans.Usual.Cautions, caution => Assert.Contains(CautionText.Say(caution, Measures.Metric), text, StringComparison.Ordinal));
        Assert.Equal(Plans.Usual.Split.Pies.Count, sheet.FindAll(".paper-pies svg.pie").Count);
    }

    [Fact]
    public void Any_number_of_batches_fits_into_two_columns_with_a_box_for_each()
    {
        var night = NightBuilder.ANight().WithGuests(60)
            .But(night => night with { ByHand = night.ByHand with { Pies = new PieCount(31) } });
        var plan = Plans.Of(night.Build());

        var table = Render<BatchTable>(with => with.Add(p => p.Plan, plan));

        Assert.True(plan.Dough.Batches.Count > 4);
        Assert.InRange(table.FindAll("thead th").Count, 3, 4);
        Assert.Equal(plan.Dough.Batches.Count, table.FindAll(".paper-box").Count);
    }

    [Fact]
    public void An_empty_plan_prints_sheets_that_say_so()
    {
        Assert.Empty(PlanOf(Plans.Empty).FindAll("svg"));
        Assert.Contains("Nothing is needed yet.", Shopping(Plans.Empty).Markup, StringComparison.Ordinal);
        Assert.Contains(
            "No timeline works yet",
            Render<TimelineSheet>(with => with.Add(p => p.Steps, []).Add(p => p.Head, Paper.Head)).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Amounts_stand_on_the_shelf_they_come_from_and_say_what_is_left_out()
    {
        var sheet = Shopping(Plans.Usual);

        Assert.Equal(["Dough", "Sauce", "Cheese", "Toppings"], sheet.FindAll("h3").Select(shelf => shelf.TextContent));
        Assert.Contains("Prices are not included", sheet.Markup, StringComparison.Ordinal);
        Assert.Equal(QuantityText.GramNumber(Plans.Usual.Dough.Flour), sheet.Find("tbody tbody tr td:nth-child(3)").TextContent);
        Assert.Equal(
            Plans.Usual.Amounts.Count(amount => Paper.Roles[amount.ItemId] == MenuRole.Topping),
            sheet.FindAll(".paper-amounts")[3].QuerySelectorAll(".paper-box").Length);
        Assert.Equal(sheet.FindAll(".paper-amounts tbody tr").Count, sheet.FindAll(".paper-box").Count);
    }

    [Fact]
    public void Paper_is_in_the_readers_measures_and_the_dough_keeps_its_grams()
    {
        RenderTree.Add<CascadingValue<Measures>>(with => with.Add(cascade => cascade.Value, Measures.UsCustomary));
        var (plan, batch) = (PlanOf(Plans.Usual), Plans.Usual.Dough.Batches[0]);

        var flour = plan.FindAll(".paper-weights tbody tr")[0].QuerySelectorAll("td")[1].TextContent;
        Assert.StartsWith(QuantityText.GramNumber(batch.Flour) + Measures.UsCustomary.Say(batch.Flour), flour, StringComparison.Ordinal);
        Assert.Contains("cups of bread flour or", flour, StringComparison.Ordinal);
        Assert.Contains(plan.FindAll(".paper-weights th"), name => Regex.IsMatch(name.TextContent, "^Water at [0-9]+ °F$"));
        Assert.Matches("^[0-9]+ °F, [0-9]+ to [0-9]+$", plan.FindAll(".paper-figures dd")[2].TextContent);
        Assert.Matches("^[0-9.]+ oz a pie, .* oz in all(: it goes on [0-9.]+ of the pies)?$", plan.FindAll(".paper-figures dd")[4].TextContent);
        Assert.All(Plans.Usual.Cautions, caution => Assert.Contains(
            CautionText.Say(caution, Measures.UsCustomary), plan.Find(".paper-notes").TextContent, StringComparison.Ordinal));
        Assert.DoesNotContain("°C", plan.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "in all")]
    [InlineData(1.5, "in all: it goes on 2.5 of the pies")]
    public void Cheese_that_is_not_on_every_pie_says_on_how_many_it_is(double piesWithout, string end)
    {
        var usual = Plans.Usual with { Pies = Plans.Usual.Pies with { Count = Plans.Usual.Pies.Count with { Value = new PieCount(4) } } };
        var total = usual.Cheese.PerPie.Value * (4 - piesWithout);
        var plan = PlanOf(usual with { Cheese = usual.Cheese with { Total = new Estimate<Grams>(total, total, total) } });

        Assert.EndsWith(end, plan.FindAll(".paper-figures dd")[5].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Amounts_to_shop_are_in_the_readers_measures()
    {
        RenderTree.Add<CascadingValue<Measures>>(with => with.Add(cascade => cascade.Value, Measures.UsCustomary));

        var amounts = Shopping(Plans.Usual).FindAll(".paper-amounts");

        Assert.All(amounts, shelf => Assert.Equal(
            ["weight", "could be"], shelf.QuerySelectorAll("thead .number").Select(head => head.TextContent)));
        Assert.Equal(Measures.UsCustomary.SayDough(Plans.Usual.Dough.Flour), amounts[0].QuerySelector("td.number")!.TextContent);
        Assert.All(amounts.Skip(1), shelf => Assert.All(
            shelf.QuerySelectorAll("td.number"), cell => Assert.Matches(" (oz|lb)$", cell.TextContent)));
    }

    [Fact]
    public void What_is_made_here_is_weighed_on_the_plan_and_its_parts_are_bought()
    {
        var tables = SharedFolder.Tables;
        var night = NightBuilder.ANight().WithGuests(8).Build();
        var plans = Plans.Of(night);
        var (sauceId, cheeseId) = (Of(MenuRole.Base), Of(MenuRole.Cheese));
        night = night with
        {
            Sauce = new HouseSauce(sauceId, tables.Sauces.Formula(tables.Sauces.Formulas[0])),
            CheeseBlend = new HouseCheese(cheeseId, tables.Cheese.Blends[0].Blend),
            Formula = night.Formula with { Soaker = new Soaker("linseed", new Share(0.1), new Share(2)) },
        };
        var plan = Plans.Of(night);

        var list = Render<ShoppingSheet>(with => with
            .Add(p => p.Plan, plan).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items).Add(p => p.Roles, Paper.Roles)
            .Add(p => p.SauceMadeHere, sauceId).Add(p => p.CheeseMadeHere, cheeseId));
        var bought = list.FindAll("tbody th").Select(cell => cell.TextContent).ToList();

        Assert.DoesNotContain(Plans.Items[sauceId], bought);
        Assert.DoesNotContain(Plans.Items[cheeseId], bought);
        Assert.All(plan.SauceToMake!.Tins, tins => Assert.Contains(bought, name => name.Contains($"{tins.Count} tin", StringComparison.Ordinal)));
        Assert.All(plan.CheeseToGrate!.Parts, part => Assert.Contains(QuantityText.GramNumber(part.ToBuy), Row(FoodText.Say(part.Food)), StringComparison.Ordinal));
        Assert.Contains("linseed", bought);
        var (seeds, flour) = (plan.Dough.Batches.Sum(batch => batch.Soaker!.Flour.Value), plan.Dough.Flour.Value);
        Assert.Contains(QuantityText.GramNumber(new Grams(flour - seeds)), Row(Words.FlourRow), StringComparison.Ordinal);
        var sheet = PlanOf(plan);
        Assert.Contains($"Sauce to make: {Measures.Metric.SayDough(plan.SauceToMake.Finished)}", sheet.Markup, StringComparison.Ordinal);
        Assert.Contains("Cheese to grate", sheet.Markup, StringComparison.Ordinal);

        string Of(MenuRole role) => night.Menu.Items.First(item => item.Role == role && plans.Amounts.Any(amount => amount.ItemId == item.Id)).Id;

        string Row(string name) => list.FindAll("tbody tr").First(row => row.QuerySelector("th")!.TextContent.Contains(name, StringComparison.Ordinal)).TextContent;
    }

    [Fact]
    public void Every_step_stands_on_the_timeline_with_its_length_its_hands_and_its_cue()
    {
        var steps = Plans.Usual.Timeline.Steps;

        var sheet = Render<TimelineSheet>(with => with.Add(p => p.Steps, steps).Add(p => p.Head, Paper.Head));

        var pies = steps.Count(step => step.Kind == StepKind.Bake);
        var single = steps.Count(step => step.Kind is not (StepKind.Shape or StepKind.Top or StepKind.Bake or StepKind.Rack or StepKind.Serve));
        Assert.Equal(single + pies, sheet.FindAll(".paper-steps tbody tr").Count);
        Assert.Equal(5 * pies, sheet.FindAll(".paper-ovens tbody .times").Count(cell => cell.TextContent.Length == 5));
        var mix = sheet.FindAll(".paper-steps tbody tr").First(row => row.TextContent.Contains("Mix, batch 1", StringComparison.Ordinal));
        Assert.Contains("your hands", mix.TextContent, StringComparison.Ordinal);
        Assert.Contains("15 min", mix.TextContent, StringComparison.Ordinal);
        Assert.Contains(CueText.Say(StepKind.Mix), mix.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(new string[0], "Plan,Cards,Table,Shopping,Timeline")]
    [InlineData(new[] { "no-such-sheet" }, "Plan,Cards,Table,Shopping,Timeline")]
    [InlineData(new[] { "timeline", "plan", "plan" }, "Plan,Timeline")]
    [InlineData(new[] { "table" }, "Table")]
    public void The_address_chooses_the_sheets(string[] names, string expected) =>
        Assert.Equal(expected, string.Join(',', SheetChoice.Of(names)));

    [Fact]
    public void A_rescue_dough_is_weighed_on_paper_and_bought_for()
    {
        var usual = Plans.Usual;
        var at = usual.Timeline.Steps[0].Start;
        var plan = usual with { Rescue = new RescuePlan(usual.Dough, usual.Yeast, usual.Water, at, at, at) };

        Assert.Contains(AfterCommitment.RescueWeighTitle, PlanOf(plan).Markup, StringComparison.Ordinal);
        Assert.Contains(QuantityText.GramNumber(new Grams(2 * usual.Dough.Flour.Value)), Shopping(plan).Markup, StringComparison.Ordinal);
        Assert.DoesNotContain(AfterCommitment.RescueWeighTitle, PlanOf(usual).Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<PlanSheet> PlanOf(NightPlan plan) => Render<PlanSheet>(with => with
        .Add(p => p.Plan, plan).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items));

    private IRenderedComponent<ShoppingSheet> Shopping(NightPlan plan) => Render<ShoppingSheet>(with => with
        .Add(p => p.Plan, plan).Add(p => p.Head, Paper.Head).Add(p => p.Items, Plans.Items).Add(p => p.Roles, Paper.Roles));
}
