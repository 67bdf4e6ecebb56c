using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>The plan of a night as a host sees it: the saved one, with names joined and staleness found.</summary>
public sealed class PlanDesk
{
    private readonly GroupSessions _sessions;
    private readonly NightSnapshots _snapshots;
    private readonly ReplanRequests _replans;
    private readonly ReferenceTables _tables;
    private readonly IClock _clock;

    internal PlanDesk(
        GroupSessions sessions, NightSnapshots snapshots, ReplanRequests replans, ReferenceTables tables, IClock clock)
    {
        _sessions = sessions;
        _snapshots = snapshots;
        _replans = replans;
        _tables = tables;
        _clock = clock;
    }

    /// <summary>Reads the plan; a stale one is shown as being redone, and a new one is asked for.</summary>
    /// <returns>Null when the night is not in this group.</returns>
    public async Task<PlanView?> PlanAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var snapshot = await _snapshots.LoadAsync(session, id, cancellation);
        if (snapshot is null)
        {
            return null;
        }

        var saved = await session.Db.Plans.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        var plan = saved is null ? null : PlanBook.Read(saved);
        var fingerprint = PlanJson.Fingerprint(snapshot, _tables);
        var now = _clock.GetCurrentInstant();
        var isStale = saved is null || plan is null
            || (!PlanBook.IsSettled(saved, snapshot, now) && PlanBook.IsStale(saved, fingerprint, now));
        var night = await session.Db.Nights.AsNoTracking().SingleAsync(row => row.Id == id, cancellation);
        var dough = await session.Db.CommittedDoughs.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        var late = dough is null || plan is null || saved!.Fingerprint != fingerprint
            ? null
            : LateChanges.Between(DoughCommitments.Read(dough), new PlannedNight(snapshot, plan));
        var kitchen = await session.Db.Kitchens.AsNoTracking().SingleAsync(cancellation);
        var names = await NamesAsync(session, id, late, cancellation);
        var items = await session.Db.MenuItems.AsNoTracking()
            .ToDictionaryAsync(item => item.Id.ToString(), item => item.Name, cancellation);

        // What is asked for already is not asked for again: that would start the solving over at every look.
        var isAskedFor = await session.Db.ReplanQueue.AnyAsync(
            row => row.GroupId == access.GroupId && row.NightId == id && row.RequestedAt <= now + ReplanRequests.Soon, cancellation);
        isStale &= night.CancelledAt is null;
        if (isStale && !isAskedFor)
        {
            _replans.Night(session, id);
            await session.CommitAsync(cancellation);
            _replans.Wake();
        }

        var options = late is null || night.CancelledAt is not null
            ? LateOptions.None
            : new LateOptionsFinder(_tables).For(snapshot, plan!, now);
        return new PlanView(
            plan, isStale || isAskedFor, saved?.MadeAt, names, items, late, snapshot, options, kitchen.Facts.LeavesPastOut == true,
            kitchen.Facts.Menu?.Named ?? [], kitchen.Facts.Menu?.SecondDough?.Name);
    }

    private static async Task<IReadOnlyDictionary<string, string>> NamesAsync(
        GroupSession session, NightId id, LateChanges? late, CancellationToken cancellation)
    {
        var rows = await session.Db.InvitedTo(id).ToListAsync(cancellation);
        var names = new Dictionary<string, string>();
        foreach (var row in rows)
        {
            names[row.Guest.Id.ToString()] = row.Guest.Name;
            for (var number = 1; number <= (row.Answer?.Facts.Companions.Count ?? 0); number++)
            {
                names[NightSnapshots.CompanionId(row.Guest.Id, number)] = $"{row.Guest.Name} +{number}";
            }
        }

        // Who was taken off since the dough was begun is not invited any more, but their late change is told.
        var others = (late?.Guests ?? []).Where(change => !names.ContainsKey(change.GuestId))
            .Select(change => new GuestId(Guid.Parse(change.GuestId))).ToList();
        if (others.Count > 0)
        {
            foreach (var guest in await session.Db.Guests.AsNoTracking()
                .Where(guest => others.Contains(guest.Id) && guest.FormerSince == null).ToListAsync(cancellation))
            {
                names[guest.Id.ToString()] = guest.Name;
            }
        }

        return names;
    }
}
