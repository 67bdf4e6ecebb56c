using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning.Appetite;
using GameNight.Web.Host.Plan;
using Microsoft.AspNetCore.Components;

namespace GameNight.Web.Tests.Panels;

public class FigureTests : BunitContext
{
    [Fact]
    public void Shows_its_number_unit_and_band()
    {
        var figure = Render<Figure>(with => with
            .Add(f => f.Id, "sauce").Add(f => f.Name, "Sauce").Add(f => f.Number, "420").Add(f => f.Unit, "g")
            .Add(f => f.Low, "380").Add(f => f.High, "460"));

        Assert.Equal("Sauce", figure.Find("h3").TextContent);
        Assert.Equal("sauce-name", figure.Find("section").GetAttribute("aria-labelledby"));
        Assert.Equal("420 g", figure.Find(".numeral").TextContent);
        Assert.Contains("380 to 460, four times in five", figure.Markup, StringComparison.Ordinal);
        Assert.Empty(figure.FindAll("details"));
    }

    [Theory]
    [InlineData(-3, "20")]
    [InlineData(0, "20")]
    [InlineData(0.5, "50")]
    [InlineData(1, "80")]
    [InlineData(9, "80")]
    public void Marks_where_the_value_lies_in_its_band_and_never_outside(double position, string x)
    {
        var figure = Render<Figure>(with => with
            .Add(f => f.Id, "sauce").Add(f => f.Name, "Sauce").Add(f => f.Number, "420")
            .Add(f => f.Low, "380").Add(f => f.High, "460").Add(f => f.Position, position));

        Assert.Equal(x, figure.Find(".mark").GetAttribute("x1"));
    }

    [Fact]
    public void Says_why_in_sentences()
    {
        var figure = Render<Figure>(with => with
            .Add(f => f.Id, "slices").Add(f => f.Name, "Slices").Add(f => f.Number, "31")
            .Add(f => f.Because, [new RemoteNotCounted(2)]));

        Assert.Equal("2 people joining from elsewhere: no slices.", figure.Find(".why li").TextContent);
        Assert.Empty(figure.FindAll("form"));
    }

    [Fact]
    public void A_number_typed_by_hand_is_handed_on_with_what_it_overrules()
    {
        Override? given = null;
        var figure = Pies(with => with.Add(f => f.Overrule, EventCallback.Factory.Create<Override>(this, change => given = change)));

        figure.Find("#pies-hand").Change("6");
        figure.Find("form").Submit();

        Assert.Equal(new Override(Overridable.Pies, 6), given);
        Assert.Empty(figure.FindAll(".problem"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("many")]
    [InlineData("-1")]
    [InlineData("NaN")]
    [InlineData("1e99")]
    public void A_bad_number_is_said_and_not_handed_on(string typed)
    {
        var isGiven = false;
        var figure = Pies(with => with.Add(f => f.Overrule, EventCallback.Factory.Create<Override>(this, _ => isGiven = true)));

        figure.Find("#pies-hand").Change(typed);
        figure.Find("form").Submit();

        Assert.False(isGiven);
        Assert.StartsWith("Type a number from 0", figure.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal(typed, figure.Find("#pies-hand").GetAttribute("value") ?? "");
    }

    [Fact]
    public void A_number_set_by_hand_is_marked_and_can_be_taken_back()
    {
        Overridable? taken = null;
        var figure = Pies(with => with
            .Add(f => f.IsByHand, true).Add(f => f.Proposed, "5")
            .Add(f => f.TakeBack, EventCallback.Factory.Create<Overridable>(this, what => taken = what)));

        Assert.StartsWith("Set by hand; the plan says 5.", figure.Find(".byhand").TextContent, StringComparison.Ordinal);
        figure.Find(".byhand button").Click();

        Assert.Equal(Overridable.Pies, taken);
    }

    private IRenderedComponent<Figure> Pies(Action<ComponentParameterCollectionBuilder<Figure>> but) => Render<Figure>(with =>
    {
        with.Add(f => f.Id, "pies").Add(f => f.Name, "Pies").Add(f => f.Number, "5").Add(f => f.What, Overridable.Pies)
            .Add(f => f.HandUnit, "pies").Add(f => f.Because, [new RemoteNotCounted(1)]);
        but(with);
    });
}
