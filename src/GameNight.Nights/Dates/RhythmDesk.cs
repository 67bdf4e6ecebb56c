using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Dates;

/// <summary>What is wrong with a rhythm or a change of it.</summary>
public enum RhythmFault
{
    OutOfRange,

    /// <summary>Neither weeks nor a day of the month, or both.</summary>
    NoDistance,

    TooManyDaysOff,
    TooManyMoved,

    /// <summary>The rhythm has no night on that day.</summary>
    NotANight,

    HasPassed,
    InSkippedHour,
    TooFarMoved,
}

public sealed record RhythmProblem(string Field, RhythmFault Fault, double Low = 0, double High = 0);

/// <summary>What came of setting or changing a rhythm.</summary>
public abstract record RhythmResult
{
    private RhythmResult()
    {
    }

    public sealed record Kept : RhythmResult;

    public sealed record Refused(IReadOnlyList<RhythmProblem> Problems) : RhythmResult;

    public sealed record ChangedMeanwhile(Rhythm? Now) : RhythmResult;
}

/// <summary>How often the group meets, and changes of one night of it. Nights that are open stay as they are.</summary>
public sealed class RhythmDesk
{
    private readonly GroupSessions _sessions;
    private readonly IClock _clock;

    internal RhythmDesk(GroupSessions sessions, IClock clock)
    {
        _sessions = sessions;
        _clock = clock;
    }

    /// <returns>Null when the group has none.</returns>
    public async Task<Rhythm?> RhythmAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        return (await session.Db.Groups.AsNoTracking().SingleAsync(cancellation)).Rhythm;
    }

    /// <param name="rhythm">Null for none.</param>
    /// <param name="before">As the page showed it: somebody else's change is not overwritten unseen.</param>
    public Task<RhythmResult> SetAsync(GroupAccess access, Rhythm? rhythm, Rhythm? before, CancellationToken cancellation) =>
        ChangeAsync(
            access,
            (stands, _) => !AreSame(stands, before) ? (null, new RhythmResult.ChangedMeanwhile(stands))
                : rhythm is not null && Problems(rhythm) is { Count: > 0 } problems ? (null, new RhythmResult.Refused(problems))
                : (rhythm, null),
            cancellation);

    /// <summary>There is no night on this day of the rhythm. Twice is once.</summary>
    public Task<RhythmResult> SkipAsync(GroupAccess access, LocalDate day, CancellationToken cancellation) => ChangeAsync(
        access,
        (stands, _) => stands is null || !RhythmDays.Has(stands, day) ? (null, Refused("skip", RhythmFault.NotANight))
            : stands.DaysOff.Contains(day) ? (stands, null)
            : stands.DaysOff.Count >= Rhythm.MostDaysOff ? (null, Refused("skip", RhythmFault.TooManyDaysOff, Rhythm.MostDaysOff))
            : (stands with { DaysOff = [.. stands.DaysOff.Append(day).Order()], Moved = [.. stands.Moved.Where(moved => moved.From != day)] }, null),
        cancellation);

    /// <summary>The night of this day takes place then. The latest move counts; back to its own time it is none.</summary>
    public Task<RhythmResult> MoveAsync(GroupAccess access, LocalDate day, LocalDateTime to, CancellationToken cancellation) => ChangeAsync(
        access,
        (stands, zone) =>
        {
            if (stands is null || !RhythmDays.Has(stands, day))
            {
                return (null, Refused("move", RhythmFault.NotANight));
            }

            var (at, clock) = NightTime.Resolve(to, zone);
            var fault = clock == ClockChange.Skipped ? RhythmFault.InSkippedHour
                : at.ToInstant() <= _clock.GetCurrentInstant() ? RhythmFault.HasPassed
                : Math.Abs(Period.DaysBetween(day, to.Date)) > Rhythm.FarthestMove ? RhythmFault.TooFarMoved
                : stands.Moved.Count >= Rhythm.MostMoved ? RhythmFault.TooManyMoved
                : (RhythmFault?)null;
            if (fault is { } found)
            {
                return (null, Refused("move", found, Rhythm.FarthestMove));
            }

            var others = stands.Moved.Where(moved => moved.From != day);
            var isOwn = to == day + LocalTime.FromMinutesSinceMidnight(stands.ServeMinute);
            return (
                stands with
                {
                    DaysOff = [.. stands.DaysOff.Where(off => off != day)],
                    Moved = isOwn ? [.. others] : [.. others.Append(new MovedDay(day, to)).OrderBy(moved => moved.From)],
                },
                null);
        },
        cancellation);

    internal static IReadOnlyList<RhythmProblem> Problems(Rhythm rhythm)
    {
        var problems = new List<RhythmProblem>();
        if (rhythm.EveryWeeks is null == rhythm.OfMonth is null)
        {
            problems.Add(new("distance", RhythmFault.NoDistance));
        }

        if (rhythm.EveryWeeks is < 1 or > Rhythm.MostWeeks)
        {
            problems.Add(new("everyWeeks", RhythmFault.OutOfRange, 1, Rhythm.MostWeeks));
        }

        if (rhythm.OfMonth is { } number && number != Rhythm.LastOfMonth && number is < 1 or > Rhythm.MostOfMonth)
        {
            problems.Add(new("ofMonth", RhythmFault.OutOfRange, 1, Rhythm.MostOfMonth));
        }

        if (rhythm.ServeMinute is < 0 or >= 24 * 60)
        {
            problems.Add(new("time", RhythmFault.OutOfRange, 0, (24 * 60) - 1));
        }

        if (rhythm.Day is < IsoDayOfWeek.Monday or > IsoDayOfWeek.Sunday)
        {
            problems.Add(new("day", RhythmFault.OutOfRange, 1, 7));
        }

        if (rhythm.DaysOff.Count > Rhythm.MostDaysOff)
        {
            problems.Add(new("daysOff", RhythmFault.TooManyDaysOff, 0, Rhythm.MostDaysOff));
        }

        if (rhythm.Moved.Count > Rhythm.MostMoved)
        {
            problems.Add(new("moved", RhythmFault.TooManyMoved, 0, Rhythm.MostMoved));
        }

        return problems;
    }

    private static RhythmResult.Refused Refused(string field, RhythmFault fault, double most = 0) =>
        new([new RhythmProblem(field, fault, 0, most)]);

    private static bool AreSame(Rhythm? one, Rhythm? other) => one is null || other is null
        ? one is null && other is null
        : one with { DaysOff = other.DaysOff, Moved = other.Moved } == other
            && one.DaysOff.SequenceEqual(other.DaysOff) && one.Moved.SequenceEqual(other.Moved);

    private async Task<RhythmResult> ChangeAsync(
        GroupAccess access, Func<Rhythm?, string, (Rhythm? Rhythm, RhythmResult? Instead)> change, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);

        // Locked: changes of two hosts come one after the other.
        var group = await session.Db.Groups.FromSql($"select * from groups where id = {access.GroupId.Value} for update")
            .SingleAsync(cancellation);
        var (rhythm, instead) = change(group.Rhythm, group.Zone);
        if (instead is not null)
        {
            return instead;
        }

        group.Meet(rhythm is null ? null : Recent(rhythm));
        await session.CommitAsync(cancellation);
        return new RhythmResult.Kept();
    }

    /// <summary>What is long over need not be kept.</summary>
    private Rhythm Recent(Rhythm rhythm)
    {
        var old = _clock.GetCurrentInstant().InUtc().Date.PlusDays(-2 * Rhythm.FarthestMove);
        return rhythm with
        {
            DaysOff = [.. rhythm.DaysOff.Where(day => day > old).Distinct().Order()],
            Moved = [.. rhythm.Moved.Where(moved => moved.From > old)],
        };
    }
}
