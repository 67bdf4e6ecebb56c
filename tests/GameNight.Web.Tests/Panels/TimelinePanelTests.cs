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
    public void The_chart_has_a_box_for_every_pie_and_points_to_the_list()
    {
        var chart = Render<EveningChart>(with => with.Add(c => c.Steps, Timeline.Steps).Add(c => c.Zone, Plans.Zone));

        Assert.Contains("the list below says the same", chart.Find("[role=img]").GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Equal(Timeline.Steps.Count(step => step.Kind == StepKind.Bake), chart.FindAll(".box.lamp").Count);
    }

    [Fact]
    public void The_list_has_every_step_in_order_with_its_day_and_one_row_a_pie()
    {
        var list = Steps(Timeline.Steps);
        var pies = Timeline.Steps.Where(step => step.Kind == StepKind.Bake).Select(step => step.Number).ToList();
        var ofPies = Timeline.Steps.Count(step =>
            step.Kind is StepKind.Shape or StepKind.Top or StepKind.Bake or StepKind.Rack or StepKind.Serve);

        Assert.Equal(Timeline.Steps.Count - ofPies + pies.Count, list.FindAll("li").Count);
        Assert.All(pies, number => Assert.Contains(list.FindAll("li"), row =>
            row.TextContent.Contains($"Pie {number}", StringComparison.Ordinal)
            && row.TextContent.Contains("bake ", StringComparison.Ordinal)
            && row.TextContent.Contains("serve ", StringComparison.Ordinal)));
        Assert.Equal(
            Timeline.Steps.Select(step => QuantityText.Day(QuantityText.Local(step.Start, Plans.Zone).Date)).Distinct(),
            list.FindAll("h3").Select(day => day.TextContent));
        Assert.All(list.FindAll("li"), step => Assert.Matches("your hands|by itself|shape ", step.TextContent));
    }

    [Theory]
    [InlineData(StepKind.Mix, 2, "Mix, batch 2")]
    [InlineData(StepKind.Temper, 1, "Temper: balls out of the fridge")]
    [InlineData(StepKind.Temper, 2, "Temper, balls taken out in wave 2")]
    [InlineData(StepKind.Preheat, 0, "Preheat")]
    public void Steps_have_the_names_of_the_trade(StepKind kind, int number, string name) =>
        Assert.Contains(
            name,
            Steps([new TimelineStep("id", kind, number, ServeAt, ServeAt, false, Duration.Zero)]).Find("li").TextContent,
            StringComparison.Ordinal);

    private IRenderedComponent<StepList> Steps(IReadOnlyList<TimelineStep> steps) =>
        Render<StepList>(with => with.Add(l => l.Steps, steps).Add(l => l.Zone, Plans.Zone));

    private IRenderedComponent<DaysRibbon> Ribbon(HostTimeline timeline, Instant now) => Render<DaysRibbon>(with => with
        .Add(r => r.Timeline, timeline).Add(r => r.ServeAt, ServeAt).Add(r => r.Now, now).Add(r => r.Zone, Plans.Zone));
}
