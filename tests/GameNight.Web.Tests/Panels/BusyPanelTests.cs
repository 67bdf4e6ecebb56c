using Bunit;
using GameNight.Nights.Records;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Timeline;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class BusyPanelTests : BunitContext
{
    private static readonly Instant ServeAt = NightBuilder.ANight().Build().ServeAt;
    private static readonly BusyTime Away = new(ServeAt - Duration.FromHours(30), ServeAt - Duration.FromHours(28), IsAtTable: false);
    private static readonly BusyTime Round = new(ServeAt + Duration.FromMinutes(20), ServeAt + Duration.FromMinutes(60), IsAtTable: true);

    private IReadOnlyList<BusyTime>? _times;

    /// <summary>Three rounds of 45 minutes with breaks of 20, as a pie takes 19: 20:00 to 20:45, 21:05 to 21:50, 22:10 to 22:55.</summary>
    [Fact]
    public void Rounds_with_breaks_take_the_place_of_the_rounds_there_are()
    {
        var panel = Panel(Away, Round);
        panel.Find("#rounds-first").Change("2026-12-12T20:00");

        Form(panel).Submit();

        var first = Instant.FromUtc(2026, 12, 12, 19, 0);
        Assert.Equal(
            [
                Away,
                .. new[] { 0, 65, 130 }.Select(minute => new BusyTime(
                    first + Duration.FromMinutes(minute), first + Duration.FromMinutes(minute + 45), IsAtTable: true)),
            ],
            _times!);
    }

    [Fact]
    public void A_break_in_which_no_pie_can_be_baked_is_told()
    {
        BusyTime At(int minute) => new(ServeAt + Duration.FromMinutes(minute), ServeAt + Duration.FromMinutes(minute + 40), IsAtTable: true);

        var notice = Assert.Single(Panel(At(20), At(78), At(138)).FindAll(".notice"));

        Assert.Contains("The break from 20:30 to 20:48 is too short for a pie, which takes 19 min", notice.TextContent, StringComparison.Ordinal);
        Assert.Empty(Panel(Away, At(20), At(79)).FindAll(".notice"));
    }

    [Theory]
    [InlineData("#rounds-first", "", "Choose")]
    [InlineData("#rounds-minutes", "5", "Minutes of a round:")]
    [InlineData("#rounds-break", "x", "Minutes of a break:")]
    [InlineData("#rounds-count", "13", "Rounds:")]
    [InlineData("#rounds-count", "2.5", "Rounds:")]
    [InlineData("#rounds-first", "2026-12-20T20:00", "No step of this night lies there")]
    public void A_round_that_cannot_be_is_refused_with_what_to_do(string field, string typed, string says)
    {
        var panel = Panel();
        panel.Find("#rounds-first").Change("2026-12-12T20:00");
        panel.Find(field).Change(typed);

        Form(panel).Submit();

        Assert.Null(_times);
        Assert.Contains(panel.FindAll("[role=alert]"), alert => alert.TextContent.Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void A_time_typed_back_to_front_is_refused_and_one_that_fits_is_kept()
    {
        var panel = Panel(Away);
        panel.Find("#busy-from").Change("2026-12-11T18:00");
        panel.Find("#busy-until").Change("2026-12-11T17:00");
        panel.FindAll("form")[0].Submit();
        Assert.Null(_times);
        Assert.Contains("It ends before it begins", panel.Find(".problem").TextContent, StringComparison.Ordinal);

        panel.Find("#busy-until").Change("2026-12-11T19:00");
        panel.FindAll("form")[0].Submit();

        Assert.Equal([Away, new BusyTime(Instant.FromUtc(2026, 12, 11, 17, 0), Instant.FromUtc(2026, 12, 11, 18, 0), IsAtTable: false)], _times!);
    }

    private static AngleSharp.Dom.IElement Form(IRenderedComponent<BusyPanel> panel) => panel.Find("details form");

    private IRenderedComponent<BusyPanel> Panel(params BusyTime[] times) => Render<BusyPanel>(with => with
        .Add(p => p.Times, times).Add(p => p.Pie, Duration.FromMinutes(19)).Add(p => p.ServeAt, ServeAt).Add(p => p.Zone, "Europe/Berlin").Add(p => p.MayChange, true)
        .Add(p => p.Changed, all => _times = all));
}
