using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Seats;
using GameNight.Nights.Storage;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>
/// Keeps answers within a session that holds the night's turn: the guest's own, one for somebody of the same household, one
/// that a host was told. The rules of seats and times are the same for all of them.
/// </summary>
internal sealed class AnswerKeeping(GuestNotes notes, DoughCommitments doughs, TableSeats seats, IClock clock)
{
    /// <summary>What is wrong with it whoever says it; null when nothing is.</summary>
    public static AnswerResult.Refused? Problem(NightFacts night, AnswerFacts said) =>
        said.Companions.Count > night.MostCompanions
            ? new AnswerResult.Refused(AnswerFault.TooManyCompanions, night.MostCompanions)
            : said.Presence != Presence.NotComing && StayTimes.Fault(night, said) is { } fault
                ? new AnswerResult.Refused(fault, 0)
                : null;

    /// <summary>Keeps what was said and moves up who fits now. Nothing is kept when it is refused.</summary>
    /// <param name="replaced">An answer that the page it comes from did not know of.</param>
    /// <returns>The answer as kept, or why not.</returns>
    public async Task<(Answer? Kept, AnswerResult.Refused? Refused)> KeepAsync(
        GroupSession session, Night night, GuestId guest, AnswerFacts said, Guid key, SaidBy? saidBy, CancellationToken cancellation,
        ReplacedAnswer? replaced = null)
    {
        var facts = said.Presence == Presence.NotComing
            ? said with { ComesAtMinute = null, LeavesAtMinute = null, AloneIfNeeded = null }
            : StayTimes.Plain(night.Facts, said) with { AloneIfNeeded = said is { AloneIfNeeded: true, Companions.Count: > 0 } ? true : null };
        var room = await TableSeats.AskAsync(session, night, guest, facts, cancellation);
        if (room is SeatResult.NoRoomForMore full)
        {
            return (null, new AnswerResult.Refused(AnswerFault.NoSeatForCompanions, full.MostCompanions));
        }

        var now = clock.GetCurrentInstant();
        var isLate = await doughs.IsBegunAsync(session, night.Id, now, cancellation);
        var answer = await session.Db.Answers.SingleOrDefaultAsync(
            row => row.NightId == night.Id && row.GuestId == guest, cancellation);
        facts = room is SeatResult.Seated { Alone: true } ? facts with { Companions = [] } : facts;
        if (answer is null)
        {
            answer = Answer.First(session.GroupId, night.Id, guest, facts, key, now, isLate, saidBy);
            session.Db.Answers.Add(answer);
        }
        else
        {
            answer.Replace(facts, key, now, isLate, saidBy, replaced);
        }

        if (room is SeatResult.Waits line)
        {
            answer.Wait(line.Number);
        }
        else
        {
            answer.NeedNotWait();
        }

        await seats.FillAsync(session, night, cancellation);
        return (answer, null);
    }

    /// <summary>The same for members of the household who have not answered themselves: whether they come, and when.</summary>
    public async Task KeepForHouseholdAsync(
        GroupSession session, Night night, GuestId by, GuestAnswer sent, CancellationToken cancellation)
    {
        if (sent.SameFor is not { Count: > 0 } chosen)
        {
            return;
        }

        var fellows = await FellowsAsync(session.Db, night.Id, by, cancellation);
        foreach (var fellow in fellows.Where(row => chosen.Contains(row.Id)))
        {
            var answer = await session.Db.Answers.SingleOrDefaultAsync(
                row => row.NightId == night.Id && row.GuestId == fellow.Id, cancellation);
            if (answer is { SaidBy: null })
            {
                continue;
            }

            var remembered = await session.Db.RememberedWishes.AsNoTracking()
                .SingleOrDefaultAsync(row => row.GuestId == fellow.Id, cancellation);
            var said = new AnswerFacts(
                sent.Facts.Presence,
                sent.Facts.Remotely,
                answer?.Facts.Hunger ?? remembered?.Facts.Hunger ?? Hunger.AsUsual,
                answer?.Facts.Companions ?? [],
                answer?.Facts.Likes ?? remembered?.Facts.Likes ?? new Dictionary<string, Liking>(),
                sent.Facts.ComesAtMinute,
                sent.Facts.LeavesAtMinute);
            await KeepAsync(session, night, fellow.Id, said, Guid.CreateVersion7(), SaidBy.Household, cancellation);
        }
    }

    /// <summary>Who else of the guest's household is invited to the night, by name.</summary>
    public static async Task<IReadOnlyList<HouseholdFellow>> FellowsAsync(
        GameNightDb db, NightId night, GuestId guest, CancellationToken cancellation)
    {
        var home = await db.Guests.AsNoTracking().Where(row => row.Id == guest).Select(row => row.Household).SingleOrDefaultAsync(cancellation);
        return home is null
            ? []
            : await (
                from invitation in db.Invitations.AsNoTracking()
                where invitation.NightId == night
                join fellow in db.Guests.AsNoTracking() on invitation.GuestId equals fellow.Id
                where fellow.Household == home && fellow.Id != guest && fellow.FormerSince == null && fellow.HostId == null
                orderby fellow.Name
                select new HouseholdFellow(fellow.Id, fellow.Name)).ToListAsync(cancellation);
    }

    /// <param name="adds">
    /// The page did not know of what is kept: it takes nothing away, or a must-not would be lost that nobody took back.
    /// </param>
    public async Task KeepNoteAsync(
        GroupSession session, NightId night, GuestId guest, GuestAnswer sent, int eaters, bool adds, CancellationToken cancellation)
    {
        var kept = await session.Db.DietaryNotes.SingleOrDefaultAsync(
            row => row.NightId == night && row.GuestId == guest, cancellation);
        var note = sent.Note.Trim();
        var saysSomething = note.Length > 0 || sent.Needs.Any(needs => !needs.IsNone);
        if (adds && kept is not null)
        {
            if (sent.Consents && saysSomething)
            {
                var both = Both(notes.Read(kept.ProtectedNote).Note, note);
                kept.Set(
                    [.. Enumerable.Range(0, eaters).Select(index => DietaryNeeds.Both(Of(kept.Needs, index), Of(sent.Needs, index)))],
                    both.Length > 0 ? notes.Protect(both) : null,
                    clock.GetCurrentInstant());
            }

            return;
        }

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
            kept = new DietaryNote(session.GroupId, night, guest);
            session.Db.DietaryNotes.Add(kept);
        }

        var isSame = note.Length > 0 && notes.Read(kept.ProtectedNote) is { IsReadable: true, Note: { } before } && before == note;
        kept.Set([.. sent.Needs.Take(eaters)], note.Length > 0 ? notes.Protect(note) : null, clock.GetCurrentInstant(), isSame);
        if (isSame)
        {
            kept.KeepFirst(eaters);
        }
    }

    private static DietaryNeeds Of(IReadOnlyList<DietaryNeeds> needs, int eater) =>
        eater < needs.Count ? needs[eater] : DietaryNeeds.None;

    /// <summary>One below the other; the later alone where both do not fit.</summary>
    private static string Both(string? before, string now) =>
        before is not { Length: > 0 } || now.Contains(before, StringComparison.Ordinal) ? now
            : now.Length == 0 ? before
            : $"{before}\n{now}" is { Length: <= DietaryNote.LongestNote } both ? both
            : now;

    /// <param name="adds">The page did not know of the answer before: that it has no tick to remember says nothing.</param>
    public async Task KeepWishesAsync(GroupSession session, GuestId id, GuestAnswer sent, bool adds, CancellationToken cancellation)
    {
        var db = session.Db;
        var guest = await db.Guests.SingleAsync(row => row.Id == id, cancellation);
        guest.ShowName(sent.ShowsName);
        var kept = await db.RememberedWishes.SingleOrDefaultAsync(row => row.GuestId == id, cancellation);
        if (!sent.Remembers)
        {
            if (kept is not null && !adds)
            {
                db.RememberedWishes.Remove(kept);
            }

            return;
        }

        var needs = sent.Consents && sent.Needs.Count > 0 ? sent.Needs[0] : DietaryNeeds.None;
        var wishes = new WishFacts(sent.Facts.Hunger, sent.Facts.Likes, needs);
        if (kept is null)
        {
            db.RememberedWishes.Add(new RememberedWishes(session.GroupId, id, wishes, clock.GetCurrentInstant()));
        }
        else
        {
            kept.Set(wishes, clock.GetCurrentInstant());
        }
    }
}
