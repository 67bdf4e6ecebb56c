using Bunit;
using GameNight.Nights.ForHosts;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.Web.Host.Kitchen;

namespace GameNight.Web.Tests.Panels;

public class PacePanelTests : BunitContext
{
    private static readonly LearnedPace Shape = new(StepName.Shape, 4, 1, 8, 5.66, 1.6);

    private int _kept;
    private int _forgotten;

    [Fact]
    public void What_was_seen_stands_beside_the_table_and_counts_when_the_host_says_so()
    {
        var panel = Panel(new PaceView([Shape, Shape with { Step = StepName.GrateCheese, TableMinutes = 15, Nights = 3, SeenMinutes = 15, Minutes = 15 }], []));

        Assert.Equal(["Shape a pie", "4.0 min", "8.0 min, one night", "5.7 min, four times in five 3.5 to 9.1", "4.0 min"], Row(panel, 0));
        Assert.Equal(["Grate the cheese", "15.0 min", "15.0 min, 3 nights", "15.0 min, four times in five 9.4 to 24.0", "15.0 min"], Row(panel, 1));
        panel.FindAll("button").Single().Click();

        Assert.Equal((1, 0), (_kept, _forgotten));
    }

    [Fact]
    public void What_was_kept_is_what_is_planned_with_and_can_be_forgotten()
    {
        var panel = Panel(new PaceView([Shape], [new StepPace(StepName.Shape, 5)]));

        Assert.Equal("5.0 min", Row(panel, 0)[4]);
        panel.FindAll("button").Single(button => button.TextContent == "Plan with the table again").Click();

        Assert.Equal((0, 1), (_kept, _forgotten));
    }

    [Fact]
    public void Before_the_first_night_it_says_where_the_minutes_come_from()
    {
        var panel = Panel(new PaceView([], []));

        Assert.Empty(panel.FindAll("table, button"));
        Assert.Contains("minutes of a table", panel.Markup, StringComparison.Ordinal);
    }

    private static List<string> Row(IRenderedComponent<PacePanel> panel, int row) =>
        [.. panel.FindAll("tbody tr")[row].Children.Select(cell => cell.TextContent)];

    private IRenderedComponent<PacePanel> Panel(PaceView view) => Render<PacePanel>(with => with
        .Add(p => p.View, view).Add(p => p.MayChange, true).Add(p => p.Keep, () => _kept++).Add(p => p.Forget, () => _forgotten++));
}
