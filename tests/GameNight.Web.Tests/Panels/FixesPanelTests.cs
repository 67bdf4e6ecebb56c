using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Timeline;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Timeline;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class FixesPanelTests : BunitContext
{
    private static readonly Instant ServeAt = NightBuilder.ANight().Build().ServeAt;
    private static readonly BusyTime Round = new(ServeAt + Duration.FromMinutes(30), ServeAt + Duration.FromMinutes(75), IsAtTable: true);
    private static readonly NoFreeHands NoHands = new(
        StepKind.Bake, 5, ServeAt + Duration.FromMinutes(60), ServeAt + Duration.FromMinutes(90), null, ServeAt + Duration.FromHours(16), HandsThen: 3,
        [new HostAway(Round.From, Round.Until)]);

    private readonly List<object> _taken = [];

    [Fact]
    public void Each_way_out_is_one_tap()
    {
        var panel = Panel([NoHands, new LastPieIsLate(Duration.FromMinutes(100), 1, 2), new TooLateForColdFerment(ServeAt, ServeAt + Duration.FromHours(20), Duration.FromHours(18), Duration.FromHours(13))], Round);

        Assert.Equal(
            ["Take out Sat 12 Dec, 20:00 to 20:45", "Plan one helper", "13 h in the cold instead", "Serve Sun 13 Dec, 15:30 instead"],
            panel.FindAll("button").Select(button => button.TextContent));
        foreach (var button in panel.FindAll("button"))
        {
            button.Click();
        }

        Assert.Equal([Round, 2, 13.0, ServeAt + Duration.FromHours(20)], _taken);
    }

    [Fact]
    public void A_time_that_is_not_in_the_way_is_left_alone()
    {
        var early = new BusyTime(ServeAt - Duration.FromHours(3), ServeAt - Duration.FromHours(2), IsAtTable: false);

        Assert.DoesNotContain(Panel([NoHands], early).FindAll("button"), button => button.TextContent.StartsWith("Take out", StringComparison.Ordinal));
    }

    [Fact]
    public void Who_may_not_tell_guests_is_not_offered_what_tells_them()
    {
        var panel = Panel([NoHands, new TooLateForColdFerment(ServeAt, ServeAt + Duration.FromHours(20), Duration.FromHours(18), Duration.FromHours(13))], mayOrganise: false);

        Assert.Equal(["Plan 2 helpers"], panel.FindAll("button").Select(button => button.TextContent));
    }

    [Fact]
    public void A_night_that_works_with_a_late_last_pie_is_offered_a_helper_for_that_and_no_more()
    {
        var panel = Panel([new LastPieIsLate(Duration.FromMinutes(100), 1, 2)]);

        Assert.Equal("What would bring the last pie sooner", panel.Find("h2").TextContent);
        Assert.Equal("What would make it work", Panel([NoHands, new LastPieIsLate(Duration.FromMinutes(100), 1, 2)]).Find("h2").TextContent);
        Assert.True(FixesPanel.HasAny([NoHands]));
        Assert.False(FixesPanel.HasAny([new OwnStepFindsNoRoom(1, null, null, [], null)]));
    }

    [Fact]
    public void A_night_that_works_is_offered_nothing() =>
        Assert.Empty(Panel([new LastPieIsLate(Duration.FromMinutes(100), 2, 1)]).FindAll("*"));

    private IRenderedComponent<FixesPanel> Panel(IReadOnlyList<Conflict> conflicts, BusyTime? busy = null, bool mayOrganise = true) =>
        Render<FixesPanel>(with => with.Add(p => p.Conflicts, conflicts).Add(p => p.Busy, busy is null ? [] : [busy]).Add(p => p.Zone, "Europe/Berlin")
            .Add(p => p.MayCook, true).Add(p => p.MayOrganise, mayOrganise)
            .Add(p => p.Serve, at => _taken.Add(at)).Add(p => p.Cold, hours => _taken.Add((double)hours)).Add(p => p.Hands, hands => _taken.Add(hands))
            .Add(p => p.Free, time => _taken.Add(time)));
}
