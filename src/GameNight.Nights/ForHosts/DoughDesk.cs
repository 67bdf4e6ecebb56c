using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>What came of committing the dough or taking the commitment back.</summary>
public abstract record CommitResult
{
    private CommitResult()
    {
    }

    /// <summary>It stands as asked for, by this host or by another one before.</summary>
    public sealed record Done : CommitResult;

    /// <summary>The plan on the screen is not the newest: wait for it and look again.</summary>
    public sealed record PlanIsBeingRedone : CommitResult;

    /// <summary>There is no pie to make dough for, or no time at which mixing could begin.</summary>
    public sealed record NothingToCommit : CommitResult;

    /// <summary>Guests left notes that nobody has settled.</summary>
    public sealed record NotesAreOpen : CommitResult;

    /// <summary>The time of mixing has come: what is weighed cannot be taken back.</summary>
    public sealed record MixingIsDue(Instant MixAt) : CommitResult;

    public sealed record Cancelled : CommitResult;

    public sealed record Gone : CommitResult;
}

/// <summary>The dough commitment: fixes the dough of a night, with a record of what was known.</summary>
public sealed class DoughDesk
{
    private readonly GroupSessions _sessions;
    private readonly NightSnapshots _snapshots;
    private readonly ReplanRequests _replans;
    private readonly ReferenceTables _tables;
    private readonly IClock _clock;

    internal DoughDesk(
        GroupSessions sessions, NightSnapshots snapshots, ReplanRequests replans, ReferenceTables tables, IClock clock)
    {
        _sessions = sessions;
        _snapshots = snapshots;
        _replans = replans;
        _tables = tables;
        _clock = clock;
    }

    /// <summary>Safe to repeat: two hosts at the same moment make one record.</summary>
    public async Task<CommitResult> CommitAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        var db = session.Db;
        if (await db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } night)
        {
            return new CommitResult.Gone();
        }

        if (night.CancelledAt is not null)
        {
            return new CommitResult.Cancelled();
        }

        if (await db.CommittedDoughs.AnyAsync(row => row.NightId == id, cancellation))
        {
            return new CommitResult.Done();
        }

        var snapshot = (await _snapshots.LoadAsync(session, id, cancellation))!;
        var saved = await db.Plans.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        if (saved is null || saved.Fingerprint != PlanJson.Fingerprint(snapshot, _tables) || PlanBook.Read(saved) is not { } plan)
        {
            return new CommitResult.PlanIsBeingRedone();
        }

        if (BegunDough.Of(snapshot, plan) is null)
        {
            return new CommitResult.NothingToCommit();
        }

        if (NotesToSettle.Of(snapshot) is not null)
        {
            return new CommitResult.NotesAreOpen();
        }

        db.CommittedDoughs.Add(DoughCommitments.Write(
            access.GroupId, id, _clock.GetCurrentInstant(), access.HostId, snapshot, plan));
        return await KeepAsync(session, id, cancellation);
    }

    /// <summary>Until mixing is due the dough can follow the answers again.</summary>
    public async Task<CommitResult> TakeBackAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        if (!await session.Db.Nights.AnyAsync(row => row.Id == id, cancellation))
        {
            return new CommitResult.Gone();
        }

        var dough = await session.Db.CommittedDoughs.SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        if (dough is null)
        {
            return new CommitResult.Done();
        }

        if (DoughCommitments.Read(dough).Plan.Timeline.DoughCommitment is { } mixing && mixing <= _clock.GetCurrentInstant())
        {
            return new CommitResult.MixingIsDue(mixing);
        }

        session.Db.CommittedDoughs.Remove(dough);
        var night = await session.Db.Nights.SingleAsync(row => row.Id == id, cancellation);
        night.Overrule(night.Overrides.WithoutDough(LetGoCause.CommitmentTakenBack, _clock.GetCurrentInstant()));
        return await KeepAsync(session, id, cancellation);
    }

    private async Task<CommitResult> KeepAsync(GroupSession session, NightId id, CancellationToken cancellation)
    {
        _replans.Night(session, id);
        await session.CommitAsync(cancellation);
        _replans.Wake(id);
        return new CommitResult.Done();
    }
}
