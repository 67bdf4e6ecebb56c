using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>Proposes when the next night is: as far from the last one as nights usually are, on the same weekday.</summary>
public static class NightRhythm
{
    /// <summary>So many distances between nights are looked at.</summary>
    private const int MostDistances = 4;

    /// <param name="nights">Days of the nights so far, in any order; at least one.</param>
    /// <returns>A day after <paramref name="today"/>.</returns>
    public static LocalDate Next(IReadOnlyList<LocalDate> nights, LocalDate today)
    {
        var days = nights.Distinct().OrderDescending().ToList();
        var distances = days.Zip(days.Skip(1), (later, earlier) => Period.DaysBetween(earlier, later))
            .Take(MostDistances).Order().ToList();

        // The middle one: a summer's pause does not move it. Whole weeks keep the weekday.
        var usual = distances.Count == 0 ? 7 : distances[distances.Count / 2];
        var weeks = Math.Max(1, (int)Math.Round(usual / 7.0));
        var next = days[0].PlusWeeks(weeks);
        while (next <= today)
        {
            next = next.PlusWeeks(1);
        }

        return next;
    }
}
