using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Membership;

/// <summary>What somebody who was invited to host reads before they join.</summary>
public sealed record JoiningView(
    GroupId Group, string GroupName, string InvitedBy, string ForName, HostRole Role, bool SeesNotes);

/// <summary>What the link to join leads to.</summary>
public abstract record JoiningLookup
{
    private JoiningLookup()
    {
    }

    public sealed record Found(JoiningView Invitation) : JoiningLookup;

    /// <summary>Used, withdrawn, run out or never there.</summary>
    public sealed record LinkNotValid : JoiningLookup;
}

/// <summary>How a host who was invited comes into a group. The link works once.</summary>
public sealed class JoiningDesk
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;

    internal JoiningDesk(GroupSessions sessions, LinkDirectory links)
    {
        _sessions = sessions;
        _links = links;
    }

    public async Task<JoiningLookup> LookAsync(LinkToken? link, CancellationToken cancellation)
    {
        if (await _links.FindHostInvitationAsync(link, cancellation)
            is not LinkLookup<(GroupId Group, HostInvitationId Invitation)>.Found { Holder: var holder })
        {
            return new JoiningLookup.LinkNotValid();
        }

        await using var session = await _sessions.OpenAsync(new GroupAccess(holder.Group, null, null), cancellation);
        var invitation = await session.Db.HostInvitations.AsNoTracking()
            .SingleOrDefaultAsync(row => row.Id == holder.Invitation, cancellation);
        if (invitation is null)
        {
            return new JoiningLookup.LinkNotValid();
        }

        var group = await session.Db.Groups.AsNoTracking().SingleAsync(cancellation);
        var by = invitation.InvitedBy.Value;
        var inviter = await session.Db.Users.AsNoTracking().Where(account => account.Id == by)
            .Select(account => account.DisplayName).SingleOrDefaultAsync(cancellation);
        return new JoiningLookup.Found(new JoiningView(
            group.Id, group.Name, inviter ?? group.Name, invitation.ForName, invitation.Role, invitation.SeesNotes));
    }

    /// <summary>
    /// Joins, as an eater too. Of two people with the same link one joins.
    /// </summary>
    /// <returns>The group, or null when the link is not valid (any more) for this host.</returns>
    public async Task<GroupId?> JoinAsync(
        LinkToken? link, HostId host, string hostName, CancellationToken cancellation)
    {
        if (await _links.FindHostInvitationAsync(link, cancellation)
            is not LinkLookup<(GroupId Group, HostInvitationId Invitation)>.Found { Holder: var holder })
        {
            return null;
        }

        await using var session = await _sessions.OpenAsync(new GroupAccess(holder.Group, host, null), cancellation);
        var db = session.Db;
        var members = await HostCircle.LockedAsync(session, cancellation);
        if (members.SingleOrDefault(member => member.HostId == host) is { } known
            && await db.HostInvitations.AnyAsync(row => row.Id == holder.Invitation, cancellation))
        {
            // Whoever is in already and tries the link leaves it for the person it is meant for.
            return known.GroupId;
        }

        var invitation = await db.HostInvitations.AsNoTracking()
            .SingleOrDefaultAsync(row => row.Id == holder.Invitation, cancellation);
        if (invitation is null || !await HostCircle.EndAsync(session, holder.Invitation, cancellation))
        {
            return null;
        }

        db.Memberships.Add(new GroupMembership(holder.Group, host, invitation.Role, invitation.SeesNotes));
        db.Guests.Add(new Guest(holder.Group, GuestId.New(), hostName, PortionClass.Adult, host));
        await session.CommitAsync(cancellation);
        return holder.Group;
    }
}
