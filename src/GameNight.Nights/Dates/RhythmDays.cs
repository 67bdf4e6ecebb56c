using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights.Dates;

/// <summary>A night as the rhythm has it.</summary>
/// <param name="Day">The day of the rhythm, by which it is moved or skipped.</param>
/// <param name="At">The first pie on the table; another day when it was moved.</param>
public sealed record RhythmNight(LocalDate Day, LocalDateTime At, bool IsMoved);

/// <summary>From a rhythm to its next nights.</summary>
public static class RhythmDays
{
    /// <summary>Looked for so far ahead: days off could leave out everything nearer.</summary>
    private static readonly Period Farthest = Period.FromYears(2);

    /// <summary>The next nights after a day, earliest first, without days off and with what was moved.</summary>
    /// <param name="zone">Of the group; a time of day that the clock skips there moves on by as much.</param>
    public static IReadOnlyList<RhythmNight> Next(Rhythm rhythm, LocalDate after, int count, string zone)
    {
        var time = LocalTime.FromMinutesSinceMidnight(rhythm.ServeMinute);
        var from = LocalDate.Max(rhythm.From, after.PlusDays(-Rhythm.FarthestMove));
        return [.. Days(rhythm, from)
            .TakeWhile(day => day <= after + Farthest)
            .Select(day => rhythm.Moved.FirstOrDefault(moved => moved.From == day) is { } moved
                ? new RhythmNight(day, Shown(moved.To, zone), IsMoved: true)
                : new RhythmNight(day, Shown(day + time, zone), IsMoved: false))
            .Where(night => night.At.Date > after && !rhythm.DaysOff.Contains(night.IsMoved ? night.At.Date : night.Day))
            .OrderBy(night => night.At)
            .Take(count)];
    }

    /// <summary>Whether the rhythm has a night on that day, moved or not.</summary>
    public static bool Has(Rhythm rhythm, LocalDate day) => Days(rhythm, day).FirstOrDefault() == day;

    private static IEnumerable<LocalDate> Days(Rhythm rhythm, LocalDate from) => rhythm.EveryWeeks is { } weeks
        ? Weekly(rhythm, weeks, from)
        : Monthly(rhythm, from);

    private static IEnumerable<LocalDate> Weekly(Rhythm rhythm, int weeks, LocalDate from)
    {
        var first = rhythm.From.With(DateAdjusters.NextOrSame(rhythm.Day));
        var skipped = from > first ? (Period.DaysBetween(first, from) + (7 * weeks) - 1) / (7 * weeks) : 0;
        for (var day = first.PlusWeeks(skipped * weeks); ; day = day.PlusWeeks(weeks))
        {
            yield return day;
        }
    }

    private static IEnumerable<LocalDate> Monthly(Rhythm rhythm, LocalDate from)
    {
        for (var month = new LocalDate(from.Year, from.Month, 1); ; month = month.PlusMonths(1))
        {
            var day = rhythm.OfMonth == Rhythm.LastOfMonth
                ? month.With(DateAdjusters.EndOfMonth).With(DateAdjusters.PreviousOrSame(rhythm.Day))
                : month.With(DateAdjusters.NextOrSame(rhythm.Day)).PlusWeeks(rhythm.OfMonth!.Value - 1);
            if (day >= from && day >= rhythm.From)
            {
                yield return day;
            }
        }
    }

    private static LocalDateTime Shown(LocalDateTime local, string zone) => NightTime.Resolve(local, zone).At.LocalDateTime;
}
