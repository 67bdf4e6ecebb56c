using Bunit;
using GameNight.Nights.Records;
using GameNight.Web.Host.Plan;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Components;

namespace GameNight.Web.Tests.Panels;

/// <summary>What a host who reads US customary measures sees of the same plan.</summary>
public class MeasuresPanelTests : BunitContext
{
    private void ReadUsCustomary() => RenderTree.Add<CascadingValue<Measures>>(with => with.Add(cascade => cascade.Value, Measures.UsCustomary));

    [Fact]
    public void Without_a_choice_the_dough_is_weighed_in_grams_alone()
    {
        var panel = Render<DoughPanel>(with => with.Add(dough => dough.Plan, Plans.Usual));

        Assert.DoesNotContain(" oz", panel.Markup, StringComparison.Ordinal);
        Assert.Empty(panel.FindAll(".othermeasure"));
    }

    [Fact]
    public void The_dough_keeps_its_grams_with_ounces_spoons_and_cups_beside()
    {
        ReadUsCustomary();
        var panel = Render<DoughPanel>(with => with.Add(dough => dough.Plan, Plans.Usual));
        var batch = Plans.Usual.Dough.Batches[0];

        var rows = panel.FindAll("tbody")[0].QuerySelectorAll("tr");

        Assert.Equal(QuantityText.GramNumber(batch.Flour), rows[0].Children[2].TextContent);
        Assert.Contains("cups of bread flour or", Beside(rows[0]), StringComparison.Ordinal);
        Assert.Contains("held back", rows[1].Children[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("°F", rows[2].Children[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("fl oz", Beside(rows[2]), StringComparison.Ordinal);
        Assert.Contains("of table salt", Beside(rows[3]), StringComparison.Ordinal);
        Assert.Equal(HouseholdText.OfYeast(Plans.Usual.Yeast.Form, batch.Yeast) is not null, Beside(rows[^1]).Contains("spoon", StringComparison.Ordinal));
        Assert.DoesNotContain("°C", panel.Markup, StringComparison.Ordinal);

        static string Beside(AngleSharp.Dom.IElement row) => row.QuerySelector(".othermeasure")?.TextContent ?? "";
    }

    [Fact]
    public void Figures_and_their_reasons_are_in_the_hosts_measures()
    {
        ReadUsCustomary();
        var panel = Render<FiguresPanel>(with => with.Add(figures => figures.Plan, Plans.Usual).Add(figures => figures.Zone, Plans.Zone));

        Assert.DoesNotContain("°C", panel.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain(" cm", panel.Markup, StringComparison.Ordinal);
        Assert.Equal("°F", panel.Find("[aria-labelledby=water-name] .numeral small").TextContent);
        Assert.Contains("in across at", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_set_by_hand_in_ounces_is_handed_on_in_grams()
    {
        Override? given = null;
        ReadUsCustomary();
        var panel = Render<FiguresPanel>(with => with.Add(figures => figures.Plan, Plans.Usual).Add(figures => figures.Zone, Plans.Zone)
            .Add(figures => figures.Overrule, EventCallback.Factory.Create<Override>(this, change => given = change)));

        panel.Find("#dough-hand").Change("9");
        panel.Find("[aria-labelledby=dough-name] form").Submit();

        Assert.Equal(Overridable.BallGrams, given!.What);
        Assert.Equal(255.146, given.Value, 3);
    }

    [Fact]
    public void A_bakers_percentage_set_by_hand_is_the_same_in_all_measures()
    {
        Override? given = null;
        ReadUsCustomary();
        var panel = Render<FiguresPanel>(with => with.Add(figures => figures.Plan, Plans.Usual).Add(figures => figures.Zone, Plans.Zone)
            .Add(figures => figures.Overrule, EventCallback.Factory.Create<Override>(this, change => given = change)));

        panel.Find("#yeast-hand").Change("0.3");
        panel.Find("[aria-labelledby=yeast-name] form").Submit();

        Assert.Equal(new Override(Overridable.YeastPercentOfFlour, 0.3), given);
    }
}
