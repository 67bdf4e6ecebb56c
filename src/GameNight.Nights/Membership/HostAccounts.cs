using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Membership;

/// <summary>What the sign-in pages need to know of accounts beyond what the identity services tell.</summary>
public sealed class HostAccounts
{
    private readonly GroupSessions _sessions;
    private readonly HostCircle _circle;

    internal HostAccounts(GroupSessions sessions, HostCircle circle)
    {
        _sessions = sessions;
        _circle = circle;
    }

    /// <summary>True on a fresh installation: then the first account is made with the code printed at start.</summary>
    public async Task<bool> AreNoneAsync(CancellationToken cancellation)
    {
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        return !await db.Users.AnyAsync(cancellation);
    }

    public async Task<string?> NameOfAsync(HostId host, CancellationToken cancellation)
    {
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        return await db.Users.AsNoTracking().Where(account => account.Id == host.Value)
            .Select(account => account.DisplayName).SingleOrDefaultAsync(cancellation);
    }

    /// <summary>
    /// True while the sign-in has not been ended: the account is there, and nobody was signed out everywhere since.
    /// </summary>
    /// <param name="stamp">The security stamp that the sign-in carries.</param>
    public async Task<bool> IsStillSignedInAsync(HostId host, string? stamp, CancellationToken cancellation)
    {
        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        return stamp is not null
            && await db.Users.AnyAsync(account => account.Id == host.Value && account.SecurityStamp == stamp, cancellation);
    }

    /// <summary>Groups that would be left without an owner.</summary>
    public async Task<IReadOnlyList<GroupLine>> OnlyOwnerOfAsync(HostId host, CancellationToken cancellation)
    {
        var groups = new List<GroupLine>();
        foreach (var membership in await OwnedAsync(host, cancellation))
        {
            await using var session = await _sessions.OpenAsync(AccessOf(membership), cancellation);
            if (!await HasOtherOwnerAsync(session, host, cancellation))
            {
                groups.Add(await LineAsync(session, cancellation));
            }
        }

        return groups;
    }

    /// <summary>
    /// The host leaves their groups, where they stay known as guests, and the account goes with everything that opens it.
    /// Safe to repeat when the database went away in between.
    /// </summary>
    public async Task<AccountRemoval> RemoveAsync(HostId host, CancellationToken cancellation)
    {
        // Asked before anything is left, so that a refusal usually changes nothing.
        if (await OnlyOwnerOfAsync(host, cancellation) is { Count: > 0 } groups)
        {
            return new AccountRemoval.OnlyOwner(groups);
        }

        foreach (var membership in await _sessions.MembershipsOfAsync(host, cancellation))
        {
            // Meanwhile the other owner may have left: then this one is the last.
            if (await _circle.RemoveAsync(AccessOf(membership), host, cancellation) is HostChange.LastOwner)
            {
                await using var session = await _sessions.OpenAsync(AccessOf(membership), cancellation);
                return new AccountRemoval.OnlyOwner([await LineAsync(session, cancellation)]);
            }
        }

        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        await db.Users.Where(account => account.Id == host.Value).ExecuteDeleteAsync(cancellation);
        return new AccountRemoval.Removed();
    }

    private async Task<IEnumerable<GroupMembership>> OwnedAsync(HostId host, CancellationToken cancellation) =>
        (await _sessions.MembershipsOfAsync(host, cancellation)).Where(membership => membership.Role == HostRole.Owner);

    private static GroupAccess AccessOf(GroupMembership membership) =>
        new(membership.GroupId, membership.HostId, membership.Role, membership.SeesNotes);

    private static Task<bool> HasOtherOwnerAsync(GroupSession session, HostId host, CancellationToken cancellation) =>
        session.Db.Memberships.AnyAsync(row => row.Role == HostRole.Owner && row.HostId != host, cancellation);

    private static async Task<GroupLine> LineAsync(GroupSession session, CancellationToken cancellation)
    {
        var group = await session.Db.Groups.AsNoTracking().SingleAsync(cancellation);
        return new GroupLine(group.Id, group.Name, group.Zone, HostRole.Owner);
    }
}
