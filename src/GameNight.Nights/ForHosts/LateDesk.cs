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

/// <summary>What came of choosing what to do about late changes, or of taking it back.</summary>
public abstract record LateResult
{
    private LateResult()
    {
    }

    /// <summary>It stands as asked for; the plan follows.</summary>
    public sealed record Done : LateResult;

    /// <summary>The plan on the screen is not the newest: wait for it and look again.</summary>
    public sealed record PlanIsBeingRedone : LateResult;

    /// <summary>Time or other answers went over it; nothing was changed.</summary>
    public sealed record NotPossibleAnyMore : LateResult;

    public sealed record Gone : LateResult;
}

/// <summary>What a host chooses to do once the dough is begun. Nothing is done by itself.</summary>
public sealed class LateDesk
{
    private readonly GroupSessions _sessions;
    private readonly NightSnapshots _snapshots;
    private readonly ReplanRequests _replans;
    private readonly ReferenceTables _tables;
    private readonly LateOptionsFinder _finder;
    private readonly IClock _clock;

    internal LateDesk(
        GroupSessions sessions, NightSnapshots snapshots, ReplanRequests replans, ReferenceTables tables, IClock clock)
    {
        _sessions = sessions;
        _snapshots = snapshots;
        _replans = replans;
        _tables = tables;
        _finder = new LateOptionsFinder(tables);
        _clock = clock;
    }

    /// <summary>
    /// Chooses one of the options, looked for again at this moment. Safe to repeat: what stands already is done.
    /// </summary>
    public async Task<LateResult> ChooseAsync(
        GroupAccess access, NightId id, LateOption option, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        if (await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } night)
        {
            return new LateResult.Gone();
        }

        var chosen = night.Overrides.Late ?? new LateChoices();
        var wanted = option.Chosen(chosen);
        var snapshot = (await _snapshots.LoadAsync(session, id, cancellation))!;
        if (snapshot.Begun is not null && wanted == chosen)
        {
            return new LateResult.Done();
        }

        var saved = await session.Db.Plans.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        if (saved is null || saved.Fingerprint != PlanJson.Fingerprint(snapshot, _tables) || PlanBook.Read(saved) is not { } plan)
        {
            return new LateResult.PlanIsBeingRedone();
        }

        if (night.CancelledAt is not null
            || !_finder.For(snapshot, plan, _clock.GetCurrentInstant()).All.Any(one => one.Chosen(chosen) == wanted))
        {
            return new LateResult.NotPossibleAnyMore();
        }

        return await KeepAsync(session, night, night.Overrides.Choosing(wanted), cancellation);
    }

    /// <summary>The plan is again what it is without it. What is mixed already is mixed: that is for the host to know.</summary>
    public async Task<LateResult> TakeBackAsync(
        GroupAccess access, NightId id, LateChoice what, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        return await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation) is { } night
            ? await KeepAsync(session, night, night.Overrides.Without(what), cancellation)
            : new LateResult.Gone();
    }

    /// <summary>A host has read what is not planned any more. Safe to repeat.</summary>
    public async Task<LateResult> SeenAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        return await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation) is { } night
            ? await KeepAsync(session, night, night.Overrides with { Gone = null }, cancellation)
            : new LateResult.Gone();
    }

    private async Task<LateResult> KeepAsync(
        GroupSession session, Night night, NightOverrides overrides, CancellationToken cancellation)
    {
        night.Overrule(overrides);
        _replans.Night(session, night.Id);
        try
        {
            await session.CommitAsync(cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new LateResult.PlanIsBeingRedone();
        }

        _replans.Wake(night.Id);
        return new LateResult.Done();
    }
}
