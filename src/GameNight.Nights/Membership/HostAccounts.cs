using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Membership;

/// <summary>What the sign-in pages need to know of accounts beyond what the identity services tell.</summary>
public sealed class HostAccounts
{
    private readonly GroupSessions _sessions;

    internal HostAccounts(GroupSessions sessions)
    {
        _sessions = sessions;
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
            await using var session = await OpenAsync(membership, cancellation);
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
            if (await LeaveAsync(membership, cancellation) is { } group)
            {
                return new AccountRemoval.OnlyOwner([group]);
            }
        }

        await using var db = await _sessions.OpenGlobalAsync(cancellation);
        await db.Users.Where(account => account.Id == host.Value).ExecuteDeleteAsync(cancellation);
        return new AccountRemoval.Removed();
    }

    /// <returns>The group when it cannot be left, otherwise null.</returns>
    private async Task<GroupLine?> LeaveAsync(GroupMembership membership, CancellationToken cancellation)
    {
        await using var session = await OpenAsync(membership, cancellation);

        // Two owners who leave at once wait for each other: one of them stays.
        await session.Db.Database.ExecuteSqlAsync($"select 1 from groups for update", cancellation);
        var rows = await session.Db.Memberships.Where(row => row.HostId == membership.HostId).ToListAsync(cancellation);
        if (rows.Exists(row => row.Role == HostRole.Owner) && !await HasOtherOwnerAsync(session, membership.HostId, cancellation))
        {
            return await LineAsync(session, cancellation);
        }

        foreach (var guest in await session.Db.Guests.Where(guest => guest.HostId == membership.HostId).ToListAsync(cancellation))
        {
            guest.BelongTo(null);
        }

        session.Db.Memberships.RemoveRange(rows);
        await session.CommitAsync(cancellation);
        return null;
    }

    private async Task<IEnumerable<GroupMembership>> OwnedAsync(HostId host, CancellationToken cancellation) =>
        (await _sessions.MembershipsOfAsync(host, cancellation)).Where(membership => membership.Role == HostRole.Owner);

    private Task<GroupSession> OpenAsync(GroupMembership membership, CancellationToken cancellation) => _sessions.OpenAsync(
        new GroupAccess(membership.GroupId, membership.HostId, membership.Role, membership.SeesNotes), cancellation);

    private static Task<bool> HasOtherOwnerAsync(GroupSession session, HostId host, CancellationToken cancellation) =>
        session.Db.Memberships.AnyAsync(row => row.Role == HostRole.Owner && row.HostId != host, cancellation);

    private static async Task<GroupLine> LineAsync(GroupSession session, CancellationToken cancellation)
    {
        var group = await session.Db.Groups.AsNoTracking().SingleAsync(cancellation);
        return new GroupLine(group.Id, group.Name, group.Zone, HostRole.Owner);
    }
}
