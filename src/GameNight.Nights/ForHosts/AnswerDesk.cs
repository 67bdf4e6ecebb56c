using GameNight.Nights.ForGuests;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.ForHosts;

/// <summary>What a host was told by a guest, on the phone or at the door. Wishes and must-nots are for the guest to say.</summary>
/// <param name="Companions">Places for companions in the order of the answer there was; null for one that nobody takes.</param>
public sealed record ToldAnswer(
    Presence Presence,
    bool Remotely,
    Hunger Hunger,
    IReadOnlyList<PortionClass?> Companions,
    int? ComesAtMinute = null,
    int? LeavesAtMinute = null,
    bool AloneIfNeeded = false);

/// <summary>Writes down answers that guests gave elsewhere, marked as such.</summary>
public sealed class AnswerDesk
{
    private readonly GroupSessions _sessions;
    private readonly ReplanRequests _replans;
    private readonly AnswerKeeping _answers;
    private readonly Outbox _outbox;

    internal AnswerDesk(GroupSessions sessions, ReplanRequests replans, AnswerKeeping answers, Outbox outbox)
    {
        _sessions = sessions;
        _replans = replans;
        _answers = answers;
        _outbox = outbox;
    }

    /// <summary>Safe to repeat: the same key counts once.</summary>
    /// <param name="revision">The answer that the page showed, 0 for none: a newer one is not overwritten unseen.</param>
    /// <returns><see cref="SaveResult.ChangedMeanwhile"/> when the guest has answered since.</returns>
    public async Task<ToldResult> SetAsync(
        GroupAccess access, NightId id, GuestId guest, ToldAnswer told, int revision, Guid key, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        try
        {
            return await KeepAsync(access, id, guest, told, revision, key, cancellation);
        }
        catch (DbUpdateException fault) when (!NightsUnavailableException.IsMeantBy(fault))
        {
            // The guest answered in the same moment: looked at again, it is told.
            return await KeepAsync(access, id, guest, told, revision, key, cancellation);
        }
    }

    private async Task<ToldResult> KeepAsync(
        GroupAccess access, NightId id, GuestId guest, ToldAnswer told, int revision, Guid key, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        var night = await db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is not { CancelledAt: null }
            || !await db.Invitations.AnyAsync(row => row.NightId == id && row.GuestId == guest, cancellation)
            || !await db.Guests.AnyAsync(row => row.Id == guest && row.FormerSince == null, cancellation))
        {
            return new ToldResult.Gone();
        }

        var before = await db.Answers.AsNoTracking().SingleOrDefaultAsync(
            row => row.NightId == id && row.GuestId == guest, cancellation);
        if (before?.LastKey == key)
        {
            return new ToldResult.Noted(before.IsLate, before.IsWaiting);
        }

        if ((before?.Revision ?? 0) != revision)
        {
            return new ToldResult.AnsweredMeanwhile();
        }

        var remembered = await db.RememberedWishes.AsNoTracking().SingleOrDefaultAsync(row => row.GuestId == guest, cancellation);
        var places = told.Companions.Select((portion, index) => (Portion: portion, Index: index)).Where(row => row.Portion is not null).ToList();
        var facts = new AnswerFacts(
            told.Presence,
            told.Remotely,
            told.Hunger,
            [.. places.Select(row => new Companion(row.Portion!.Value))],
            before?.Facts.Likes ?? remembered?.Facts.Likes ?? new Dictionary<string, Liking>(),
            told.ComesAtMinute,
            told.LeavesAtMinute,
            told.AloneIfNeeded ? true : null);
        if (AnswerKeeping.Problem(night.Facts, facts) is { } problem)
        {
            return new ToldResult.Refused(problem.Fault, problem.Most);
        }

        var (kept, refused) = await _answers.KeepAsync(session, night, guest, facts, key, SaidBy.Host, cancellation);
        if (kept is null)
        {
            return new ToldResult.Refused(refused!.Fault, refused.Most);
        }

        // Must-nots stay with the companions who still come.
        var note = await db.DietaryNotes.SingleOrDefaultAsync(row => row.NightId == id && row.GuestId == guest, cancellation);
        note?.KeepOnly([0, .. places.Take(kept.Facts.Companions.Count).Select(row => row.Index + 1)]);
        _replans.Night(session, id);
        await session.CommitAsync(cancellation);
        _outbox.Wake();
        _replans.Wake(id);
        return new ToldResult.Noted(kept.IsLate, kept.IsWaiting);
    }
}

/// <summary>What came of writing an answer down.</summary>
public abstract record ToldResult
{
    private ToldResult()
    {
    }

    /// <param name="IsLate">The dough was begun: a late change.</param>
    /// <param name="IsWaiting">The table is full; the guest is in line.</param>
    public sealed record Noted(bool IsLate, bool IsWaiting) : ToldResult;

    public sealed record Refused(AnswerFault Fault, int Most) : ToldResult;

    /// <summary>The guest answered since the page was read: look again.</summary>
    public sealed record AnsweredMeanwhile : ToldResult;

    /// <summary>Guest or night are not there, or the night is called off.</summary>
    public sealed record Gone : ToldResult;
}
