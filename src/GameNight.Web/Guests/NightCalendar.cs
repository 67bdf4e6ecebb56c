using GameNight.Nights.ForGuests;
using GameNight.Nights.Records;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;
using Period = NodaTime.Period;

namespace GameNight.Web.Guests;

/// <summary>
/// Nights for a guest's calendar (RFC 5545, 5546): one of them as a file, all of them as a feed. The same night and guest keep
/// the same UID; no dietary word is in it.
/// </summary>
internal static class NightCalendar
{
    public const string MediaType = "text/calendar";

    private const string Publish = "PUBLISH";
    private const string Cancel = "CANCEL";

    /// <summary>How often calendars look again, if they ask at all.</summary>
    private const string LookAgain = "PT1H";

    private static readonly Period UsualLength = Period.FromHours(4);

    /// <summary>A file that puts the night into a calendar, or takes it out again when it is called off or the guest stays away.</summary>
    public static string Write(CalendarNight night, Instant now) => Write([night], MethodOf(night), now, feedName: null);

    /// <summary>
    /// The nights of a guest. One that is called off stays, and says so; one that the guest stays away from is left out, as a
    /// calendar takes a feed for everything there is.
    /// </summary>
    public static string WriteFeed(FeedView feed, Instant now) =>
        Write([.. InFeed(feed)], Publish, now, feed.GroupName);

    public static IEnumerable<CalendarNight> InFeed(FeedView feed) => feed.Nights.Where(night => night.Presence != Presence.NotComing);

    /// <summary>A night that is not (any more) the guest's is cancelled, never published: programs look at both.</summary>
    public static string MethodOf(CalendarNight night) => StatusOf(night) == EventStatus.Cancelled ? Cancel : Publish;

    private static string StatusOf(CalendarNight night) =>
        night.IsCancelled || night.Presence == Presence.NotComing ? EventStatus.Cancelled
        : night.Presence == Presence.Coming ? EventStatus.Confirmed
        : EventStatus.Tentative;

    private static string Write(IReadOnlyList<CalendarNight> nights, string method, Instant now, string? feedName)
    {
        var calendar = new Calendar { ProductId = "-//GameNight//Night//EN", Method = method };
        if (feedName is not null)
        {
            calendar.AddProperty("NAME", feedName);
            calendar.AddProperty("X-WR-CALNAME", feedName);
            var again = new CalendarProperty("REFRESH-INTERVAL", LookAgain);
            again.AddParameter("VALUE", "DURATION");
            calendar.AddProperty(again);
            calendar.AddProperty("X-PUBLISHED-TTL", LookAgain);
        }

        foreach (var zone in nights.GroupBy(night => night.Zone))
        {
            calendar.AddTimeZone(zone.Key, zone.Min(night => night.ServeAt).PlusYears(-1).ToDateTimeUnspecified(), false);
        }

        foreach (var night in nights)
        {
            calendar.Events.Add(Event(night, now));
        }

        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    private static CalendarEvent Event(CalendarNight night, Instant now) => new()
    {
        Uid = $"{night.Night}-{night.Guest}@gamenight",
        Sequence = night.Sequence,
        Status = StatusOf(night),

        // Both methods ask for one; answers are given through the link and not to an address.
        Organizer = new Organizer { Value = new Uri($"urn:uuid:{night.Group.Value}"), CommonName = night.GroupName },
        Summary = $"{night.Title} ({night.GroupName})",
        Location = night.Address,
        Start = At(night.ServeAt, night.Zone),
        End = At(night.EndsAt ?? night.ServeAt + UsualLength, night.Zone),
        DtStamp = new CalDateTime(now.ToDateTimeUtc(), "UTC"),
    };

    /// <summary>
    /// Programs differ in how they read an hour that the clock skips or repeats: the one is written as the hour that is meant by
    /// it, the other in UTC.
    /// </summary>
    private static CalDateTime At(LocalDateTime local, string zone)
    {
        var (at, change) = NightTime.Resolve(local, zone);
        return change == ClockChange.Doubled
            ? new CalDateTime(at.ToDateTimeUtc(), "UTC")
            : new CalDateTime(at.LocalDateTime.ToDateTimeUnspecified(), zone);
    }
}
