using Bunit;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.Web.Host.Live;
using GameNight.Web.Host.Print;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class LivePanelTests : BunitContext
{
    private static readonly IReadOnlySet<string> NoBases = new HashSet<string>();

    private static readonly Instant Now = Plans.Usual.Timeline.FirstPieAt!.Value;

    [Fact]
    public void A_clock_that_rang_is_one_large_button_and_one_that_runs_is_none_but_for_the_pie_in_the_oven()
    {
        var heard = new List<LiveClock>();
        var rack = new LiveClock("OffTheRack-1", LiveClockKind.OffTheRack, 1, Now);
        var pie = new LiveClock("PieOut-2", LiveClockKind.PieOut, 2, Now + Duration.FromMinutes(3));

        Row(rack, hasRung: true).Find("button").Click();
        Row(pie, hasRung: false).Find("button").Click();

        Assert.Equal([rack, pie], heard);
        Assert.Empty(Row(rack, hasRung: false).FindAll("button"));
        Assert.Empty(Row(rack, hasRung: true, mayTap: false).FindAll("button"));
        Assert.Equal("2026-12-12T18:30:00Z", Row(rack, hasRung: true).Find(".clockrow").GetAttribute("data-ends"));

        IRenderedComponent<ClockRow> Row(LiveClock clock, bool hasRung, bool mayTap = true) => Render<ClockRow>(with => with
            .Add(p => p.Clock, clock).Add(p => p.HasRung, hasRung).Add(p => p.MayTap, mayTap).Add(p => p.Tapped, (LiveClock one) => heard.Add(one)));
    }

    [Fact]
    public void A_pie_is_shaped_and_topped_in_one_step_with_what_is_on_it_and_its_warnings()
    {
        var done = new List<LiveStep>();
        var pie = Plans.Usual.Split.Pies[0];
        var step = Step(StepKind.Shape, pie.Number, Now);

        var next = Next(step, pie, ["Nothing with nuts comes near this pie."], done);

        Assert.Equal($"Shape and top pie\u00a0{pie.Number}", next.Find("h2").TextContent);
        Assert.Contains("prick the middle, a film of oil", next.Markup, StringComparison.Ordinal);
        Assert.Equal(pie.Sectors.Count, next.FindAll(".parts li").Count);
        Assert.Contains("Into the oven within 5 min of topping", next.Markup, StringComparison.Ordinal);
        Assert.Contains("Nothing with nuts", next.Find(".care-text").TextContent, StringComparison.Ordinal);
        next.Find("button").Click();
        Assert.Equal(step, Assert.Single(done));
    }

    [Fact]
    public void An_own_pie_is_served_with_its_own_board_and_a_step_far_off_leaves_time_to_sit_down()
    {
        var own = Plans.Usual.Split.Pies[0] with { OwnPieFor = ["somebody"] };

        var serve = Next(Step(StepKind.Serve, own.Number, Now + Duration.FromMinutes(20)), own, [], []);

        Assert.Contains("its own board and cutter", serve.Find(".care-text").TextContent, StringComparison.Ordinal);
        Assert.Contains("Nothing needs your hands until", serve.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing needs your hands until", Next(Step(StepKind.Serve, own.Number, Now), own, [], []).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_clock_of_ones_own_asks_for_a_name_and_whole_minutes_and_keeps_what_was_typed()
    {
        Services.AddSingleton(SharedFolder.Tables);
        var set = new List<(string, int)>();
        var live = new LiveEvening([], null, [], [], Now, Duration.Zero, 1);
        var actions = Render<LiveActions>(with => with.Add(p => p.Live, live).Add(p => p.SetClock, ((string, int) one) => set.Add(one)));

        actions.Find("#clock-minutes").Change("half an hour");
        actions.Find("form").Submit();
        Assert.Equal(2, actions.FindAll(".problem").Count);
        Assert.Equal("half an hour", actions.Find("#clock-minutes").GetAttribute("value"));

        actions.Find("#clock-name").Change("Peppers");
        actions.Find("#clock-minutes").Change("12");
        actions.Find("form").Submit();
        Assert.Equal(("Peppers", 12), Assert.Single(set));
        Assert.True(actions.FindAll(".liveactions > button")[0].HasAttribute("disabled"));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Only_yeast_that_is_woken_is_asked_for_its_foam(bool isWoken)
    {
        Services.AddSingleton(SharedFolder.Tables);
        var wrong = new List<(LiveStep Step, StepTrouble Trouble)>();
        var mix = Step(StepKind.Mix, 1, Now) with { State = LiveState.Later };
        var wake = Step(StepKind.WakeYeast, 1, Now - Duration.FromMinutes(10)) with { State = LiveState.Running, StartsItself = true };
        var live = new LiveEvening(isWoken ? [wake, mix] : [mix], mix, [], [], Now, Duration.Zero, 1);

        var actions = Render<LiveActions>(with => with.Add(p => p.Live, live).Add(p => p.Wrong, ((LiveStep, StepTrouble) one) => wrong.Add(one)));

        Assert.Equal(isWoken, actions.Markup.Contains("The yeast does not foam", StringComparison.Ordinal));
        actions.FindAll(".livetroubles button").ToList().ForEach(button => button.Click());
        Assert.Equal(isWoken ? [(mix, StepTrouble.NoFoam)] : [], wrong);
    }

    [Theory]
    [InlineData(0, 12, "The last pie would be on the table 12 min sooner")]
    [InlineData(45, 0, "wait 45 min less beyond what is good for them")]
    [InlineData(45, -6, "the last pie would be on the table 6 min later")]
    [InlineData(10, 4, "and the last pie would be on the table 4 min sooner")]
    public void Another_order_says_what_it_gains_and_what_comes_first_and_waits_to_be_taken(int lessOver, int sooner, string gain)
    {
        var said = new List<string>();
        LiveWork[] work =
        [
            new(StepKind.Shape, 3, Now, Now), new(StepKind.Top, 3, Now + Duration.FromMinutes(4), Now + Duration.FromMinutes(7)),
            new(StepKind.Serve, 2, Now + Duration.FromMinutes(7), Now + Duration.FromMinutes(4)), new(StepKind.Top, 9, Now + Duration.FromMinutes(9), Now),
        ];
        var order = new LiveOrder(
            new Dictionary<string, Instant>(), work, Duration.FromMinutes(lessOver), Now + Duration.FromHours(1), Duration.FromMinutes(sooner));

        var offer = Render<NewOrder>(with => with.Add(p => p.Order, order).Add(p => p.Now, Now).Add(p => p.Zone, Plans.Zone)
            .Add(p => p.Take, () => said.Add("take")).Add(p => p.Leave, () => said.Add("leave")));

        Assert.Contains(gain, offer.Find("p").TextContent.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Equal(
            ["Shape and top pie 3", "Cut and serve pie 2", "Top pie 9"],
            offer.FindAll("li span:first-child").Select(item => item.TextContent.Replace('\u00a0', ' ')));
        offer.FindAll("button")[1].Click();
        offer.FindAll("button")[0].Click();
        Assert.Equal(["leave", "take"], said);
    }

    private static LiveStep Step(StepKind kind, int number, Instant start) => new(
        new TimelineStep($"{kind}-{number}", kind, number, start, start + Duration.FromMinutes(4), true, Duration.Zero),
        start, start + Duration.FromMinutes(4), LiveState.Running, IsTapped: true, StartsItself: false);

    private IRenderedComponent<NextStep> Next(LiveStep step, PieOrder pie, IReadOnlyList<string> warnings, List<LiveStep> done) => Render<NextStep>(with => with
        .Add(p => p.Step, step).Add(p => p.Now, Now).Add(p => p.Zone, Plans.Zone).Add(p => p.MayTap, true)
        .Add(p => p.Drawn, new NextStep.Pie(pie, new PieNames(Plans.Usual.Split, new Dictionary<string, string>()), NoBases))
        .Add(p => p.Warnings, warnings).Add(p => p.Done, (LiveStep one) => done.Add(one)));
}
