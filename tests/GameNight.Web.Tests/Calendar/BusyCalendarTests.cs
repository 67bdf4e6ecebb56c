using GameNight.Nights.Records;
using GameNight.Web.Host.Timeline;
using NodaTime;

namespace GameNight.Web.Tests.Calendar;

public class BusyCalendarTests
{
    private const string Zone = "Europe/Lisbon";

    /// <summary>A Saturday.</summary>
    private static readonly Instant ServeAt = Instant.FromUtc(2026, 12, 12, 19, 30);

    [Fact]
    public void Times_with_hours_count_and_what_they_were_for_is_not_kept()
    {
        var busy = Assert.Single(Read("SUMMARY:Dentist", "DTSTART:20261211T090000Z", "DTEND:20261211T103000Z"));

        Assert.Equal(new BusyTime(Instant.FromUtc(2026, 12, 11, 9, 0), Instant.FromUtc(2026, 12, 11, 10, 30), IsAtTable: false), busy);
    }

    [Fact]
    public void Each_repetition_around_the_night_is_a_time_of_its_own()
    {
        var busy = Read("DTSTART;TZID=Europe/Berlin:20260105T180000", "DTEND;TZID=Europe/Berlin:20260105T193000", "RRULE:FREQ=WEEKLY;BYDAY=MO,TH");

        Assert.Equal([Instant.FromUtc(2026, 12, 7, 17, 0), Instant.FromUtc(2026, 12, 10, 17, 0)], busy.Select(one => one.From));
    }

    [Fact]
    public void A_time_without_a_zone_is_one_of_the_night()
    {
        var summer = Instant.FromUtc(2026, 7, 11, 18, 30);

        var busy = Assert.Single(BusyCalendar.Read(Calendar("DTSTART:20260710T090000", "DURATION:PT2H"), summer, Zone)!);

        Assert.Equal((Instant.FromUtc(2026, 7, 10, 8, 0), Instant.FromUtc(2026, 7, 10, 10, 0)), (busy.From, busy.Until));
    }

    [Fact]
    public void Whole_days_free_times_cancelled_ones_and_other_weeks_are_left_out()
    {
        Assert.Empty(Read("DTSTART;VALUE=DATE:20261211", "DTEND;VALUE=DATE:20261212"));
        Assert.Empty(Read("DTSTART:20261211T090000Z", "DTEND:20261211T103000Z", "TRANSP:TRANSPARENT"));
        Assert.Empty(Read("DTSTART:20261211T090000Z", "DTEND:20261211T103000Z", "STATUS:CANCELLED"));
        Assert.Empty(Read("DTSTART:20261011T090000Z", "DTEND:20261011T103000Z"));
        Assert.Empty(Read("DTSTART:20261214T090000Z", "DTEND:20261214T103000Z"));
    }

    [Fact]
    public void What_reaches_over_the_edge_is_cut_there()
    {
        var busy = Assert.Single(Read("DTSTART:20261203T090000Z", "DTEND:20261207T090000Z"));

        Assert.Equal(ServeAt - BusyTime.FurthestBefore, busy.From);
    }

    [Theory]
    [InlineData("")]
    [InlineData("name,eats like\nRui,adult")]
    [InlineData("BEGIN:VCALENDAR\nBEGIN:VEVENT\nDTSTART:yesterday\nEND:VEVENT\nEND:VCALENDAR")]
    public void What_is_no_calendar_gives_no_times(string text) => Assert.True(BusyCalendar.Read(text, ServeAt, Zone) is null or { Count: 0 });

    private static IReadOnlyList<BusyTime> Read(params string[] lines) => BusyCalendar.Read(Calendar(lines), ServeAt, Zone)!;

    private static string Calendar(params string[] lines) => string.Join(
        "\r\n",
        ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Somebody//Calendar//EN", "BEGIN:VEVENT", "UID:1@example.org", "DTSTAMP:20261101T000000Z", .. lines, "END:VEVENT", "END:VCALENDAR", ""]);
}
