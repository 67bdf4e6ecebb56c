using GameNight.Planning.Timeline;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Wording;

/// <summary>Says when the clocks of a zone are put forward or back while a night is made: lengths are kept, times of day jump.</summary>
public static class ClockChangeText
{
    /// <summary>The first change from the first step to the end of the last; null when the clocks stay as they are.</summary>
    public static string? Of(IReadOnlyList<TimelineStep> steps, string zone)
    {
        if (steps.Count == 0)
        {
            return null;
        }

        var tz = DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) ?? DateTimeZone.Utc;
        var (from, until) = (steps.Min(step => step.Start), steps.Max(step => step.End));
        var interval = tz.GetZoneInterval(from);
        if (!interval.HasEnd || interval.End >= until)
        {
            return null;
        }

        var next = tz.GetZoneInterval(interval.End);
        var (before, after) = (interval.End.WithOffset(interval.WallOffset).LocalDateTime, interval.End.WithOffset(next.WallOffset).LocalDateTime);
        return before == after ? null : Phrase.Fill(
            after < before ? TimelinePages.ClocksGoBack : TimelinePages.ClocksGoForward,
            QuantityText.Day(before.Date), QuantityText.Time(before.TimeOfDay), QuantityText.Time(after.TimeOfDay));
    }
}
