using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Timeline;
using GameNight.Web.Wording;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class OwnStepsPanelTests : BunitContext
{
    private static readonly Instant ServeAt = NightBuilder.ANight().Build().ServeAt;
    private static readonly NamedOwnStep Chairs = new("Fetch the chairs", new OwnStep(3, Duration.FromMinutes(30), true, After: new StepTie(StepKind.Shop)));

    private readonly List<NamedOwnStep> _kept = [];
    private readonly List<int> _dropped = [];

    public OwnStepsPanelTests() => Services.AddSingleton(SharedFolder.Tables);

    [Fact]
    public void A_step_at_a_time_is_kept_with_its_name_minutes_and_hands()
    {
        var panel = Panel([]);
        panel.Find("#own-name").Change("Light the garden");
        panel.Find("#own-minutes").Change("20");
        panel.Find("input[type=checkbox]").Change(false);
        panel.Find("#own-from").Change("2026-12-12T17:00");

        panel.Find("form").Submit();

        var at = Instant.FromUtc(2026, 12, 12, 17, 0);
        var kept = Assert.Single(_kept);
        Assert.Equal(("Light the garden", new OwnStep(kept.Step.Number, Duration.FromMinutes(20), false, at, at + Duration.FromMinutes(20))), (kept.Name, kept.Step));
        Assert.Equal("", panel.Find("#own-name").GetAttribute("value"));
    }

    [Theory]
    [InlineData("", "20", "Say in a few words what you do")]
    [InlineData("Sleep", "1800", "Type a whole number from 1 to 720. What takes longer than half a day is two steps with a rest between them.")]
    [InlineData("Sleep", "half an hour", "Type a whole number from 1 to 720.")]
    public void What_cannot_be_is_said_at_its_field_and_nothing_typed_is_lost(string name, string minutes, string says)
    {
        var panel = Panel([]);
        panel.Find("#own-name").Change(name);
        panel.Find("#own-minutes").Change(minutes);
        panel.Find("#own-from").Change("2026-12-12T17:00");

        panel.Find("form").Submit();

        Assert.Empty(_kept);
        Assert.Contains(says, panel.Markup, StringComparison.Ordinal);
        Assert.Equal((name, minutes, "2026-12-12T17:00"), (
            panel.Find("#own-name").GetAttribute("value"), panel.Find("#own-minutes").GetAttribute("value"), panel.Find("#own-from").GetAttribute("value")));
    }

    [Theory]
    [InlineData("", "Choose a date and a time.")]
    [InlineData("2026-12-01T17:00", "No step of this night lies there")]
    public void A_time_that_is_missing_or_far_off_is_said(string from, string says)
    {
        var panel = Panel([]);
        panel.Find("#own-name").Change("Light the garden");
        panel.Find("#own-from").Change(from);

        panel.Find("form").Submit();

        Assert.Empty(_kept);
        Assert.Contains(says, panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_that_would_come_before_itself_is_refused_with_what_to_do()
    {
        var panel = Panel([Chairs, new NamedOwnStep("Set the table", new OwnStep(4, Duration.FromMinutes(10), true, After: new StepTie(StepKind.Own, 3)))]);
        panel.FindAll("li button").First(button => button.TextContent == "Change").Click();
        Assert.Equal("Fetch the chairs", panel.Find("#own-name").GetAttribute("value"));

        foreach (var tie in new[] { "4", "3" })
        {
            panel.Find("#own-after").Change(tie);
            panel.Find("form").Submit();

            Assert.Empty(_kept);
            Assert.Contains("would have to come before itself", panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        }

        panel.Find("#own-when").Change(OwnStepWhen.BetweenSteps.ToString());
        panel.Find("#own-after").Change("Mix");
        panel.Find("#own-before").Change("Temper");
        panel.Find("form").Submit();
        Assert.Equal(Chairs.Step with { After = new StepTie(StepKind.Mix), Before = new StepTie(StepKind.Temper) }, Assert.Single(_kept).Step);
    }

    [Fact]
    public void What_takes_the_oven_at_another_heat_is_kept_shown_and_changed()
    {
        var roast = new NamedOwnStep("Roast the peppers", new OwnStep(5, Duration.FromMinutes(40), false, Before: new StepTie(StepKind.Shape), Takes: Station.OvenAtOtherHeat));
        var panel = Panel([roast]);
        Assert.Contains("the oven at another heat", panel.Find("li").TextContent, StringComparison.Ordinal);

        panel.FindAll("li button").First(button => button.TextContent == "Change").Click();
        Assert.Equal("OvenAtOtherHeat", panel.Find("#own-takes").GetAttribute("value"));
        panel.Find("#own-takes").Change("Hob");
        panel.Find("form").Submit();
        Assert.Equal(roast.Step with { Takes = Station.Hob }, Assert.Single(_kept).Step);

        panel.FindAll("li button").First(button => button.TextContent == "Change").Click();
        panel.Find("#own-takes").Change("");
        panel.Find("form").Submit();
        Assert.Null(_kept[^1].Step.Takes);
    }

    [Fact]
    public void One_tap_moves_a_step_to_where_there_is_room_and_one_takes_it_out()
    {
        var free = ServeAt - Duration.FromHours(9);
        var panel = Panel([Chairs], Plans.Usual.Timeline with { Conflicts = [new OwnStepFindsNoRoom(3, null, null, [], free)] });
        Assert.Contains("finds no room yet", panel.Markup, StringComparison.Ordinal);

        panel.FindAll("li button")[0].Click();
        panel.FindAll("li button").Single(button => button.TextContent == "Take out").Click();

        Assert.Equal(Chairs with { Step = Chairs.Step with { From = free, Until = free + Chairs.Step.Length, After = null } }, Assert.Single(_kept));
        Assert.Equal([3], _dropped);
    }

    [Fact]
    public void Once_the_dough_is_begun_nothing_new_comes_before_it()
    {
        var panel = Panel([], isBegun: true);
        panel.Find("#own-when").Change(OwnStepWhen.BetweenSteps.ToString());

        Assert.Contains(panel.FindAll("#own-after option"), option => option.GetAttribute("value") == "Mix");
        Assert.DoesNotContain(panel.FindAll("#own-before option"), option => option.GetAttribute("value") == "Mix");
    }

    [Fact]
    public void List_chart_and_ribbon_call_a_step_by_its_name()
    {
        var plan = Plans.Of(NightBuilder.ANight().WithGuests(5).But(night => night with
        {
            OwnSteps = [new OwnStep(3, Duration.FromMinutes(30), true, Before: new StepTie(StepKind.Serve), After: new StepTie(StepKind.Preheat))],
        }).Build());
        var names = new OwnStepNames([Chairs]);

        Assert.Contains("Fetch the chairs", Render<StepList>(with => with.Add(l => l.Steps, plan.Timeline.Steps).Add(l => l.Own, names).Add(l => l.Zone, Plans.Zone)).Markup, StringComparison.Ordinal);
        Assert.Contains("Fetch the chairs", Render<EveningChart>(with => with.Add(l => l.Steps, plan.Timeline.Steps).Add(l => l.Own, names).Add(l => l.Zone, Plans.Zone)).Find(".lane:last-child .lane-name").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<OwnStepsPanel> Panel(IReadOnlyList<NamedOwnStep> steps, HostTimeline? timeline = null, bool isBegun = false) => Render<OwnStepsPanel>(with => with
        .Add(p => p.Steps, steps)
        .Add(p => p.Timeline, timeline ?? Plans.Usual.Timeline)
        .Add(p => p.ServeAt, ServeAt)
        .Add(p => p.Now, NightBuilder.Now)
        .Add(p => p.Zone, Plans.Zone)
        .Add(p => p.IsBegun, isBegun)
        .Add(p => p.MayChange, true)
        .Add(p => p.Keep, own =>
        {
            _kept.Add(own);
            return Task.FromResult<string?>(null);
        })
        .Add(p => p.Drop, _dropped.Add));
}
