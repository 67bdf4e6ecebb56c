using Bunit;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Host.Dough;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Components;

namespace GameNight.Web.Tests.Panels;

/// <summary>What hands and thermometer found right after kneading.</summary>
public class KneadPanelTests : BunitContext
{
    private KneadersCorrection? _correction;
    private double? _friction;

    private IRenderedComponent<KneadPanel> Panel(NightPlan plan, Measures? measures = null) => Render<KneadPanel>(with => with
        .Add(p => p.Plan, plan)
        .Add(p => p.Form, KneadForm.Of(plan, measures ?? Measures.Metric))
        .AddCascadingValue(measures ?? Measures.Metric)
        .Add(p => p.StayedOut, EventCallback.Factory.Create<KneadersCorrection>(this, found => _correction = found))
        .Add(p => p.Friction, EventCallback.Factory.Create<double>(this, found => _friction = found)));

    [Fact]
    public void Flour_that_stayed_out_is_learned_on_top_of_what_was_left_out_before()
    {
        var before = new KneadersCorrection(new Share(0.03));
        var plan = WholeDoughs.PlanOf(WholeDoughs.Formula with { Kneader = before });
        var panel = Panel(plan);

        panel.Find("#stayedOut").Change("20");
        panel.FindAll("form")[0].Submit();

        Assert.Equal(KneadersCorrection.Learn(new Grams(20), plan.Dough.Batches[0], before), _correction);
        Assert.True(_correction!.StayedOut > before.StayedOut);
        Assert.Contains("left out already", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_was_held_back_cannot_have_stayed_out()
    {
        var panel = Panel(WholeDoughs.PlanOf(WholeDoughs.Formula));

        panel.Find("#stayedOut").Change("5000");
        panel.FindAll("form")[0].Submit();

        Assert.Null(_correction);
        Assert.Matches("^Type a number from 0 to ", panel.Find("#stayedOut-note").TextContent);
        Assert.Equal("5000", panel.Find("#stayedOut").GetAttribute("value"));
    }

    [Fact]
    public void Without_flour_held_back_there_is_nothing_to_say_of_it()
    {
        var panel = Panel(WholeDoughs.PlanOf(WholeDoughs.Formula with { HeldBackFlour = default }));

        Assert.Empty(panel.FindAll("#stayedOut"));
        Assert.Contains("none can have stayed out", panel.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Friction_is_learned_from_the_dough_with_the_other_temperatures_filled_in(bool withPreferment)
    {
        var formula = withPreferment ? WholeDoughs.Formula : WholeDoughs.Formula with { Preferment = null };
        var plan = WholeDoughs.PlanOf(formula);
        var panel = Panel(plan);
        Assert.Equal("21", panel.Find("#knead-flour").GetAttribute("value"));
        Assert.Equal(withPreferment, panel.FindAll("#knead-preferment").Count == 1);

        panel.Find("#knead-water").Change("20");
        panel.Find("#knead-dough").Change("25");
        panel.FindAll("form")[1].Submit();

        Assert.Equal(withPreferment ? 4 * 25 - 21 - 21 - 21 - 20 : 3 * 25 - 21 - 21 - 20, _friction!.Value, 6);
    }

    [Fact]
    public void Temperatures_are_typed_in_the_hosts_measures()
    {
        var panel = Panel(WholeDoughs.PlanOf(WholeDoughs.Formula with { Preferment = null }), Measures.UsCustomary);
        Assert.Equal("69.8", panel.Find("#knead-room").GetAttribute("value"));

        panel.Find("#knead-water").Change("68");
        panel.Find("#knead-dough").Change("77");
        panel.FindAll("form")[1].Submit();

        Assert.Equal(13, _friction!.Value, 6);
    }

    [Theory]
    [InlineData("", "#knead-dough-note", "^Type a number from 5 to 45")]
    [InlineData("45", "#knead-dough-note", "is possible. One of them is off")]
    public void Temperatures_that_cannot_be_are_refused(string dough, string note, string said)
    {
        var panel = Panel(WholeDoughs.PlanOf(WholeDoughs.Formula with { Preferment = null }));

        panel.Find("#knead-water").Change("5");
        panel.Find("#knead-dough").Change(dough);
        panel.FindAll("form")[1].Submit();

        Assert.Null(_friction);
        Assert.Matches(said, panel.Find(note).TextContent);
    }
}
