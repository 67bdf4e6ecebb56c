using GameNight.Nights.Records;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using NodaTime;

namespace GameNight.Web.Host.Timeline;

/// <summary>Reads from a calendar file (RFC 5545) when the host is busy around a night. What it was for is not kept.</summary>
public static class BusyCalendar
{
    /// <summary>In bytes; some years of a busy calendar.</summary>
    public const int Largest = 2 * 1024 * 1024;

    private const string Transparent = "TRANSPARENT";

    /// <summary>
    /// Times of events that take the host's time, each repetition by itself, as far as they lie around the night. Events of a
    /// whole day are left out: they are birthdays and holidays more often than absence. Cancelled ones and those marked as free
    /// do not count.
    /// </summary>
    /// <param name="zone">IANA zone of the night: for times without one.</param>
    /// <returns>Null when it is no calendar.</returns>
    public static IReadOnlyList<BusyTime>? Read(string text, Instant serveAt, string zone)
    {
        Calendar? calendar;
        try
        {
            calendar = Calendar.Load(text);
        }
        catch (Exception fault) when (fault is System.Runtime.Serialization.SerializationException or ArgumentException or FormatException or InvalidOperationException or IndexOutOfRangeException)
        {
            // The library knows no other way to say that it is not one.
            return null;
        }

        if (calendar is null)
        {
            return null;
        }

        var (first, last) = (serveAt - BusyTime.FurthestBefore, serveAt + BusyTime.FurthestAfter);
        return
        [
            .. calendar.Events.Where(TakesTime)
                .SelectMany(one => one.GetOccurrences(new CalDateTime(first.ToDateTimeUtc().AddDays(-1), "UTC"))
                    .TakeWhile(occurrence => At(occurrence.Period.StartTime, zone) < last))
                .Select(occurrence => (From: At(occurrence.Period.StartTime, zone), Until: At(occurrence.Period.EffectiveEndTime ?? occurrence.Period.StartTime, zone)))
                .Select(time => new BusyTime(Instant.Max(first, time.From), Instant.Min(last, time.Until), IsAtTable: false))
                .Where(time => time.IsOf(serveAt)).Distinct().OrderBy(time => time.From).Take(BusyTime.Most + 1),
        ];
    }

    private static bool TakesTime(CalendarEvent one) =>
        one.Start is { HasTime: true } && one.Transparency != Transparent && one.Status != EventStatus.Cancelled;

    private static Instant At(CalDateTime time, string zone) => time.IsFloating
        ? NightTime.ToInstant(LocalDateTime.FromDateTime(time.Value), zone)
        : Instant.FromDateTimeUtc(time.AsUtc);
}
