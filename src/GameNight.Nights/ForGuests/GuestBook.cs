using GameNight.Nights.Links;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>What a guest can do through the link they were sent. The link is the authority; reading changes nothing.</summary>
public sealed class GuestBook
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly AnswerKeeping _answers;
    private readonly InvitationReading _reading;
    private readonly Outbox _outbox;
    private readonly IClock _clock;

    internal GuestBook(
        GroupSessions sessions, LinkDirectory links, ReplanRequests replans, AnswerKeeping answers, InvitationReading reading,
        Outbox outbox, IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _answers = answers;
        _reading = reading;
        _outbox = outbox;
        _clock = clock;
    }

    public async Task<InvitationLookup> LookAsync(LinkToken? link, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.Answer, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return new InvitationLookup.LinkNotValid(lookup is LinkLookup<LinkHolder>.Expired);
        }

        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        return await _reading.ViewAsync(session, holder, cancellation) is { } view
            ? new InvitationLookup.Found(view)
            : new InvitationLookup.LinkNotValid(IsExpired: false);
    }

    /// <summary>
    /// Keeps an answer. Safe to send again: the same key counts once. The last one sent counts, also one from a page that did
    /// not know of the one before; then what gave way is told wherever the link is opened.
    /// </summary>
    public async Task<AnswerResult> AnswerAsync(LinkToken? link, GuestAnswer answer, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.Answer, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return new AnswerResult.LinkNotValid(lookup is LinkLookup<LinkHolder>.Expired);
        }

        try
        {
            return await KeepAsync(holder, answer, cancellation);
        }
        catch (DbUpdateException fault) when (!NightsUnavailableException.IsMeantBy(fault))
        {
            // Two answers at the same moment: the other one is there now. Look again, then it is a repeat or a newer one.
            return await KeepAsync(holder, answer, cancellation);
        }
    }

    /// <summary>Whoever opened the link says that it is somebody else's; the host is shown so.</summary>
    /// <returns>False when the link is not valid.</returns>
    public async Task<bool> DisownAsync(LinkToken? link, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.Answer, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return false;
        }

        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        var invitation = await InvitationReading.InvitationAsync(session, holder, cancellation);
        invitation?.Disown(_clock.GetCurrentInstant());
        await session.CommitAsync(cancellation);
        _replans.Wake(holder.Night);
        return invitation is not null;
    }

    /// <summary>
    /// The answer holds for the night as it is now, after a move. Safe to repeat; without an answer there is nothing to confirm.
    /// </summary>
    public async Task<AnswerResult> ConfirmAsync(LinkToken? link, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.Answer, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return new AnswerResult.LinkNotValid(lookup is LinkLookup<LinkHolder>.Expired);
        }

        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, holder.Night, cancellation);
        var night = await session.Db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == holder.Night, cancellation);
        var answer = await session.Db.Answers.SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
        if (night is null || answer is null)
        {
            return new AnswerResult.LinkNotValid(IsExpired: false);
        }

        if (night.CancelledAt is not null)
        {
            return new AnswerResult.NightIsCancelled();
        }

        if (NightMoves.Since(night, answer.AnsweredAt) is not null)
        {
            // Nothing of the answer changes, so a begun dough has nothing to be late for.
            answer.Replace(answer.Facts, Guid.CreateVersion7(), _clock.GetCurrentInstant(), answer.IsLate);
            await session.CommitAsync(cancellation);
            _replans.Wake(holder.Night);
        }

        return new AnswerResult.Recorded();
    }

    /// <summary>Takes back what the guest asked to be remembered; what was said for this night stays.</summary>
    /// <returns>False when the link is not valid.</returns>
    public async Task<bool> ForgetAsync(LinkToken? link, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.Answer, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return false;
        }

        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        await session.Db.RememberedWishes.Where(row => row.GuestId == holder.Guest).ExecuteDeleteAsync(cancellation);
        await session.CommitAsync(cancellation);
        return true;
    }

    private async Task<AnswerResult> KeepAsync(LinkHolder holder, GuestAnswer sent, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        var db = session.Db;
        await DoughCommitments.TakeTurnAsync(session, holder.Night, cancellation);
        var night = await db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == holder.Night, cancellation);
        if (night is null || await InvitationReading.InvitationAsync(session, holder, cancellation) is null)
        {
            return new AnswerResult.LinkNotValid(IsExpired: false);
        }

        var answer = await db.Answers.SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
        if (answer is not null && answer.HasCounted(sent.Key))
        {
            return Result(answer.IsLate);
        }

        if (night.CancelledAt is not null)
        {
            return new AnswerResult.NightIsCancelled();
        }

        if (AnswerKeeping.Problem(night.Facts, sent.Facts) is { } problem)
        {
            return problem;
        }

        if (sent.Consents && sent.Note.Length > DietaryNote.LongestNote)
        {
            return new AnswerResult.Refused(AnswerFault.NoteTooLong, DietaryNote.LongestNote);
        }

        var isUnseen = answer is not null && answer.Revision != sent.Revision;
        var (kept, refused) = await _answers.KeepAsync(
            session, night, holder.Guest, sent.Facts, sent.Key, saidBy: null, cancellation,
            isUnseen ? new ReplacedAnswer(answer!.Facts, answer.AnsweredAt) : null);
        if (kept is null)
        {
            return refused!;
        }

        await _answers.KeepNoteAsync(session, night.Id, holder.Guest, sent, 1 + kept.Facts.Companions.Count, isUnseen, cancellation);
        await _answers.KeepWishesAsync(session, holder.Guest, sent, isUnseen, cancellation);
        await _answers.KeepForHouseholdAsync(session, night, holder.Guest, sent, cancellation);
        _replans.Night(session, holder.Night);
        await session.CommitAsync(cancellation);
        NightsTelemetry.Answered(sent.Facts.Presence, kept.IsLate);
        _outbox.Wake();
        _replans.Wake(holder.Night);
        return Result(kept.IsLate);
    }

    private static AnswerResult Result(bool isLate) =>
        isLate ? new AnswerResult.RecordedAsLateChange() : new AnswerResult.Recorded();
}
