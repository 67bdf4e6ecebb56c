using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;

namespace GameNight.Nights.Erasure;

/// <summary>What came of deleting a group.</summary>
public abstract record GroupRemovalResult
{
    private GroupRemovalResult()
    {
    }

    public sealed record Deleted : GroupRemovalResult;

    /// <summary>The name that was typed is not that of the group; nothing was deleted.</summary>
    public sealed record OtherName : GroupRemovalResult;

    public sealed record Gone : GroupRemovalResult;
}

/// <summary>Deletes a group with everything of it. Accounts stay: a host may have other groups.</summary>
public sealed partial class GroupRemoval
{
    private readonly GroupSessions _sessions;
    private readonly ReplanRequests _replans;
    private readonly ILogger<GroupRemoval> _log;

    internal GroupRemoval(GroupSessions sessions, ReplanRequests replans, ILogger<GroupRemoval> log)
    {
        _sessions = sessions;
        _replans = replans;
        _log = log;
    }

    /// <param name="typedName">The group's name as the owner typed it: nobody deletes a group by a slip.</param>
    public async Task<GroupRemovalResult> DeleteAsync(GroupAccess access, string typedName, CancellationToken cancellation)
    {
        access.Demand(HostRole.Owner);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var group = await db.Groups.FromSql($"select * from groups where id = {access.GroupId.Value} for update")
            .SingleOrDefaultAsync(cancellation);
        if (group is null)
        {
            return new GroupRemovalResult.Gone();
        }

        if (!string.Equals(typedName.Trim(), group.Name.Trim(), StringComparison.OrdinalIgnoreCase))
        {
            return new GroupRemovalResult.OtherName();
        }

        var nights = await db.Nights.AsNoTracking().Select(night => night.Id).ToListAsync(cancellation);

        // The global tables know the group by its id alone and are not reached by the database's own deleting. An errand that is
        // being done right now is forgotten by the postman, who finds nothing left.
        await db.Links.Where(link => link.GroupId == access.GroupId).ExecuteDeleteAsync(cancellation);
        await db.ReplanQueue.Where(row => row.GroupId == access.GroupId).ExecuteDeleteAsync(cancellation);
        await db.Database.ExecuteSqlAsync(
            $"""
             delete from post_queue where group_id = {access.GroupId.Value} and subject in (
                 select subject from post_queue where group_id = {access.GroupId.Value} for update skip locked)
             """,
            cancellation);
        db.Groups.Remove(group);
        await session.CommitAsync(cancellation);
        foreach (var night in nights)
        {
            _replans.Wake(night);
        }

        SayDeleted(_log, access.GroupId, access.HostId!.Value);
        return new GroupRemovalResult.Deleted();
    }

    [LoggerMessage(LogLevel.Information, "Group {Group} was deleted by host {Host}.")]
    private static partial void SayDeleted(ILogger log, GroupId group, HostId host);
}
