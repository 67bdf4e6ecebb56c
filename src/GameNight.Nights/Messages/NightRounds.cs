using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>Looks after one night: who is to be reminded now, who is to be thanked, which host has work before them, and when to look again.</summary>
internal sealed class NightRounds(Outbox outbox, WorkPost work, IClock clock)
{
    private static readonly Duration Soon = Duration.FromSeconds(1);

    /// <returns>When to look again; null when there is nothing more to come.</returns>
    public async Task<Instant?> LookAsync(GroupSession session, NightId id, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        if (!await TryTakeTurnAsync(session, id, cancellation))
        {
            return await session.Db.Nights.AnyAsync(row => row.Id == id, cancellation) ? now + Soon : null;
        }

        var night = await session.Db.Nights.AsNoTracking().SingleAsync(row => row.Id == id, cancellation);
        if (night.CancelledAt is not null)
        {
            // Taking place after all asks for another look.
            return null;
        }

        var answerBy = await session.Db.Plans.AsNoTracking().Where(row => row.NightId == id)
            .Select(row => row.AnswerBy).SingleOrDefaultAsync(cancellation);
        var reminders = answerBy is { } by ? NightMoments.Reminders(by, night.Facts.Zone) : [];
        for (var index = 0; index < reminders.Count; index++)
        {
            if (reminders[index] <= now && now < reminders[index] + NightMoments.ReminderHolds && now < answerBy)
            {
                await RemindAsync(session, night, number: index + 1, now, cancellation);
            }
        }

        var thanks = NightMoments.Thanks(night.Facts.ServeAt, night.Facts.Zone);
        if (thanks <= now && now < thanks + NightMoments.ThanksHold)
        {
            await ThankAsync(session, night, cancellation);
        }

        var nextWork = await work.QueueAsync(session, night, now, cancellation);
        var ahead = reminders.Append(thanks).Concat(nextWork is { } at ? [at] : []).Where(moment => moment > now).ToList();
        return ahead.Count > 0 ? ahead.Min() : null;
    }

    /// <summary>Who has not answered, was invited from here, and was not told something just now.</summary>
    private async Task RemindAsync(GroupSession session, Night night, int number, Instant now, CancellationToken cancellation)
    {
        var db = session.Db;
        var known = await Outbox.KnownAsync(db, night.Id, cancellation);
        var since = now - NightMoments.Rest;
        var told = await db.Messages.AsNoTracking()
            .Where(row => row.NightId == night.Id && (row.SettledAt ?? row.QueuedAt) > since)
            .Select(row => row.GuestId).ToListAsync(cancellation);
        foreach (var row in await db.InvitedTo(night.Id).ToListAsync(cancellation))
        {
            if (Outbox.IsGuest(row.Guest) && row.Answer is null && known.Contains(row.Guest.Id) && !told.Contains(row.Guest.Id))
            {
                await outbox.QueueAsync(session, night.Id, row.Guest, MessageKind.Reminder, number, cancellation);
            }
        }
    }

    private async Task ThankAsync(GroupSession session, Night night, CancellationToken cancellation)
    {
        foreach (var row in await session.Db.InvitedTo(night.Id).ToListAsync(cancellation))
        {
            if (Outbox.IsGuest(row.Guest) && row.Answer?.Counted.Presence == Presence.Coming)
            {
                await outbox.QueueAsync(session, night.Id, row.Guest, MessageKind.Thanks, 0, cancellation);
            }
        }
    }

    /// <summary>
    /// Never waits: whoever has the night's turn may be waiting for the errand that is claimed here, to bring it forward.
    /// </summary>
    private static async Task<bool> TryTakeTurnAsync(GroupSession session, NightId night, CancellationToken cancellation) =>
        await session.Db.Database.SqlQuery<Guid>(
            $"select id as \"Value\" from nights where id = {night.Value} for no key update skip locked")
            .ToListAsync(cancellation) is [_];
}
