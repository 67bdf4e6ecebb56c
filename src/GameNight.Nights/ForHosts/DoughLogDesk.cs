using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Fermentation;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>What came of writing a reading of the dough down.</summary>
public abstract record ReadingResult
{
    private ReadingResult()
    {
    }

    /// <summary>It is kept, by this click or by an earlier one.</summary>
    public sealed record Kept : ReadingResult;

    /// <summary>Values are outside their ranges; nothing was kept.</summary>
    public sealed record Refused(IReadOnlyList<SnapshotProblem> Problems) : ReadingResult;

    /// <summary>No dough is begun yet: there is nothing to read.</summary>
    public sealed record NotBegun : ReadingResult;

    /// <summary>It was taken before mixing began, or lies in the future.</summary>
    public sealed record OutOfTime(Instant Earliest, Instant Latest) : ReadingResult;

    /// <summary>The log is full.</summary>
    public sealed record Full(int Most) : ReadingResult;

    public sealed record Gone : ReadingResult;
}

/// <summary>What hosts measure and see of the dough that is under way. Each reading makes the plan anew.</summary>
public sealed class DoughLogDesk
{
    /// <summary>Clocks of phones differ from ours by less.</summary>
    private static readonly Duration ClockError = Duration.FromMinutes(10);

    private readonly GroupSessions _sessions;
    private readonly DoughCommitments _doughs;
    private readonly ReplanRequests _replans;
    private readonly IClock _clock;

    internal DoughLogDesk(
        GroupSessions sessions, DoughCommitments doughs, ReplanRequests replans, IClock clock)
    {
        _sessions = sessions;
        _doughs = doughs;
        _replans = replans;
        _clock = clock;
    }

    /// <summary>Safe to repeat: the same reading is kept once.</summary>
    public async Task<ReadingResult> AddAsync(
        GroupAccess access, NightId id, DoughReading reading, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        if (SnapshotCheck.Problems(reading) is { Count: > 0 } problems)
        {
            return new ReadingResult.Refused(problems);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var now = _clock.GetCurrentInstant();
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        if (await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } night)
        {
            return new ReadingResult.Gone();
        }

        await _doughs.IsBegunAsync(session, id, now, cancellation);
        var begun = session.Db.CommittedDoughs.Local.SingleOrDefault(row => row.NightId == id)
            ?? await session.Db.CommittedDoughs.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        if (begun is null || DoughCommitments.Read(begun).Plan.Timeline.DoughCommitment is not { } mixing || mixing > now)
        {
            return new ReadingResult.NotBegun();
        }

        if (reading.At < mixing || reading.At > now + ClockError)
        {
            return new ReadingResult.OutOfTime(mixing, now);
        }

        if (night.Readings.Contains(reading))
        {
            return new ReadingResult.Kept();
        }

        if (night.Readings.Count >= SnapshotCheck.MostReadings)
        {
            return new ReadingResult.Full(SnapshotCheck.MostReadings);
        }

        night.Read(reading);
        return await KeepAsync(session, id, cancellation);
    }

    /// <summary>Takes back what was written by mistake.</summary>
    public async Task<ReadingResult> RemoveAsync(
        GroupAccess access, NightId id, DoughReading reading, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        if (await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } night)
        {
            return new ReadingResult.Gone();
        }

        night.Unread(reading);
        return await KeepAsync(session, id, cancellation);
    }

    private async Task<ReadingResult> KeepAsync(GroupSession session, NightId id, CancellationToken cancellation)
    {
        _replans.Night(session, id);
        await session.CommitAsync(cancellation);
        _replans.Wake(id);
        return new ReadingResult.Kept();
    }
}
