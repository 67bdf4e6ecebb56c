using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>What came of settling a note.</summary>
public abstract record NoteResult
{
    private NoteResult()
    {
    }

    public sealed record Settled : NoteResult;

    /// <summary>Neither a rule nor a reason was given, or both.</summary>
    public sealed record NothingSaid : NoteResult;

    /// <summary>The guest wrote something else in between: read it first.</summary>
    public sealed record NoteChanged : NoteResult;

    /// <summary>The guest took the note back, or is not invited any more.</summary>
    public sealed record Gone : NoteResult;
}

/// <summary>
/// Turns what guests wrote into rules that the planner knows, or sets it aside with a reason. Only hosts who may read notes do.
/// </summary>
public sealed class NoteDesk
{
    private readonly GroupSessions _sessions;
    private readonly ReplanRequests _replans;
    private readonly IClock _clock;

    internal NoteDesk(GroupSessions sessions, ReplanRequests replans, IClock clock)
    {
        _sessions = sessions;
        _replans = replans;
        _clock = clock;
    }

    /// <summary>Safe to repeat; settled again, the newer ruling holds.</summary>
    /// <param name="shownAt">When the note that the host has read was written.</param>
    /// <param name="rules">For the guest and their companions in their order; empty to set it aside.</param>
    /// <exception cref="RightMissingException">The host may not read notes.</exception>
    public async Task<NoteResult> SettleAsync(
        GroupAccess access, NightId id, GuestId guest, Instant shownAt, IReadOnlyList<DietaryNeeds> rules, SetAside? because,
        CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        if (!access.SeesNotes)
        {
            throw new RightMissingException(HostRole.Cook);
        }

        if (rules.Any(one => !one.IsNone) == because is not null)
        {
            return new NoteResult.NothingSaid();
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        var note = await session.Db.DietaryNotes.SingleOrDefaultAsync(row => row.NightId == id && row.GuestId == guest, cancellation);
        if (note?.ProtectedNote is null)
        {
            return new NoteResult.Gone();
        }

        if (note.ConsentedAt != shownAt)
        {
            return new NoteResult.NoteChanged();
        }

        note.Settle(new NoteRuling(
            because is null ? [.. rules.Take(SnapshotCheck.MostEatersPerGuest)] : [], because, _clock.GetCurrentInstant()));
        _replans.Night(session, id);
        await session.CommitAsync(cancellation);
        _replans.Wake(id);
        return new NoteResult.Settled();
    }
}
