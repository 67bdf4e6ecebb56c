using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Seats;

/// <summary>What the table has to say to an answer.</summary>
internal abstract record SeatResult
{
    private SeatResult()
    {
    }

    /// <summary>There is room, nobody counts seats, or none is needed.</summary>
    /// <param name="Alone">There is one seat: the companions stay at home, as the guest said.</param>
    internal sealed record Seated(bool Alone = false) : SeatResult;

    /// <summary>The table is full: in line, with this number.</summary>
    internal sealed record Waits(int Number) : SeatResult;

    /// <summary>The guest has a seat and asks for more than there are. The seat stays theirs.</summary>
    /// <param name="MostCompanions">Who can be brought along.</param>
    internal sealed record NoRoomForMore(int MostCompanions) : SeatResult;
}

/// <summary>
/// Seats at the table and who waits for one. Callers hold the night's turn, so the last seat goes to exactly one. Whoever
/// waits is moved up in the order they came; a party that does not fit as a whole is passed over and keeps its place.
/// </summary>
internal sealed class TableSeats(Outbox outbox, IClock clock)
{
    /// <summary>Seats that are taken; a host needs no answer to have one.</summary>
    public static int Taken(IEnumerable<(Guest Guest, Answer? Answer)> invited) => invited
        .Where(row => row.Guest.FormerSince is null)
        .Sum(row => row.Answer?.Counted.SeatsWanted ?? (row.Guest.HostId is null ? 0 : 1));

    /// <summary>The place in line, from 1, of each guest who waits.</summary>
    public static IReadOnlyDictionary<GuestId, int> Places(IEnumerable<Answer?> answers) => answers
        .Where(answer => answer?.IsWaiting == true)
        .OrderBy(answer => answer!.WaitingNumber)
        .Select((answer, index) => (answer!.GuestId, Place: index + 1))
        .ToDictionary(row => row.GuestId, row => row.Place);

    /// <summary>Whether there is a seat for what a guest is about to say. Nothing is changed.</summary>
    public static async Task<SeatResult> AskAsync(
        GroupSession session, Night night, GuestId guest, AnswerFacts said, CancellationToken cancellation)
    {
        if (night.Facts.Seats is not { } seats || said.SeatsWanted == 0)
        {
            return new SeatResult.Seated();
        }

        var table = await TableAsync(session, night.Id, cancellation);
        var own = table.Answers.SingleOrDefault(answer => answer.GuestId == guest);
        var free = seats - Taken(table.Rows.Where(row => row.Guest.Id != guest));
        var has = own is null ? 0 : own.Counted.SeatsWanted;
        if (said.SeatsWanted <= free || said.SeatsWanted <= has)
        {
            return new SeatResult.Seated();
        }

        if (said.AloneIfNeeded == true && free > 0)
        {
            return new SeatResult.Seated(Alone: true);
        }

        return has > 0
            ? new SeatResult.NoRoomForMore(Math.Max(free, has) - 1)
            : new SeatResult.Waits(own?.WaitingNumber ?? 1 + table.Answers.Select(answer => answer.WaitingNumber ?? 0).DefaultIfEmpty().Max());
    }

    /// <summary>Gives free seats to who waits, and tells them, within the session's commit.</summary>
    /// <param name="leaving">Somebody whose answer goes in the same commit.</param>
    public async Task FillAsync(GroupSession session, Night night, CancellationToken cancellation, GuestId? leaving = null)
    {
        if (night.CancelledAt is not null
            || NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone) <= clock.GetCurrentInstant())
        {
            return;
        }

        var table = await TableAsync(session, night.Id, cancellation, leaving);
        var waiting = table.Answers.Where(answer => answer.IsWaiting).OrderBy(answer => answer.WaitingNumber).ToList();
        var free = night.Facts.Seats is { } seats ? seats - Taken(table.Rows) : int.MaxValue;
        foreach (var answer in waiting)
        {
            var alone = answer.Facts.SeatsWanted > free;
            if (free <= 0 || (alone && answer.Facts.AloneIfNeeded != true))
            {
                continue;
            }

            answer.Seat(alone);
            free -= answer.Facts.SeatsWanted;
            var guest = table.Rows.Single(row => row.Guest.Id == answer.GuestId).Guest;
            if (alone)
            {
                await ForgetCompanionsAsync(session, answer, cancellation);
            }

            if (Outbox.IsGuest(guest))
            {
                await outbox.QueueAsync(session, night.Id, guest, MessageKind.Seat, answer.Revision, cancellation);
            }
        }
    }

    /// <summary>Who stays at home has no must-nots to plan by.</summary>
    public static async Task ForgetCompanionsAsync(GroupSession session, Answer answer, CancellationToken cancellation)
    {
        var note = await session.Db.DietaryNotes.SingleOrDefaultAsync(
            row => row.NightId == answer.NightId && row.GuestId == answer.GuestId, cancellation);
        note?.KeepFirst(1);
    }

    /// <summary>Everybody invited, with answers as this session is about to keep them.</summary>
    private static async Task<Table> TableAsync(
        GroupSession session, NightId night, CancellationToken cancellation, GuestId? leaving = null)
    {
        var db = session.Db;
        await db.Answers.Where(row => row.NightId == night && row.GuestId != leaving).LoadAsync(cancellation);
        var answers = db.Answers.Local.Where(row => row.NightId == night && row.GuestId != leaving).ToList();
        var guests = await (
            from invitation in db.Invitations.AsNoTracking()
            where invitation.NightId == night
            join guest in db.Guests.AsNoTracking() on invitation.GuestId equals guest.Id
            where guest.Id != leaving && guest.FormerSince == null
            select guest).ToListAsync(cancellation);
        var byGuest = answers.ToDictionary(answer => answer.GuestId);
        return new Table(
            [.. guests.Select(guest => (guest, byGuest.GetValueOrDefault(guest.Id)))],
            [.. answers.Where(answer => guests.Any(guest => guest.Id == answer.GuestId))]);
    }

    private sealed record Table(IReadOnlyList<(Guest Guest, Answer? Answer)> Rows, IReadOnlyList<Answer> Answers);
}
