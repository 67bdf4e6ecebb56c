using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>
/// From "about nine" to a part of the evening. Times of day are kept, not moments: a night that moves to another day keeps
/// them.
/// </summary>
public static class StayTimes
{
    private const int Day = 24 * 60;

    /// <summary>A time up to so many minutes before the first pie is before it; any other is after it.</summary>
    private const int BeforeTheFirstPie = 6 * 60;

    /// <summary>Of a night of which nobody said when it ends.</summary>
    private const int UsualLength = 5 * 60;

    /// <summary>Above this, whole hours are exact enough for "about".</summary>
    private const int LongEvening = 3 * 60;

    /// <summary>What a guest can tap: full or half hours by the clock, strictly between the first pie and the end.</summary>
    /// <returns>Minutes of the local day in the order of the evening.</returns>
    public static IReadOnlyList<int> Offered(LocalDateTime serveAt, LocalDateTime? endsAt)
    {
        var length = Length(serveAt, endsAt);
        var step = length > LongEvening ? 60 : 30;
        var start = MinuteOf(serveAt);
        return [.. Enumerable.Range(1, length - 1)
            .Where(after => (start + after) % step == 0)
            .Select(after => (start + after) % Day)];
    }

    /// <summary>As the host said, or after the length of a usual evening.</summary>
    public static LocalDateTime End(LocalDateTime serveAt, LocalDateTime? endsAt) => serveAt.PlusMinutes(Length(serveAt, endsAt));

    /// <summary>What is wrong with the times of an answer, or null.</summary>
    public static AnswerFault? Fault(NightFacts night, AnswerFacts answer)
    {
        var length = Length(night.ServeAt, night.EndsAt);
        var (comes, leaves) = (After(night, answer.ComesAtMinute), After(night, answer.LeavesAtMinute));
        return comes >= length ? AnswerFault.ComesAfterTheEnd
            : leaves <= 0 ? AnswerFault.LeavesBeforeTheFirstPie
            : leaves <= comes ? AnswerFault.LeavesBeforeComing
            : null;
    }

    /// <summary>Times that say nothing are not kept: before the first pie is from the beginning, after the end is to the end.</summary>
    public static AnswerFacts Plain(NightFacts night, AnswerFacts answer) => answer with
    {
        ComesAtMinute = After(night, answer.ComesAtMinute) > 0 ? answer.ComesAtMinute : null,
        LeavesAtMinute = After(night, answer.LeavesAtMinute) < Length(night.ServeAt, night.EndsAt) ? answer.LeavesAtMinute : null,
    };

    /// <returns>Null for the whole evening, and for times that a move of the night has made meaningless.</returns>
    public static Stay? Of(NightFacts night, AnswerFacts? answer)
    {
        var (comes, leaves) = (After(night, answer?.ComesAtMinute), After(night, answer?.LeavesAtMinute));
        comes = comes > 0 ? comes : null;
        leaves = leaves < 0 ? 0 : leaves;
        return (comes, leaves) is (null, null) || leaves <= comes ? null : new Stay(Lasting(comes), Lasting(leaves));

        // By the clock of the world: it may be put forward or back during the night.
        Duration? Lasting(int? minutes) => minutes is { } after
            ? NightTime.ToInstant(night.ServeAt.PlusMinutes(after), night.Zone) - NightTime.ToInstant(night.ServeAt, night.Zone)
            : null;
    }

    private static int Length(LocalDateTime serveAt, LocalDateTime? endsAt) => endsAt is { } end && end > serveAt
        ? (int)Math.Min(Period.Between(serveAt, end, PeriodUnits.Minutes).Minutes, Day)
        : UsualLength;

    /// <summary>Minutes after the first pie, negative before it.</summary>
    private static int? After(NightFacts night, int? minuteOfDay)
    {
        if (minuteOfDay is not { } minute)
        {
            return null;
        }

        var after = (minute - MinuteOf(night.ServeAt) + Day) % Day;
        return after >= Day - BeforeTheFirstPie ? after - Day : after;
    }

    private static int MinuteOf(LocalDateTime time) => (time.Hour * 60) + time.Minute;
}
