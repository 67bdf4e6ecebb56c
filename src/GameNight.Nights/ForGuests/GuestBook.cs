using GameNight.Nights.Links;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning.Dates;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>What a guest can do through the link they were sent. The link is the authority; reading changes nothing.</summary>
public sealed class GuestBook
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly GuestNotes _notes;
    private readonly DoughCommitments _doughs;
    private readonly IClock _clock;

    internal GuestBook(
        GroupSessions sessions, LinkDirectory links, ReplanRequests replans, GuestNotes notes, DoughCommitments doughs,
        IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _notes = notes;
        _doughs = doughs;
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
        return await ViewAsync(session, holder, cancellation) is { } view
            ? new InvitationLookup.Found(view)
            : new InvitationLookup.LinkNotValid(IsExpired: false);
    }

    /// <summary>
    /// Keeps an answer. Safe to send again: the same key counts once. An answer made from an older state is not kept
    /// before the guest has seen the newer one.
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
        var invitation = await InvitationAsync(session, holder, cancellation);
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
        if (night is null || await InvitationAsync(session, holder, cancellation) is null)
        {
            return new AnswerResult.LinkNotValid(IsExpired: false);
        }

        var answer = await db.Answers.SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
        if (answer is not null && answer.LastKey == sent.Key)
        {
            return Result(answer.IsLate);
        }

        if (night.CancelledAt is not null)
        {
            return new AnswerResult.NightIsCancelled();
        }

        if (sent.Facts.Companions.Count > night.Facts.MostCompanions)
        {
            return new AnswerResult.Refused(AnswerFault.TooManyCompanions, night.Facts.MostCompanions);
        }

        if (sent.Consents && sent.Note.Length > DietaryNote.LongestNote)
        {
            return new AnswerResult.Refused(AnswerFault.NoteTooLong, DietaryNote.LongestNote);
        }

        if ((answer?.Revision ?? 0) != sent.Revision)
        {
            return new AnswerResult.AnsweredElsewhere((await ViewAsync(session, holder, cancellation))!);
        }

        var now = _clock.GetCurrentInstant();
        var isLate = await _doughs.IsBegunAsync(session, holder.Night, now, cancellation);
        if (answer is null)
        {
            db.Answers.Add(Answer.First(
                session.GroupId, holder.Night, holder.Guest, sent.Facts, sent.Key, now, isLate));
        }
        else
        {
            answer.Replace(sent.Facts, sent.Key, now, isLate);
        }

        await KeepNoteAsync(session, holder, sent, now, cancellation);
        await KeepWishesAsync(session, holder, sent, now, cancellation);
        _replans.Night(session, holder.Night);
        await session.CommitAsync(cancellation);
        NightsTelemetry.Answered(sent.Facts.Presence, isLate);
        _replans.Wake(holder.Night);
        return Result(isLate);
    }

    private async Task KeepNoteAsync(
        GroupSession session, LinkHolder holder, GuestAnswer sent, Instant now, CancellationToken cancellation)
    {
        var kept = await session.Db.DietaryNotes.SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
        var note = sent.Note.Trim();
        var saysSomething = note.Length > 0 || sent.Needs.Any(needs => !needs.IsNone);
        if (!sent.Consents || !saysSomething)
        {
            // Without consent nothing is kept, and what was kept before goes.
            if (kept is not null)
            {
                session.Db.DietaryNotes.Remove(kept);
            }

            return;
        }

        if (kept is null)
        {
            kept = new DietaryNote(session.GroupId, holder.Night, holder.Guest);
            session.Db.DietaryNotes.Add(kept);
        }

        kept.Set(sent.Needs, note.Length > 0 ? _notes.Protect(note) : null, now);
    }

    private static async Task KeepWishesAsync(
        GroupSession session, LinkHolder holder, GuestAnswer sent, Instant now, CancellationToken cancellation)
    {
        var db = session.Db;
        var guest = await db.Guests.SingleAsync(row => row.Id == holder.Guest, cancellation);
        guest.ShowName(sent.ShowsName);
        var kept = await db.RememberedWishes.SingleOrDefaultAsync(row => row.GuestId == holder.Guest, cancellation);
        if (!sent.Remembers)
        {
            if (kept is not null)
            {
                db.RememberedWishes.Remove(kept);
            }

            return;
        }

        var needs = sent.Consents && sent.Needs.Count > 0 ? sent.Needs[0] : DietaryNeeds.None;
        var wishes = new WishFacts(sent.Facts.Hunger, sent.Facts.Likes, needs);
        if (kept is null)
        {
            db.RememberedWishes.Add(new RememberedWishes(session.GroupId, holder.Guest, wishes, now));
        }
        else
        {
            kept.Set(wishes, now);
        }
    }

    private static async Task<WhoComes> WhoComesAsync(GameNightDb db, LinkHolder holder, CancellationToken cancellation)
    {
        var coming = (await db.InvitedTo(holder.Night).ToListAsync(cancellation))
            .Where(row => row.Guest.FormerSince is null
                && (row.Answer?.Facts.Presence == Presence.Coming || (row.Answer is null && row.Guest.HostId is not null)))
            .ToList();
        return new WhoComes(
            coming.Sum(row => 1 + (row.Answer?.Facts.Companions.Count ?? 0)),
            [.. coming.Where(row => row.Guest.ShowsName && row.Guest.Id != holder.Guest)
                .Select(row => row.Guest.Name).Order(StringComparer.OrdinalIgnoreCase)]);
    }

    /// <summary>Must-nots are used again only under the consent of today.</summary>
    private static async Task<WishFacts?> RememberedAsync(GameNightDb db, GuestId guest, CancellationToken cancellation) =>
        await db.RememberedWishes.AsNoTracking().SingleOrDefaultAsync(row => row.GuestId == guest, cancellation) switch
        {
            null => null,
            { ConsentedVersion: DietaryNote.ConsentVersion } wishes => wishes.Facts,
            var wishes => wishes.Facts with { Needs = DietaryNeeds.None },
        };

    private async Task<InvitationView?> ViewAsync(GroupSession session, LinkHolder holder, CancellationToken cancellation)
    {
        var db = session.Db;
        var night = await db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == holder.Night, cancellation);
        var invitation = await InvitationAsync(session, holder, cancellation);
        var guest = await db.Guests.AsNoTracking().SingleOrDefaultAsync(row => row.Id == holder.Guest, cancellation);
        if (night is null || invitation is null || guest is null)
        {
            return null;
        }

        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var hosts = await db.Guests.AsNoTracking().Where(row => row.HostId != null).Select(row => row.Name)
            .ToListAsync(cancellation);
        var answer = await db.Answers.AsNoTracking().SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
        var dietary = await db.DietaryNotes.AsNoTracking().SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
        var toppings = await db.MenuItems.AsNoTracking()
            .Where(item => item.IsOffered && item.Role == MenuRole.Topping)
            .OrderBy(item => item.Order).Select(item => new { item.Id, item.Name }).ToListAsync(cancellation);
        var plan = await db.Plans.AsNoTracking().Where(row => row.NightId == holder.Night)
            .Select(row => new { row.AnswerBy, row.DoughCommitment }).SingleOrDefaultAsync(cancellation);
        var isBegun = await db.CommittedDoughs.AnyAsync(row => row.NightId == holder.Night, cancellation)
            || (plan?.DoughCommitment is { } mixing && mixing <= _clock.GetCurrentInstant());

        return new InvitationView(
            night.Id,
            guest.Id,
            group.Name,
            string.Join(", ", hosts),
            guest.Name,
            night.Facts.Title,
            night.Facts.ServeAt,
            night.Facts.EndsAt,
            night.Facts.Zone,
            NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone),
            answer?.Facts.Presence == Presence.Coming ? night.Facts.Address : null,
            night.Facts.Bring,
            night.Facts.MostCompanions,
            plan?.AnswerBy,
            isBegun,
            [.. toppings.Select(item => new LikeableTopping(item.Id.ToString(), item.Name))],
            answer?.Facts,
            answer?.Revision ?? 0,
            answer?.AnsweredAt,
            dietary?.Needs ?? [],
            _notes.Read(dietary?.ProtectedNote).Note,
            dietary is not null,
            invitation.DisownedAt is not null,
            night.CancelledAt is not null,
            answer is null ? null : NightMoves.Since(night, answer.AnsweredAt),
            CalendarNight.Of(group, night, guest.Id, answer),
            await WhoComesAsync(db, holder, cancellation),
            guest.ShowsName,
            await RememberedAsync(db, holder.Guest, cancellation),
            answer is null ? await SaidOfDateAsync(db, holder, cancellation) : null);
    }

    private static async Task<DateAnswer?> SaidOfDateAsync(GameNightDb db, LinkHolder holder, CancellationToken cancellation)
    {
        var row = await (
            from choice in db.DateChoices.AsNoTracking()
            where choice.NightId == holder.Night
            join asked in db.AskedGuests.AsNoTracking() on choice.Id equals asked.ChoiceId
            where asked.GuestId == holder.Guest
            select new { choice.Chosen, asked.Answers }).FirstOrDefaultAsync(cancellation);
        return row?.Chosen is { } evening && row.Answers.TryGetValue(DateChoiceFacts.IdOf(evening), out var said) ? said : null;
    }

    private static Task<Invitation?> InvitationAsync(GroupSession session, LinkHolder holder, CancellationToken cancellation) =>
        session.Db.Invitations.SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);

    private static AnswerResult Result(bool isLate) =>
        isLate ? new AnswerResult.RecordedAsLateChange() : new AnswerResult.Recorded();
}
