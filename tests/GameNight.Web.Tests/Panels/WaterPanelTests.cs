using System.Globalization;
using Bunit;
using GameNight.Planning.Cheese;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.Web.Host.SauceAndCheese;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Panels;

public class WaterPanelTests : BunitContext
{
    private static readonly WaterLoadTable Table = SharedFolder.Tables.Cheese.WaterLoad;

    private static readonly WaterLoad Wet = WaterLoad.For(
        "A",
        [
            new WetItem("sauce", MenuRole.Base, 0.1, new Share(0.9)), new WetItem("blend", MenuRole.Cheese, 0.1, new Share(0.5)),
            new WetItem("mushrooms", MenuRole.Topping, 0.15, new Share(0.9)),
        ],
        600, Table);

    private static readonly WaterLoad Dry = WaterLoad.For(
        "B", [new WetItem("sauce", MenuRole.Base, 0.05, new Share(0.8)), new WetItem("blend", MenuRole.Cheese, 0.08, null)], 600, Table);

    private static readonly Dictionary<string, string> Items = new() { ["sauce"] = "Tomato sauce", ["blend"] = "Blend", ["mushrooms"] = "Mushrooms" };

    [Fact]
    public void A_soggy_middle_is_said_in_numbers_with_what_to_take_less_of()
    {
        var panel = PanelOf([Wet]);

        var soggy = Wet.Because.OfType<SoggyMiddle>().Single();
        Assert.Contains("Soggy middle: even the low end", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("over the bound of 0.14 g per cm²", panel.Markup, StringComparison.Ordinal);
        Assert.Contains($"{QuantityText.Grams(soggy.TakeLessOf[0].PerPie)} of mushrooms", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("cook, or salt and drain, the toppings first", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dry_middle_is_not_warned_of_and_what_nobody_knows_is_said()
    {
        var panel = PanelOf([Dry]);

        Assert.Empty(panel.FindAll(".care-text"));
        Assert.Contains("Under the bound", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("is not known for blend", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_bar_has_its_parts_side_by_side_its_bound_inside_and_a_text()
    {
        var panel = PanelOf([Wet, Dry]);

        var bars = panel.FindAll("svg.waterbar");
        Assert.Equal(2, bars.Count);
        var rects = bars[0].QuerySelectorAll("rect").ToList();
        Assert.Equal(["base", "cheese", "topping"], rects.Select(rect => rect.ClassName));
        Assert.Equal(0, Of(rects[0], "x"));
        Assert.All(rects.Zip(rects.Skip(1)), pair => Assert.Equal(Of(pair.First, "x") + Of(pair.First, "width"), Of(pair.Second, "x"), 0.02));
        Assert.All(bars, bar => Assert.InRange(Of(bar.QuerySelector(".bound")!, "x1"), 5, 95));
        Assert.True(Of(bars[0].QuerySelector(".bound")!, "x1") < Of(rects[2], "x") + Of(rects[2], "width"));
        Assert.StartsWith("A: 0.28 g per cm² of water", bars[0].GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Equal(Wet.Parts.Count + Dry.Parts.Count + 2, panel.FindAll("tbody tr").Count);
    }

    [Fact]
    public void A_plan_of_before_water_was_counted_and_a_night_without_pies_say_so()
    {
        Assert.Contains("before water was counted", PanelOf(null).Markup, StringComparison.Ordinal);
        Assert.Contains("No pies are planned", PanelOf([]).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Readers_of_ounces_see_ounces_per_square_inch()
    {
        var panel = Render<WaterPanel>(with => with.AddCascadingValue(Measures.UsCustomary)
            .Add(p => p.Loads, [Wet]).Add(p => p.Split, Plans.Usual.Split).Add(p => p.Items, Items).Add(p => p.BoundGramsPerCm2, 0.14));

        Assert.Contains("0.032 oz per sq in", panel.Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<WaterPanel> PanelOf(IReadOnlyList<WaterLoad>? loads) => Render<WaterPanel>(with => with
        .Add(p => p.Loads, loads)
        .Add(p => p.Split, Plans.Usual.Split with { Combinations = [new Combination("A", "sauce", "blend", ["mushrooms"]), new Combination("B", "sauce", "blend", [])] })
        .Add(p => p.Items, Items)
        .Add(p => p.BoundGramsPerCm2, Table.BoundGramsPerCm2));

    private static double Of(AngleSharp.Dom.IElement element, string attribute) =>
        double.Parse(element.GetAttribute(attribute)!, CultureInfo.InvariantCulture);
}
