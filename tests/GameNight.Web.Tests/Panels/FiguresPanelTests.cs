using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Quantities;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Plan;
using Microsoft.AspNetCore.Components;

namespace GameNight.Web.Tests.Panels;

public class FiguresPanelTests : BunitContext
{
    [Fact]
    public void Shows_the_eight_numbers_of_a_night_each_with_a_name_of_its_own()
    {
        var panel = PanelOf(Plans.Usual);

        var names = panel.FindAll(".figure h3").Select(name => name.TextContent).ToList();
        Assert.Equal(
            ["Slices wanted", "Pies", "Dough", "Instant yeast", "Sauce", "Cheese", "Water goes in at", "Answers move the dough until"],
            names);
        Assert.All(panel.FindAll(".numeral span"), number => Assert.NotEmpty(number.TextContent));
        Assert.Equal(Plans.Usual.Pies.Count.Value.ToString(), panel.Find("#pies-name + .numeral span").TextContent);
    }

    [Fact]
    public void Every_number_that_can_be_set_by_hand_has_its_form()
    {
        var panel = PanelOf(Plans.Usual);

        Assert.Equal(
            ["pies-hand", "dough-hand", "yeast-hand", "sauce-hand", "cheese-hand"],
            panel.FindAll("form input").Select(input => input.Id));
    }

    [Theory]
    [InlineData("pies-hand", Overridable.Pies)]
    [InlineData("dough-hand", Overridable.BallGrams)]
    [InlineData("yeast-hand", Overridable.YeastPercentOfFlour)]
    [InlineData("sauce-hand", Overridable.SaucePerPieGrams)]
    [InlineData("cheese-hand", Overridable.CheesePerPieGrams)]
    public void Each_form_overrules_its_own_number(string field, Overridable what)
    {
        Override? given = null;
        var panel = Render<FiguresPanel>(with => with
            .Add(p => p.Plan, Plans.Usual).Add(p => p.Zone, Plans.Zone)
            .Add(p => p.Overrule, EventCallback.Factory.Create<Override>(this, change => given = change)));

        panel.Find("#" + field).Change("3.5");
        panel.Find("#" + field).Closest("form")!.Submit();

        Assert.Equal(new Override(what, 3.5), given);
    }

    [Fact]
    public void What_was_set_by_hand_is_marked_with_what_the_plan_says()
    {
        var night = NightBuilder.ANight().WithGuests(8).But(night => night with { ByHand = ByHand.Nothing with { Pies = new PieCount(9) } });

        var panel = PanelOf(Plans.Of(night.Build()));

        Assert.StartsWith("Set by hand; the plan says", Assert.Single(panel.FindAll(".byhand")).TextContent, StringComparison.Ordinal);
        Assert.Equal("9", panel.Find("#pies-name + .numeral span").TextContent);
    }

    [Fact]
    public void A_night_without_guests_is_shown_without_nonsense()
    {
        var panel = PanelOf(Plans.Empty);

        Assert.Equal("0", panel.Find("#pies-name + .numeral span").TextContent);
        Assert.DoesNotContain("NaN", panel.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", panel.Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<FiguresPanel> PanelOf(NightPlan plan) =>
        Render<FiguresPanel>(with => with.Add(p => p.Plan, plan).Add(p => p.Zone, Plans.Zone));
}
