using System.Text.Json;
using System.Text.RegularExpressions;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Records;
using GameNight.TestKit.Running;
using GameNight.Web.Guests;
using NodaTime;

namespace GameNight.Web.Tests.Calendar;

/// <summary>
/// Calendar files before two libraries from npm: ical.js, which reckons with the time zones in the file, and node-ical, which
/// has its own. They are fetched once, pinned by the lock file; without npm the test is skipped.
/// </summary>
public sealed partial class CalendarReadersTests
{
    private static readonly GroupId Group = GroupId.New();
    private static readonly GuestId Guest = GuestId.New();

    /// <summary>Nights before, in and after a change of clocks, in zones with and without, north and south, by an hour and by half.</summary>
    private static readonly (string Zone, LocalDateTime ServeAt)[] Nights =
    [
        ("Europe/Berlin", new(2026, 12, 12, 19, 30)),
        ("Europe/Berlin", new(2027, 3, 27, 19, 30)),
        ("Europe/Berlin", new(2027, 3, 28, 2, 30)),
        ("Europe/Berlin", new(2027, 3, 28, 19, 30)),
        ("Europe/Berlin", new(2027, 10, 30, 23, 30)),
        ("Europe/Berlin", new(2027, 10, 31, 2, 30)),
        ("Europe/Berlin", new(2027, 10, 31, 19, 30)),
        ("Europe/Lisbon", new(2026, 7, 4, 20, 0)),
        ("America/New_York", new(2026, 10, 31, 19, 0)),
        ("America/New_York", new(2026, 11, 1, 1, 30)),
        ("America/New_York", new(2027, 3, 14, 19, 0)),
        ("America/St_Johns", new(2027, 3, 14, 18, 30)),
        ("Australia/Sydney", new(2027, 4, 4, 19, 0)),
        ("Australia/Lord_Howe", new(2027, 4, 4, 19, 0)),
        ("America/Santiago", new(2027, 4, 4, 19, 0)),
        ("Asia/Tokyo", new(2027, 1, 9, 18, 0)),
        ("Asia/Kathmandu", new(2027, 1, 9, 18, 0)),
    ];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Both_read_every_night_at_the_moment_that_was_meant()
    {
        var nights = Nights.Select((one, index) => Night(one.Zone, one.ServeAt) with
        {
            Presence = index % 4 == 3 ? null : (Presence)(index % 3),
            IsCancelled = index % 5 == 4,
            Address = index % 3 == 0 ? "Rua das Flores 7; second floor, left" : null,
            Sequence = index,
        }).ToList();
        var files = nights.Select((night, index) => (Name: $"{index}", Text: NightCalendar.Write(night, Instant.FromUtc(2026, 12, 1, 0, 0)), Nights: (IReadOnlyList<CalendarNight>)[night]))
            .Append((Name: "feed", Text: NightCalendar.WriteFeed(new FeedView("Thursday table", nights), Instant.FromUtc(2026, 12, 1, 0, 0)), Nights: [.. nights.Where(night => night.Presence != Presence.NotComing)]))
            .ToList();

        var read = await ReadAsync([.. files.Select(file => new CalendarFile(file.Name, file.Text))]);

        Assert.Equal(2 * files.Count, read.Count);
        foreach (var (name, _, meant) in files)
        {
            foreach (var reading in read.Where(one => one.Name == name))
            {
                Assert.Equal(
                    meant.Select(Meant).OrderBy(one => one.Uid),
                    reading.Events.OrderBy(one => one.Uid));
                Assert.Equal(name == "feed" ? "PUBLISH" : NightCalendar.MethodOf(meant[0]), reading.Method);
            }
        }
    }

    [Fact]
    public void Every_time_zone_that_is_used_is_told_once_and_in_full()
    {
        var nights = Nights.Select(one => Night(one.Zone, one.ServeAt)).ToList();

        var file = Unfolded().Replace(NightCalendar.WriteFeed(new FeedView("Thursday table", nights), Instant.FromUtc(2026, 12, 1, 0, 0)), "");

        var zones = TimeZone().Matches(file).Select(zone => zone.Value).ToList();
        var told = zones.Select(zone => Id().Match(zone).Groups[1].Value).ToList();
        Assert.Equal(nights.Select(night => night.Zone).Distinct().Order(), told.Order());
        Assert.Equal(UsedId().Matches(file).Select(used => used.Groups[1].Value).Distinct().Order(), told.Order());
        Assert.All(zones, zone =>
        {
            var observances = Observance().Matches(zone).Select(one => one.Value).ToList();
            Assert.NotEmpty(observances);
            Assert.All(observances, observance =>
            {
                // RFC 5545, 3.6.5: each of these is there once.
                Assert.Single(Regex.Matches(observance, "^DTSTART:[0-9]{8}T[0-9]{6}\r?$", RegexOptions.Multiline));
                Assert.Single(Regex.Matches(observance, "^TZOFFSETFROM:[+-][0-9]{4,6}\r?$", RegexOptions.Multiline));
                Assert.Single(Regex.Matches(observance, "^TZOFFSETTO:[+-][0-9]{4,6}\r?$", RegexOptions.Multiline));
            });
        });
    }

    /// <summary>RFC 5546, 3.2.1 and 3.2.5: what a published and a cancelled event must have and must not have.</summary>
    [Theory]
    [InlineData(Presence.Coming, false, "PUBLISH", "CONFIRMED")]
    [InlineData(Presence.Undecided, false, "PUBLISH", "TENTATIVE")]
    [InlineData(null, false, "PUBLISH", "TENTATIVE")]
    [InlineData(Presence.NotComing, false, "CANCEL", "CANCELLED")]
    [InlineData(Presence.Coming, true, "CANCEL", "CANCELLED")]
    public void The_method_fits_what_is_said(Presence? presence, bool isCancelled, string method, string status)
    {
        var file = NightCalendar.Write(
            Night("Europe/Berlin", new(2026, 12, 12, 19, 30)) with { Presence = presence, IsCancelled = isCancelled },
            Instant.FromUtc(2026, 12, 1, 0, 0));

        Assert.Contains($"METHOD:{method}\r\n", file, StringComparison.Ordinal);
        Assert.Contains($"STATUS:{status}\r\n", file, StringComparison.Ordinal);
        Assert.All(
            new[] { "UID:", "SEQUENCE:", "DTSTAMP:", "ORGANIZER", "SUMMARY:", "DTSTART;" },
            needed => Assert.Equal(1, Regex.Count(file, $"^{needed}", RegexOptions.Multiline)));
        Assert.DoesNotContain("ATTENDEE", file, StringComparison.Ordinal);
    }

    private static CalendarNight Night(string zone, LocalDateTime serveAt) => new(
        Group, NightId.New(), Guest, "Thursday table", "Pizza, tiles; and more", serveAt, null, zone, null, false, Presence.Coming, 0);

    private static ReadEvent Meant(CalendarNight night)
    {
        var zone = DateTimeZoneProviders.Tzdb[night.Zone];
        var end = night.ServeAt.PlusHours(4).InZoneLeniently(zone).ToInstant();
        return new ReadEvent(
            $"{night.Night}-{night.Guest}@gamenight",
            NightTime.ToInstant(night.ServeAt, night.Zone).ToUnixTimeMilliseconds(),
            end.ToUnixTimeMilliseconds(),
            night.IsCancelled || night.Presence == Presence.NotComing ? "CANCELLED" : night.Presence == Presence.Coming ? "CONFIRMED" : "TENTATIVE",
            night.Sequence,
            night.Address);
    }

    private static async Task<List<ReadCalendar>> ReadAsync(IReadOnlyList<CalendarFile> files)
    {
        var tools = NodePrograms.Pinned(Path.Combine(AppContext.BaseDirectory, "Calendar", "outside"), "calendar-readers");
        Assert.SkipWhen(tools is null, "npm is not installed: readers from outside cannot be fetched.");
        var said = await tools.RunAsync("read.mjs", JsonSerializer.Serialize(files, JsonSerializerOptions.Web), Cancellation);
        return JsonSerializer.Deserialize<List<ReadCalendar>>(said, JsonSerializerOptions.Web)!;
    }

    private sealed record CalendarFile(string Name, string Text);

    private sealed record ReadCalendar(string Name, string Library, string? Method, IReadOnlyList<ReadEvent> Events);

    private sealed record ReadEvent(string Uid, long Start, long End, string Status, int Sequence, string? Location);

    [GeneratedRegex("\r\n[ \t]")]
    private static partial Regex Unfolded();

    [GeneratedRegex("BEGIN:VTIMEZONE.*?END:VTIMEZONE", RegexOptions.Singleline)]
    private static partial Regex TimeZone();

    [GeneratedRegex("BEGIN:(STANDARD|DAYLIGHT).*?END:\\1", RegexOptions.Singleline)]
    private static partial Regex Observance();

    [GeneratedRegex("TZID:([^\r\n]+)")]
    private static partial Regex Id();

    [GeneratedRegex(";TZID=([^:\r\n]+):")]
    private static partial Regex UsedId();
}
