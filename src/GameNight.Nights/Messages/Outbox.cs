using System.Threading.Channels;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>
/// Queues messages in the same commit as what they tell of. Callers hold the turn of the night, so that nobody queues the same
/// at the same moment; the unique key behind it holds in any case.
/// </summary>
internal sealed class Outbox(LinkDirectory links, IMessageCarrier carrier, IClock clock)
{
    private readonly Channel<bool> _wake = Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    public ChannelReader<bool> WakeUps => _wake.Reader;

    public bool CanCarry => carrier.CanCarry;

    /// <summary>After the commit. A lost wake-up costs seconds, never a message.</summary>
    public void Wake() => _wake.Writer.TryWrite(true);

    public bool Reaches(Guest guest) => carrier.CanCarry && guest.TakesMail;

    public async Task QueueAsync(
        GroupSession session, NightId night, Guest guest, MessageKind kind, int about, CancellationToken cancellation)
    {
        var db = session.Db;
        if (await db.Messages.AnyAsync(
            row => row.NightId == night && row.GuestId == guest.Id && row.Kind == kind && row.About == about, cancellation))
        {
            return;
        }

        var state = Reaches(guest) ? MessageState.Waiting : MessageState.ForHand;
        var message = new Message(session.GroupId, MessageId.New(), night, guest.Id, kind, about, state, clock.GetCurrentInstant());
        db.Messages.Add(message);
        if (state == MessageState.Waiting)
        {
            await PostAsync(session, guest, message, cancellation);
        }
    }

    /// <summary>Sends a message after all that was given up or left to hand.</summary>
    public async Task QueueAgainAsync(GroupSession session, Guest guest, Message message, CancellationToken cancellation)
    {
        message.WaitAgain();
        await PostAsync(session, guest, message, cancellation);
    }

    /// <summary>
    /// Tells everybody who knows of the night and has not said that they stay away: who was sent an invitation from here, or
    /// has answered. A night that is over has nothing left to tell.
    /// </summary>
    public async Task TellAsync(GroupSession session, Night night, MessageKind kind, CancellationToken cancellation)
    {
        if (NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone) <= clock.GetCurrentInstant())
        {
            return;
        }

        var known = await KnownAsync(session.Db, night.Id, cancellation);
        foreach (var row in await session.Db.InvitedTo(night.Id).ToListAsync(cancellation))
        {
            if (IsGuest(row.Guest) && row.Answer?.Facts.Presence != Presence.NotComing
                && (row.Answer is not null || known.Contains(row.Guest.Id)))
            {
                await QueueAsync(session, night.Id, row.Guest, kind, night.Moves.Count, cancellation);
            }
        }
    }

    /// <summary>Hosts see the app itself; somebody who left is told nothing.</summary>
    public static bool IsGuest(Guest guest) => guest.HostId is null && guest.FormerSince is null;

    /// <summary>Guests who were sent an invitation, or will be in a moment.</summary>
    public static async Task<HashSet<GuestId>> KnownAsync(GameNightDb db, NightId night, CancellationToken cancellation) =>
    [
        .. await db.Messages.AsNoTracking()
            .Where(row => row.NightId == night && row.Kind == MessageKind.Invitation
                && (row.State == MessageState.Waiting || row.State == MessageState.Sent || row.State == MessageState.PassedOn))
            .Select(row => row.GuestId).ToListAsync(cancellation),
    ];

    private async Task PostAsync(GroupSession session, Guest guest, Message message, CancellationToken cancellation)
    {
        session.Db.PostQueue.Add(new PostRow(session.GroupId, message.Id.Value, Errand.Message, clock.GetCurrentInstant()));
        await links.ListAsync(session, guest, LinkScope.Unsubscribe, cancellation);
    }
}
