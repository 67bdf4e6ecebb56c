using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>Mails to hosts before work in the kitchen begins. What they say is read when they are sent.</summary>
internal sealed class WorkPost(IMessageCarrier carrier, IClock clock)
{
    /// <summary>A reminder that comes this late still finds somebody who has not begun.</summary>
    private static readonly Duration Late = Duration.FromMinutes(10);

    /// <summary>Queues what is due now. The caller has the night's turn.</summary>
    /// <returns>When the next one is due; null when none is.</returns>
    public async Task<Instant?> QueueAsync(GroupSession session, Night night, Instant now, CancellationToken cancellation)
    {
        var db = session.Db;
        var reminded = carrier.CanCarry
            ? await db.Memberships.AsNoTracking().Where(row => row.RemindedMinutesAhead != null).ToListAsync(cancellation)
            : [];
        if (reminded.Count == 0 || await StretchesAsync(db, night.Id, cancellation) is not { Count: > 0 } stretches)
        {
            return null;
        }

        var hours = (await db.Kitchens.AsNoTracking().SingleAsync(cancellation)).Facts.Hours;
        var told = await db.WorkReminders.AsNoTracking().Where(row => row.NightId == night.Id).ToListAsync(cancellation);
        Instant? next = null;
        foreach (var member in reminded)
        {
            foreach (var stretch in stretches.Where(stretch => stretch.From > now))
            {
                var at = stretch.TellAt(Duration.FromMinutes(member.RemindedMinutesAhead!.Value), hours, night.Facts.Zone);
                if (at > now)
                {
                    next = next is { } before ? Instant.Min(before, at) : at;
                }
                else if (!told.Exists(row => row.HostId == member.HostId && stretch.IsAbout(row.Begins)))
                {
                    var reminder = new WorkReminder(session.GroupId, WorkReminderId.New(), night.Id, member.HostId, stretch.From, now);
                    db.WorkReminders.Add(reminder);
                    db.PostQueue.Add(new PostRow(session.GroupId, reminder.Id.Value, Errand.Work, now));
                }
            }
        }

        return next;
    }

    /// <returns>Null when it is not to be sent any more: no such work, begun or done, called off, or the host wants none.</returns>
    public async Task<WorkLetter?> OfAsync(GroupSession session, WorkReminder reminder, CancellationToken cancellation)
    {
        var (db, now) = (session.Db, clock.GetCurrentInstant());
        var night = await db.Nights.AsNoTracking().SingleAsync(row => row.Id == reminder.NightId, cancellation);
        var wants = await db.Memberships.AnyAsync(row => row.HostId == reminder.HostId && row.RemindedMinutesAhead != null, cancellation);
        var stretch = (await StretchesAsync(db, night.Id, cancellation))
            .FirstOrDefault(stretch => stretch.IsAbout(reminder.Begins) && stretch.From + Late > now);
        var account = await db.Users.AsNoTracking().Where(row => row.Id == reminder.HostId.Value)
            .Select(row => new { row.Email, row.DisplayName }).SingleOrDefaultAsync(cancellation);
        if (!wants || night.CancelledAt is not null || stretch is null || account?.Email is not { Length: > 0 } address)
        {
            return null;
        }

        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        return new WorkLetter(
            reminder.Id, address, account.DisplayName, group.Id, group.Name, night.Id, night.Facts.Title, night.Facts.Zone, stretch);
    }

    public static Task<int> SettleAsync(
        GameNightDb db, WorkReminderId id, MessageState state, Instant at, MessageFault? fault, CancellationToken cancellation) =>
        // Not through the record: it may have gone with its night or host while the server took it.
        db.WorkReminders.Where(row => row.Id == id).ExecuteUpdateAsync(
            row => row.SetProperty(one => one.State, state).SetProperty(one => one.SettledAt, at).SetProperty(one => one.Fault, fault), cancellation);

    public static Task<int> TriedInVainAsync(GameNightDb db, WorkReminderId id, MessageFault fault, CancellationToken cancellation) =>
        db.WorkReminders.Where(row => row.Id == id).ExecuteUpdateAsync(
            row => row.SetProperty(one => one.Tries, one => one.Tries + 1).SetProperty(one => one.Fault, fault), cancellation);

    /// <summary>By the plan as it is, less what a host has tapped as begun or done already.</summary>
    private static async Task<IReadOnlyList<WorkStretch>> StretchesAsync(GameNightDb db, NightId night, CancellationToken cancellation)
    {
        if (await db.Plans.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == night, cancellation) is not { } saved
            || PlanBook.Read(saved) is not { } plan)
        {
            return [];
        }

        var tapped = (await db.LiveTaps.AsNoTracking().Where(row => row.NightId == night && row.TakenBackAt == null)
            .Select(row => row.Mark).ToListAsync(cancellation)).Select(mark => mark.Step).ToHashSet();
        return [.. WorkStretch.Of(plan.Timeline.Steps).Where(stretch => !tapped.Contains(stretch.Steps[0].Id))];
    }
}
