using Bunit;
using GameNight.Planning.Toppings;
using GameNight.Web.Drawings;
using GameNight.Web.Host.Plan;

namespace GameNight.Web.Tests.Panels;

public class PiesPanelTests : BunitContext
{
    private static readonly ToppingSplit Split = Plans.Usual.Split;

    [Fact]
    public void Draws_every_pie_with_a_title_and_a_description()
    {
        var panel = Panel(Split);

        var drawings = panel.FindAll("svg.pie");
        Assert.Equal(Split.Pies.Count, drawings.Count);
        Assert.All(drawings, drawing =>
        {
            var said = drawing.GetAttribute("aria-labelledby")!.Split(' ').Select(id => panel.Find("#" + id).TextContent).ToList();
            Assert.Equal("img", drawing.GetAttribute("role"));
            Assert.StartsWith("Pie ", said[0], StringComparison.Ordinal);
            Assert.Matches("(whole pie|left half) [A-Z]: ", said[1]);
        });
    }

    [Fact]
    public void Pattern_letter_and_words_say_the_same()
    {
        var panel = Panel(Split);

        foreach (var pie in Split.Pies)
        {
            var shown = panel.Find($"#pie{pie.Number}-t").Closest("li")!;
            foreach (var sector in pie.Sectors)
            {
                Assert.Contains(shown.QuerySelectorAll("text.letter"), letter => letter.TextContent == sector.Letter);
                Assert.NotNull(shown.QuerySelector($"pattern#pie{pie.Number}-p{sector.Letter}"));
                var combination = Split.Combinations.Single(one => one.Letter == sector.Letter);
                Assert.Contains(
                    $"{sector.Letter} {string.Join(", ", combination.ItemIds.Select(id => Plans.Items[id].ToLowerInvariant()))}",
                    shown.QuerySelector("p.soft")!.TextContent, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void An_own_pie_says_for_whom_and_how_it_is_kept_apart()
    {
        var panel = Panel(Split);
        var own = Split.Pies.First(pie => pie.IsOwnPie);

        var shown = panel.Find($"#pie{own.Number}-t").Closest("li")!;

        Assert.EndsWith(", an own pie", panel.Find($"#pie{own.Number}-t").TextContent, StringComparison.Ordinal);
        Assert.NotNull(shown.QuerySelector(".pennant"));
        Assert.Contains("Own pie for Rui: baked first, own board and cutter.", shown.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Ids_on_the_page_are_unique()
    {
        var ids = Panel(Split).FindAll("[id]").Select(element => element.Id).ToList();

        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Fact]
    public void Tells_whose_slices_are_where()
    {
        var panel = Panel(Split);

        var rows = panel.FindAll("tbody tr");
        Assert.Equal(Split.Servings.Select(serving => serving.EaterId).Distinct().Count(), rows.Count);
        Assert.Contains(rows, row => row.TextContent.Contains("Eva", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_pies_it_says_why_there_are_none()
    {
        var panel = Panel(Plans.Empty.Split);

        Assert.Contains("No pies are planned", panel.Markup, StringComparison.Ordinal);
        Assert.Empty(panel.FindAll("svg, table"));
    }

    [Fact]
    public void Letters_beyond_Z_still_have_a_pattern() =>
        Assert.All(["A", "L", "M", "Z", "AA", "AZ", "ZZ"], letter => Assert.NotEmpty(PiePatterns.Of(letter)));

    private IRenderedComponent<PiesPanel> Panel(ToppingSplit split) => Render<PiesPanel>(with => with
        .Add(p => p.Split, split).Add(p => p.Items, Plans.Items).Add(p => p.Names, Plans.Names)
        .Add(p => p.Bases, new HashSet<string>()));
}
