using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>The people a group knows.</summary>
public sealed class GuestListDesk
{
    private readonly GroupSessions _sessions;
    private readonly ReplanRequests _replans;

    private readonly IClock _clock;

    internal GuestListDesk(GroupSessions sessions, ReplanRequests replans, IClock clock)
    {
        _clock = clock;
        _sessions = sessions;
        _replans = replans;
    }

    public async Task<IReadOnlyList<GuestLine>> GuestsAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var maySeeAddresses = access.Allows(HostRole.Organiser);
        return [.. (await session.Db.Guests.AsNoTracking()
            .Where(guest => guest.FormerSince == null).OrderBy(guest => guest.Name).ToListAsync(cancellation))
            .Select(guest => new GuestLine(
                guest.Id, guest.Name, guest.Portion, guest.HostId is not null, guest.IsStanding,
                maySeeAddresses ? guest.Contact?.MailAddress ?? "" : "",
                maySeeAddresses && guest.Contact?.StoppedAt is not null,
                guest.Household, guest.IsOneOff))];
    }

    /// <summary>
    /// Sets or takes away the address to which messages for a guest go. Messages that the guest stopped stay stopped.
    /// </summary>
    /// <param name="address">Checked by <see cref="MailAddressCheck"/>; empty for none.</param>
    public async Task<SaveResult> ReachAsync(GroupAccess access, GuestId id, string address, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var guest = await session.Db.Guests.SingleOrDefaultAsync(row => row.Id == id && row.FormerSince == null, cancellation);
        if (guest is null)
        {
            return new SaveResult.Gone();
        }

        if (address != (guest.Contact?.MailAddress ?? ""))
        {
            guest.Reach(address, byGuest: false, _clock.GetCurrentInstant());
            await session.CommitAsync(cancellation);
        }

        return new SaveResult.Saved();
    }

    /// <summary>Safe to repeat: the page makes the id, and the same id adds one guest.</summary>
    public async Task<SaveResult> AddAsync(
        GroupAccess access, GuestId id, string name, PortionClass portion, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        if (await session.Db.Guests.AnyAsync(row => row.Id == id, cancellation))
        {
            return new SaveResult.Saved();
        }

        var count = await session.Db.Guests.CountAsync(guest => guest.FormerSince == null, cancellation);
        if (Problems(name, count + 1) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        session.Db.Guests.Add(new Guest(access.GroupId, id, name.Trim(), portion, null));
        await session.CommitNewAsync(cancellation);
        return new SaveResult.Saved();
    }

    public async Task<SaveResult> SetAsync(
        GroupAccess access, GuestId id, string name, PortionClass portion, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        if (Problems(name, count: 1) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var guest = await session.Db.Guests.SingleOrDefaultAsync(row => row.Id == id && row.FormerSince == null, cancellation);
        if (guest is null)
        {
            return new SaveResult.Gone();
        }

        guest.Set(name.Trim(), portion);
        await _replans.UpcomingNightsAsync(session, cancellation);
        await session.CommitAsync(cancellation);
        _replans.Wake();
        return new SaveResult.Saved();
    }

    /// <summary>Whether somebody is invited to every new night unless the host takes them off.</summary>
    public async Task<SaveResult> StandAsync(
        GroupAccess access, GuestId id, bool isStanding, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var guest = await session.Db.Guests.SingleOrDefaultAsync(row => row.Id == id && row.FormerSince == null, cancellation);
        if (guest is null)
        {
            return new SaveResult.Gone();
        }

        guest.Stand(isStanding);
        await session.CommitAsync(cancellation);
        return new SaveResult.Saved();
    }

    /// <summary>Somebody who was invited for one night stays in the group's list; whether to every night is another matter.</summary>
    public async Task<SaveResult> KeepAsync(GroupAccess access, GuestId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var guest = await session.Db.Guests.SingleOrDefaultAsync(row => row.Id == id && row.FormerSince == null, cancellation);
        if (guest is null)
        {
            return new SaveResult.Gone();
        }

        guest.Stay();
        await session.CommitAsync(cancellation);
        return new SaveResult.Saved();
    }

    /// <summary>
    /// Puts guests into a household, or out of any. A household is there as long as somebody is in it; letters large or small
    /// make no other one.
    /// </summary>
    /// <param name="name">1 to 40 characters; empty for none.</param>
    public async Task<SaveResult> HouseholdAsync(
        GroupAccess access, IReadOnlyList<GuestId> members, string name, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        var asked = name.Trim();
        if (asked.Length > Guest.LongestHousehold)
        {
            return new SaveResult.Refused([new("household", SnapshotFault.WrongCount, asked.Length, 1, Guest.LongestHousehold)]);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var known = await session.Db.Guests.AsNoTracking().Where(guest => guest.Household != null).Select(guest => guest.Household!)
            .Distinct().ToListAsync(cancellation);
        var home = asked.Length == 0
            ? null
            : known.FirstOrDefault(other => string.Equals(other, asked, StringComparison.OrdinalIgnoreCase)) ?? asked;
        var guests = await session.Db.Guests.Where(row => members.Contains(row.Id) && row.FormerSince == null).ToListAsync(cancellation);
        if (guests.Count != members.Distinct().Count())
        {
            return new SaveResult.Gone();
        }

        foreach (var guest in guests)
        {
            guest.LiveIn(home);
        }

        await _replans.UpcomingNightsAsync(session, cancellation);
        await session.CommitAsync(cancellation);
        _replans.Wake();
        return new SaveResult.Saved();
    }

    internal static List<SnapshotProblem> Problems(string name, int count)
    {
        var problems = new List<SnapshotProblem>();
        var length = name.Trim().Length;
        if (length is < 1 or > Guest.LongestName)
        {
            problems.Add(new("name", SnapshotFault.WrongCount, length, 1, Guest.LongestName));
        }

        if (count > SnapshotCheck.MostGuests)
        {
            problems.Add(new("guests", SnapshotFault.WrongCount, count, 0, SnapshotCheck.MostGuests));
        }

        return problems;
    }
}
