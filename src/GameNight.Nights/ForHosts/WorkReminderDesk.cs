using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>Mails before work begins, as the host who gets them sees them.</summary>
/// <param name="CanCarry">A mail server is set.</param>
/// <param name="MinutesAhead">Null for no mail.</param>
/// <param name="Newest">Of this night; null when none was due yet.</param>
public sealed record WorkRemindersView(bool CanCarry, int? MinutesAhead, WorkReminderLine? Newest);

/// <param name="At">When it was queued; once it is settled, when that was.</param>
public sealed record WorkReminderLine(MessageState State, MessageFault? Fault, Instant At);

/// <summary>Each host chooses for themselves, for all nights of the group.</summary>
public sealed class WorkReminderDesk
{
    private readonly GroupSessions _sessions;
    private readonly Outbox _outbox;
    private readonly IClock _clock;

    internal WorkReminderDesk(GroupSessions sessions, Outbox outbox, IClock clock)
    {
        _sessions = sessions;
        _outbox = outbox;
        _clock = clock;
    }

    /// <returns>Null when the host does not belong to the group any more.</returns>
    public async Task<WorkRemindersView?> MineAsync(GroupAccess access, NightId night, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        if (await session.Db.Memberships.AsNoTracking().SingleOrDefaultAsync(row => row.HostId == access.HostId, cancellation) is not { } mine)
        {
            return null;
        }

        var newest = await session.Db.WorkReminders.AsNoTracking().Where(row => row.NightId == night && row.HostId == mine.HostId)
            .OrderByDescending(row => row.QueuedAt).FirstOrDefaultAsync(cancellation);
        return new WorkRemindersView(
            _outbox.CanCarry, mine.RemindedMinutesAhead,
            newest is null ? null : new WorkReminderLine(newest.State, newest.Fault, newest.SettledAt ?? newest.QueuedAt));
    }

    /// <summary>Safe to repeat.</summary>
    /// <param name="minutesAhead">One of <see cref="WorkReminder.MinutesAhead"/>; null for no mail.</param>
    /// <exception cref="ArgumentOutOfRangeException">None of them.</exception>
    public async Task RemindAsync(GroupAccess access, int? minutesAhead, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        if (minutesAhead is { } minutes && !WorkReminder.MinutesAhead.Contains(minutes))
        {
            throw new ArgumentOutOfRangeException(nameof(minutesAhead), minutesAhead, "Not one of those offered.");
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        if (await session.Db.Memberships.SingleOrDefaultAsync(row => row.HostId == access.HostId, cancellation) is not { } mine)
        {
            return;
        }

        mine.Remind(minutesAhead);
        var now = _clock.GetCurrentInstant();
        foreach (var night in await session.Db.Nights.AsNoTracking().Where(row => row.CancelledAt == null).ToListAsync(cancellation))
        {
            if (NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone) > now)
            {
                session.LookAfter(night.Id, now);
            }
        }

        await session.CommitAsync(cancellation);
        _outbox.Wake();
    }
}
