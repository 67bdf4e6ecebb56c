using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Seats;
using GameNight.Nights.Storage;
using GameNight.Planning.Dates;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>What a guest sees of a night. Reading changes nothing.</summary>
internal sealed class InvitationReading(GuestNotes notes, IClock clock)
{
    private static WhoComes WhoComes(IReadOnlyList<InvitedRow> invited, GuestId reader)
    {
        var coming = invited
            .Where(row => row.Guest.FormerSince is null
                && (row.Answer?.Counted.Presence == Presence.Coming || (row.Answer is null && row.Guest.HostId is not null)))
            .ToList();
        return new WhoComes(
            coming.Sum(row => 1 + (row.Answer?.Facts.Companions.Count ?? 0)),
            [.. coming.Where(row => row.Guest.ShowsName && row.Guest.Id != reader)
                .Select(row => row.Guest.Name).Order(StringComparer.OrdinalIgnoreCase)]);
    }

    /// <summary>How many seats are left for this guest, and their own place in line; nothing of who else waits.</summary>
    private static TableView? Table(Night night, IReadOnlyList<InvitedRow> invited, GuestId guest) => night.Facts.Seats is { } seats
        ? new TableView(
            seats,
            Math.Max(0, seats - TableSeats.Taken(invited.Where(row => row.Guest.Id != guest).Select(row => (row.Guest, row.Answer)))),
            TableSeats.Places(invited.Where(row => row.Guest.FormerSince is null).Select(row => row.Answer)).TryGetValue(guest, out var place) ? place : null,
            TableSeats.Taken(invited.Where(row => row.Guest.Id == guest).Select(row => (row.Guest, row.Answer))) > 0)
        : null;

    /// <summary>Must-nots are used again only under the consent of today.</summary>
    private static async Task<WishFacts?> RememberedAsync(GameNightDb db, GuestId guest, CancellationToken cancellation) =>
        await db.RememberedWishes.AsNoTracking().SingleOrDefaultAsync(row => row.GuestId == guest, cancellation) switch
        {
            null => null,
            { ConsentedVersion: DietaryNote.ConsentVersion } wishes => wishes.Facts,
            var wishes => wishes.Facts with { Needs = DietaryNeeds.None },
        };

    public async Task<InvitationView?> ViewAsync(GroupSession session, LinkHolder holder, CancellationToken cancellation)
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
            || (plan?.DoughCommitment is { } mixing && mixing <= clock.GetCurrentInstant());

        var invited = await db.InvitedTo(night.Id).ToListAsync(cancellation);
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
            answer?.Counted.Presence == Presence.Coming ? night.Facts.Address : null,
            night.Facts.Bring,
            night.Facts.MostCompanions,
            plan?.AnswerBy,
            isBegun,
            [.. toppings.Select(item => new LikeableTopping(item.Id.ToString(), item.Name))],
            answer?.Facts,
            answer?.Revision ?? 0,
            answer?.AnsweredAt,
            dietary?.Needs ?? [],
            notes.Read(dietary?.ProtectedNote).Note,
            dietary is not null,
            invitation.DisownedAt is not null,
            night.CancelledAt is not null,
            answer is null ? null : NightMoves.Since(night, answer.AnsweredAt),
            CalendarNight.Of(group, night, guest.Id, answer),
            WhoComes(invited, holder.Guest),
            guest.ShowsName,
            await RememberedAsync(db, holder.Guest, cancellation),
            plan?.AnswerBy <= clock.GetCurrentInstant() && !isBegun,
            Table(night, invited, holder.Guest),
            night.Facts.Played,
            answer?.SaidBy,
            await AnswerKeeping.FellowsAsync(db, night.Id, guest.Id, cancellation),
            answer?.LastKey,
            answer is null ? await SaidOfDateAsync(db, holder, cancellation) : null,
            answer?.Replaced,
            answer?.Counted.Presence != Presence.Coming && night.Facts.Address.Length > 0,
            guest.TakesMail);
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

    public static Task<Invitation?> InvitationAsync(GroupSession session, LinkHolder holder, CancellationToken cancellation) =>
        session.Db.Invitations.SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
}
