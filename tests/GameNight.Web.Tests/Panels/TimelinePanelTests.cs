using Bunit;
using GameNight.Planning.Timeline;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Plan;
using GameNight.Web.Host.Timeline;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class TimelinePanelTests : BunitContext
{
    private static readonly HostTimeline Timeline = Plans.Usual.Timeline;
    private static readonly Instant ServeAt = NightBuilder.ANight().Build().ServeAt;

    [Fact]
    public void The_ribbon_says_in_words_what_it_draws()
    {
        var ribbon = Ribbon(Timeline, NightBuilder.Now);

        var description = ribbon.Find("[role=img]").GetAttribute("aria-label")!;
        foreach (var word in new[] { "mix, knead", "cold ferment", "temper", "bake" })
        {
            Assert.Contains(word, description, StringComparison.Ordinal);
        }

        Assert.All(ribbon.FindAll(".box"), box => Assert.Matches("left:[0-9.]+%;width:[0-9.]+%", box.GetAttribute("style")!));
    }

    [Fact]
    public void The_ribbon_counts_down_to_the_end_of_answers_then_to_mixing_then_is_silent()
    {
        var (answers, mixing) = (Timeline.AnswerBy!.Value, Timeline.DoughCommitment!.Value);

        Assert.Contains("answers close in 4 days", Ribbon(Timeline, answers - Duration.FromHours(100)).Find(".closes").TextContent, StringComparison.Ordinal);
        Assert.Contains("answers close in 2 h", Ribbon(Timeline, answers - Duration.FromHours(2)).Find(".closes").TextContent, StringComparison.Ordinal);
        if (mixing > answers)
        {
            Assert.Contains("mixing begins in", Ribbon(Timeline, answers).Find(".closes").TextContent, StringComparison.Ordinal);
        }

        Assert.Empty(Ribbon(Timeline, mixing).Find(".closes").TextContent);
    }

    [Fact]
    public void Without_steps_there_is_no_ribbon_and_no_chart()
    {
        Assert.Empty(Ribbon(Plans.Empty.Timeline with { Steps = [] }, NightBuilder.Now).FindAll("*"));
        Assert.Empty(Render<EveningChart>(with => with.Add(c => c.Steps, []).Add(c => c.Zone, Plans.Zone)).FindAll("*"));
    }

    [Fact]
    public void The_list_says_once_of_each_kind_of_step_what_it_is_for()
    {
        var list = Render<StepList>(with => with.Add(l => l.Steps, Timeline.Steps).Add(l => l.Zone, Plans.Zone));

        var kinds = list.FindAll(".reasons dt").Select(kind => kind.TextContent).ToList();
        Assert.Equal(Timeline.Steps.Select(step => step.Kind).Distinct().Count(), kinds.Count);
        Assert.Equal(("Shopping", "Clear, cool and put away what is left"), (kinds[0], kinds[^1]));
        Assert.Contains(list.FindAll(".reasons dd"), why => why.TextContent == WhyText.Say(StepKind.Temper));
    }

    [Fact]
    public void The_chart_has_a_box_for_every_pie_and_points_to_the_list()
    {
        var chart = Render<EveningChart>(with => with.Add(c => c.Steps, Timeline.Steps).Add(c => c.Zone, Plans.Zone).Add(c => c.Decisive, new HashSet<string> { "bake-2", "mix-1" }));

        // What decides is drawn thick, where it is of the evening; what is prepared that evening has its lane.
        Assert.Single(chart.FindAll(".box.decides.lamp"));
        Assert.Contains("Drawn thick", chart.Markup, StringComparison.Ordinal);
        var lanes = chart.FindAll(".lane-name").Select(lane => lane.TextContent).ToList();
        Assert.All(new[] { "Sauce", "Grate cheese", "Prepare toppings" }, name => Assert.Contains(name, lanes, StringComparer.OrdinalIgnoreCase));

        Assert.Contains("the list below says the same", chart.Find("[role=img]").GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Equal(Timeline.Steps.Count(step => step.Kind == StepKind.Bake), chart.FindAll(".box.lamp").Count);
    }

    [Fact]
    public void The_list_goes_through_the_days_with_one_row_for_each_pie()
    {
        var list = Render<StepList>(with => with.Add(l => l.Steps, Timeline.Steps).Add(l => l.Zone, Plans.Zone));
        var rows = list.FindAll("li").Select(row => row.TextContent).ToList();

        Assert.Equal(
            Timeline.Steps.Select(step => QuantityText.Day(QuantityText.Local(step.Start, Plans.Zone).Date)).Distinct(),
            list.FindAll("h3").Select(day => day.TextContent));
        Assert.All(
            Timeline.Steps.Where(step => step.Kind == StepKind.Bake),
            bake => Assert.Single(rows, row => row.Contains($"Pie {bake.Number}", StringComparison.Ordinal)));
        Assert.Contains(rows, row => row.Contains("your hands", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.Contains("by itself", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(StepKind.Mix, 2, "Mix, batch 2")]
    [InlineData(StepKind.Temper, 1, "Temper: balls out of the fridge")]
    [InlineData(StepKind.Temper, 2, "Temper, balls taken out in wave 2")]
    [InlineData(StepKind.Bake, 3, "Pie 3")]
    [InlineData(StepKind.Preheat, 0, "Preheat")]
    public void Steps_have_the_names_of_the_trade(StepKind kind, int number, string name)
    {
        var step = new TimelineStep("id", kind, number, ServeAt, ServeAt + Duration.FromMinutes(10), false, Duration.Zero);

        var list = Render<StepList>(with => with.Add(l => l.Steps, [step]).Add(l => l.Zone, Plans.Zone));

        Assert.Equal(name, list.FindAll("li > span")[1].TextContent);
    }

    [Fact]
    public void Each_wave_of_tempering_says_for_which_pies_it_is()
    {
        TimelineStep[] steps =
        [
            At(StepKind.Temper, 1, 0, 60), At(StepKind.Temper, 2, 60, 120),
            .. new[] { 70, 90, 130 }.Select((start, index) => At(StepKind.Shape, index + 1, start, start + 4)),
        ];

        var text = Render<StepList>(with => with.Add(l => l.Steps, steps).Add(l => l.Zone, Plans.Zone)).Markup;

        Assert.Contains("2 balls, for pies 1 and 2", text, StringComparison.Ordinal);
        Assert.Contains("1 ball, for pie 3", text, StringComparison.Ordinal);

        static TimelineStep At(StepKind kind, int number, int from, int to) => new(
            $"{kind}-{number}", kind, number, ServeAt + Duration.FromMinutes(from), ServeAt + Duration.FromMinutes(to), false, Duration.Zero);
    }

    private IRenderedComponent<DaysRibbon> Ribbon(HostTimeline timeline, Instant now) => Render<DaysRibbon>(with => with
        .Add(r => r.Timeline, timeline).Add(r => r.ServeAt, ServeAt).Add(r => r.Now, now).Add(r => r.Zone, Plans.Zone));
}
