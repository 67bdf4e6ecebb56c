using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>
/// When reminders and thanks of a night go out, in its own zone: long enough before answers stop moving the dough, and never
/// while people sleep. The hours are of our own choosing: common practice, no source.
/// </summary>
internal static class NightMoments
{
    /// <summary>Before the answer-by time.</summary>
    public static readonly IReadOnlyList<Duration> RemindersBefore = [Duration.FromHours(48), Duration.FromHours(18)];

    /// <summary>A reminder that could not go out on time is still one for this long.</summary>
    public static readonly Duration ReminderHolds = Duration.FromHours(14);

    /// <summary>Who was told something this short ago is not reminded.</summary>
    public static readonly Duration Rest = Duration.FromHours(12);

    /// <summary>Thanks that could not go out on time are still wanted for this long.</summary>
    public static readonly Duration ThanksHold = Duration.FromDays(5);

    private static readonly LocalTime QuietFrom = new(21, 0);
    private static readonly LocalTime QuietUntil = new(9, 0);
    private static readonly LocalTime LastBeforeQuiet = new(20, 0);
    private static readonly LocalTime ThanksTime = new(11, 0);

    public static bool IsQuiet(Instant at, string zone) => IsQuiet(Local(at, zone).TimeOfDay);

    /// <summary>The first moment from then on at which people are awake.</summary>
    public static Instant Awake(Instant at, string zone)
    {
        var local = Local(at, zone);
        return !IsQuiet(local.TimeOfDay) ? at
            : NightTime.ToInstant((local.TimeOfDay >= QuietFrom ? local.Date.PlusDays(1) : local.Date).At(QuietUntil), zone);
    }

    /// <summary>The first and the second reminder; a time in the night is brought forward to the evening before.</summary>
    public static IReadOnlyList<Instant> Reminders(Instant answerBy, string zone) =>
        [.. RemindersBefore.Select(before => Brought(answerBy - before, zone))];

    /// <summary>Late in the morning after the evening.</summary>
    public static Instant Thanks(LocalDateTime serveAt, string zone)
    {
        // A night served after midnight still belongs to the evening before.
        var evening = serveAt.TimeOfDay < QuietUntil ? serveAt.Date.PlusDays(-1) : serveAt.Date;
        return NightTime.ToInstant(evening.PlusDays(1).At(ThanksTime), zone);
    }

    private static Instant Brought(Instant at, string zone)
    {
        var local = Local(at, zone);
        return !IsQuiet(local.TimeOfDay) ? at
            : NightTime.ToInstant((local.TimeOfDay >= QuietFrom ? local.Date : local.Date.PlusDays(-1)).At(LastBeforeQuiet), zone);
    }

    private static bool IsQuiet(LocalTime time) => time >= QuietFrom || time < QuietUntil;

    private static LocalDateTime Local(Instant at, string zone) => at.InZone(NightTime.Zone(zone)!).LocalDateTime;
}
