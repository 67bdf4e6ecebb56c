using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>One night of the rhythm takes place at another time.</summary>
/// <param name="From">The day the rhythm has for it.</param>
public sealed record MovedDay(LocalDate From, LocalDateTime To);

/// <summary>How often a group meets: every so many weeks, or on one such day of each month. Local times of the group's zone.</summary>
/// <param name="ServeMinute">Minutes after midnight at which the first pie is on the table, 0 to 1439.</param>
/// <param name="EveryWeeks">1 to 8, counted from <paramref name="From"/>; null goes by the month.</param>
/// <param name="OfMonth">Which such day of the month: 1 to 4, or -1 for the last; null goes by weeks.</param>
/// <param name="From">No night before this day; weeks are counted from the first <paramref name="Day"/> on or after it.</param>
/// <param name="DaysOff">Days on which there is no night.</param>
public sealed record Rhythm(
    IsoDayOfWeek Day,
    int ServeMinute,
    int? EveryWeeks,
    int? OfMonth,
    LocalDate From,
    IReadOnlyList<LocalDate> DaysOff,
    IReadOnlyList<MovedDay> Moved)
{
    public const int MostWeeks = 8;
    public const int LastOfMonth = -1;
    public const int MostOfMonth = 4;
    public const int MostDaysOff = 200;
    public const int MostMoved = 50;

    /// <summary>In days: a night that moves farther is another night.</summary>
    public const int FarthestMove = 60;
}
