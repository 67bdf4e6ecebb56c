using Bunit;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Web.Host.Timeline;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class RemindPanelTests : BunitContext
{
    private readonly List<int?> _chosen = [];

    [Fact]
    public void A_host_chooses_how_long_before_or_no_mail()
    {
        var panel = Panel(new WorkRemindersView(CanCarry: true, MinutesAhead: 60, Newest: null));

        Assert.Equal(["no mail", "30 min before", "1 h before", "2 h before", "12 h before"], panel.FindAll("option").Select(option => option.TextContent));
        Assert.Equal("60", panel.Find("select").GetAttribute("value"));
        panel.Find("select").Change("120");
        panel.Find("select").Change("");

        Assert.Equal([120, null], _chosen);
    }

    [Fact]
    public void What_became_of_the_last_one_is_said_and_stands_out_when_it_was_given_up()
    {
        var at = Instant.FromUtc(2026, 12, 10, 16, 30);

        var sent = Panel(new WorkRemindersView(true, 60, new WorkReminderLine(MessageState.Sent, null, at))).Find("[role=status]");
        Assert.Contains("The last one for this night: sent Thu 10 Dec, 17:30", sent.TextContent, StringComparison.Ordinal);
        Assert.Equal("soft", sent.ClassName);

        var failed = Panel(new WorkRemindersView(true, 60, new WorkReminderLine(MessageState.GivenUp, MessageFault.AddressRefused, at))).Find("[role=status]");
        Assert.Contains("does not take this address", failed.TextContent, StringComparison.Ordinal);
        Assert.Equal("notice care", failed.ClassName);
    }

    [Fact]
    public void Without_a_mail_server_the_calendar_is_offered_instead()
    {
        var panel = Panel(new WorkRemindersView(CanCarry: false, MinutesAhead: null, Newest: null));

        Assert.Empty(panel.FindAll("select"));
        Assert.Contains("calendar", panel.Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<RemindPanel> Panel(WorkRemindersView view) =>
        Render<RemindPanel>(with => with.Add(p => p.View, view).Add(p => p.Zone, "Europe/Berlin").Add(p => p.Changed, _chosen.Add));
}
