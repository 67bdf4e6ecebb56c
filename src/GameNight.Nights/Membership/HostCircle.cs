using GameNight.Nights.Links;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Membership;

/// <summary>A host of the group as the others see them.</summary>
public sealed record HostLine(HostId Id, string Name, HostRole Role, bool SeesNotes);

/// <summary>An invitation that nobody used yet.</summary>
/// <param name="LinkToken">Secret part of the link; shown to owners alone.</param>
public sealed record HostInvitationLine(
    HostInvitationId Id, string ForName, HostRole Role, bool SeesNotes, Instant ExpiresAt, string LinkToken);

/// <summary>What came of changing somebody's rights or taking them out.</summary>
public abstract record HostChange
{
    private HostChange()
    {
    }

    public sealed record Done : HostChange;

    /// <summary>The group would have no owner: make somebody else one first, or delete the group.</summary>
    public sealed record LastOwner : HostChange;

    /// <summary>They are no host of the group (any more).</summary>
    public sealed record Gone : HostChange;

    public sealed record NameMissing : HostChange;
}

/// <summary>The hosts of a group: who they are, what they may, and how one joins or leaves.</summary>
public sealed class HostCircle
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly IClock _clock;

    internal HostCircle(GroupSessions sessions, LinkDirectory links, ReplanRequests replans, IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _clock = clock;
    }

    public async Task<IReadOnlyList<HostLine>> HostsAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var members = await session.Db.Memberships.AsNoTracking().ToListAsync(cancellation);
        var ids = members.Select(member => member.HostId.Value).ToList();
        var names = await session.Db.Users.AsNoTracking().Where(account => ids.Contains(account.Id))
            .ToDictionaryAsync(account => account.Id, account => account.DisplayName, cancellation);
        return [.. members
            .Select(member => new HostLine(
                member.HostId, names.GetValueOrDefault(member.HostId.Value, ""), member.Role, member.SeesNotes))
            .OrderByDescending(host => host.Role).ThenBy(host => host.Name, StringComparer.OrdinalIgnoreCase)];
    }

    public async Task<IReadOnlyList<HostInvitationLine>> InvitationsAsync(GroupAccess access, CancellationToken cancellation)
    {
        access.Demand(HostRole.Owner);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var now = _clock.GetCurrentInstant();
        var open = await session.Db.HostInvitations.AsNoTracking()
            .Where(invitation => invitation.ExpiresAt > now).OrderBy(invitation => invitation.ExpiresAt).ToListAsync(cancellation);
        return [.. open.Select(invitation => new HostInvitationLine(
            invitation.Id, invitation.ForName, invitation.Role, invitation.SeesNotes, invitation.ExpiresAt,
            _links.TokenFor(invitation).Text))];
    }

    /// <summary>Safe to repeat: the page makes the id, and the same id invites once.</summary>
    public async Task<HostChange> InviteAsync(
        GroupAccess access, HostInvitationId id, string forName, HostRole role, bool seesNotes, CancellationToken cancellation)
    {
        access.Demand(HostRole.Owner);
        var name = forName.Trim();
        if (name.Length is 0 or > HostAccount.LongestName)
        {
            return new HostChange.NameMissing();
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        if (!await session.Db.HostInvitations.AnyAsync(row => row.Id == id, cancellation))
        {
            var invitation = new HostInvitation(
                session.GroupId, id, name, role, seesNotes, access.HostId!.Value,
                _clock.GetCurrentInstant() + HostInvitation.OpenFor);
            session.Db.HostInvitations.Add(invitation);
            _links.List(session, invitation);
            await session.CommitNewAsync(cancellation);
        }

        return new HostChange.Done();
    }

    /// <summary>The link ends at once; withdrawing what is gone already is as good.</summary>
    public async Task WithdrawAsync(GroupAccess access, HostInvitationId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Owner);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await EndAsync(session, id, cancellation);
        await session.CommitAsync(cancellation);
    }

    public async Task<HostChange> GrantAsync(
        GroupAccess access, HostId host, HostRole role, bool seesNotes, CancellationToken cancellation)
    {
        access.Demand(HostRole.Owner);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var members = await LockedAsync(session, cancellation);
        DemandStill(members, access);
        if (members.SingleOrDefault(member => member.HostId == host) is not { } member)
        {
            return new HostChange.Gone();
        }

        if (role != HostRole.Owner && IsLastOwner(members, member))
        {
            return new HostChange.LastOwner();
        }

        member.Grant(role, seesNotes);
        if (role != HostRole.Owner)
        {
            await EndInvitationsOfAsync(session, host, cancellation);
        }

        await session.CommitAsync(cancellation);
        return new HostChange.Done();
    }

    /// <summary>
    /// An owner takes a host out, or a host leaves. They stay a guest of the group, who eats along as before.
    /// </summary>
    public async Task<HostChange> RemoveAsync(GroupAccess access, HostId host, CancellationToken cancellation)
    {
        if (access.HostId != host)
        {
            access.Demand(HostRole.Owner);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var members = await LockedAsync(session, cancellation);
        if (access.HostId != host)
        {
            DemandStill(members, access);
        }

        if (members.SingleOrDefault(member => member.HostId == host) is not { } member)
        {
            return new HostChange.Gone();
        }

        if (IsLastOwner(members, member))
        {
            return new HostChange.LastOwner();
        }

        session.Db.Memberships.Remove(member);
        foreach (var eater in await session.Db.Guests.Where(guest => guest.HostId == host).ToListAsync(cancellation))
        {
            eater.BelongTo(null);
        }

        await EndInvitationsOfAsync(session, host, cancellation);

        // Hosts count as coming until they say otherwise, other guests do not.
        await _replans.UpcomingNightsAsync(session, cancellation);
        await session.CommitAsync(cancellation);
        _replans.Wake();
        return new HostChange.Done();
    }

    internal static async Task<bool> EndAsync(GroupSession session, HostInvitationId id, CancellationToken cancellation)
    {
        await LinkDirectory.EndAsync(session, id, cancellation);
        return await session.Db.HostInvitations.Where(row => row.Id == id).ExecuteDeleteAsync(cancellation) == 1;
    }

    /// <summary>Links made by somebody who may not make them any more would let them back in.</summary>
    internal static async Task EndInvitationsOfAsync(GroupSession session, HostId host, CancellationToken cancellation)
    {
        var open = await session.Db.HostInvitations.Where(row => row.InvitedBy == host).Select(row => row.Id).ToListAsync(cancellation);
        foreach (var invitation in open)
        {
            await EndAsync(session, invitation, cancellation);
        }
    }

    /// <summary>The right as it is now that nobody else changes it.</summary>
    private static void DemandStill(IReadOnlyList<GroupMembership> members, GroupAccess access)
    {
        if (!members.Any(member => member.HostId == access.HostId && member.Role >= HostRole.Owner))
        {
            throw new RightMissingException(HostRole.Owner);
        }
    }

    /// <summary>
    /// The group's members, held until the commit: two owners who leave at once take turns, and the second is the last.
    /// </summary>
    internal static Task<List<GroupMembership>> LockedAsync(GroupSession session, CancellationToken cancellation) =>
        session.Db.Memberships
            .FromSql($"select * from memberships where group_id = {session.GroupId.Value} order by host_id for update")
            .ToListAsync(cancellation);

    internal static bool IsLastOwner(IReadOnlyList<GroupMembership> members, GroupMembership member) =>
        member.Role == HostRole.Owner && members.Count(other => other.Role == HostRole.Owner) == 1;
}
