using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>A message as a host sees it.</summary>
/// <param name="Text">What to pass on; null unless it is for hand.</param>
/// <param name="CanBeSent">There is a mail server and an address, so it can be sent (again).</param>
public sealed record MessageLine(
    MessageId Id, string GuestName, MessageKind Kind, MessageState State, MessageFault? Fault, Instant At, Letter? Text, bool CanBeSent);

/// <summary>The messages of a night.</summary>
/// <param name="CanCarry">A mail server is set.</param>
/// <param name="ToInvite">Guests whose invitation goes by mail when the host sends invitations.</param>
/// <param name="ToHand">Guests whose invitation is then a text to pass on.</param>
/// <param name="IsFull">The group's mails for 24 hours are used up: what waits goes out later.</param>
public sealed record MessagesView(
    bool CanCarry, bool IsOver, int ToInvite, int ToHand, bool IsFull, IReadOnlyList<MessageLine> Lines);

/// <summary>What a host does with messages: send invitations, pass texts on, see what went to whom and when.</summary>
public sealed class MessageDesk
{
    private readonly GroupSessions _sessions;
    private readonly Outbox _outbox;
    private readonly Letters _letters;
    private readonly NightChanges _changes;
    private readonly IClock _clock;

    internal MessageDesk(GroupSessions sessions, Outbox outbox, Letters letters, NightChanges changes, IClock clock)
    {
        _sessions = sessions;
        _outbox = outbox;
        _letters = letters;
        _changes = changes;
        _clock = clock;
    }

    /// <summary>Most mails of a group in 24 hours.</summary>
    public static int MostPerDay => Postman.MostPerDay;

    /// <returns>Null when the night is not in this group.</returns>
    public async Task<MessagesView?> MessagesAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var (db, now) = (session.Db, _clock.GetCurrentInstant());
        var night = await db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return null;
        }

        var guests = (await db.InvitedTo(id).ToListAsync(cancellation)).ToDictionary(row => row.Guest.Id, row => row);
        var lines = new List<MessageLine>();
        foreach (var message in await db.Messages.AsNoTracking().Where(row => row.NightId == id)
            .OrderByDescending(row => row.SettledAt ?? row.QueuedAt).ThenBy(row => row.Id).ToListAsync(cancellation))
        {
            var text = message.State == MessageState.ForHand ? await TextAsync(session, message, cancellation) : null;
            if (message.State != MessageState.ForHand || text is not null)
            {
                var guest = guests[message.GuestId].Guest;
                lines.Add(new MessageLine(
                    message.Id, guest.Name, message.Kind, message.State, message.Fault, message.SettledAt ?? message.QueuedAt, text,
                    message.State is MessageState.ForHand or MessageState.GivenUp && _outbox.Reaches(guest)));
            }
        }

        var isOver = night.CancelledAt is not null || NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone) <= now;
        var open = isOver ? [] : await UninvitedAsync(db, [.. guests.Values], cancellation);
        return new MessagesView(
            _outbox.CanCarry,
            isOver,
            open.Count(row => _outbox.Reaches(row.Guest)),
            open.Count(row => !_outbox.Reaches(row.Guest)),
            lines.Any(line => line.State == MessageState.Waiting) && await Postman.IsFullAsync(db, now, cancellation),
            lines);
    }

    /// <summary>
    /// Invites everybody who was not sent their link yet: by mail where there is an address, else as a text to pass on. Safe to
    /// repeat: one link goes out once.
    /// </summary>
    public async Task<SaveResult> SendInvitationsAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        var night = await session.Db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is not { CancelledAt: null })
        {
            return new SaveResult.Gone();
        }

        foreach (var row in await UninvitedAsync(
            session.Db, await session.Db.InvitedTo(id).ToListAsync(cancellation), cancellation))
        {
            await _outbox.QueueAsync(
                session, id, row.Guest, MessageKind.Invitation, row.Invitation.LinkGeneration, cancellation);
        }

        // Also where nobody has looked after the night yet: it was opened by an earlier version.
        session.LookAfter(id, _clock.GetCurrentInstant());
        return await KeptAsync(session, id, cancellation);
    }

    /// <summary>A host passed the text on.</summary>
    public async Task<SaveResult> PassedOnAsync(GroupAccess access, NightId night, MessageId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, night, cancellation);
        var message = await session.Db.Messages.SingleOrDefaultAsync(row => row.Id == id && row.NightId == night, cancellation);
        if (message is not { State: MessageState.ForHand })
        {
            return message is null ? new SaveResult.Gone() : new SaveResult.Saved();
        }

        var moves = (await session.Db.Nights.AsNoTracking().SingleAsync(row => row.Id == night, cancellation)).Moves.Count;
        message.PassOn(_clock.GetCurrentInstant(), moves);
        return await KeptAsync(session, night, cancellation);
    }

    /// <summary>Sends by mail what was given up or left to hand, now that there is an address (another one).</summary>
    public async Task<SaveResult> SendAsync(GroupAccess access, NightId night, MessageId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, night, cancellation);
        var message = await session.Db.Messages.SingleOrDefaultAsync(row => row.Id == id && row.NightId == night, cancellation);
        if (message is not { State: MessageState.ForHand or MessageState.GivenUp })
        {
            return message is null ? new SaveResult.Gone() : new SaveResult.Saved();
        }

        var guest = await session.Db.Guests.SingleAsync(row => row.Id == message.GuestId, cancellation);
        if (!_outbox.Reaches(guest))
        {
            return new SaveResult.ChangedMeanwhile();
        }

        await _outbox.QueueAgainAsync(session, guest, message, cancellation);
        return await KeptAsync(session, night, cancellation);
    }

    private async Task<SaveResult> KeptAsync(GroupSession session, NightId night, CancellationToken cancellation)
    {
        await session.CommitAsync(cancellation);
        _outbox.Wake();
        _changes.Publish(night);
        return new SaveResult.Saved();
    }

    private async Task<Letter?> TextAsync(GroupSession session, Message message, CancellationToken cancellation) =>
        await _letters.OfAsync(session, message, cancellation) switch
        {
            LetterResult.Ready ready => ready.Letter,
            LetterResult.ForHand hand => hand.Letter,
            _ => null,
        };

    /// <summary>Guests who have not answered and whose present link has not gone out.</summary>
    private static async Task<IReadOnlyList<InvitedRow>> UninvitedAsync(
        GameNightDb db, IReadOnlyList<InvitedRow> invited, CancellationToken cancellation)
    {
        var night = invited.Select(row => row.Invitation.NightId).FirstOrDefault();
        var sent = await db.Messages.AsNoTracking().Where(row => row.NightId == night && row.Kind == MessageKind.Invitation)
            .Select(row => new { row.GuestId, row.About }).ToListAsync(cancellation);
        return [.. invited.Where(row => Outbox.IsGuest(row.Guest) && row.Answer is null
            && !sent.Any(one => one.GuestId == row.Guest.Id && one.About == row.Invitation.LinkGeneration))];
    }
}
