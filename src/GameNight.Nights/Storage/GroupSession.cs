using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using NodaTime;

namespace GameNight.Nights.Storage;

/// <summary>Opens sessions. The one place that makes database contexts for group data.</summary>
internal sealed class GroupSessions(IDbContextFactory<GameNightDb> contexts)
{
    /// <summary>Longer than any honest query; a hanging network must not hang a page.</summary>
    private static readonly TimeSpan Deadline = TimeSpan.FromSeconds(10);

    public async Task<GroupSession> OpenAsync(GroupAccess access, CancellationToken cancellation)
    {
        var db = await contexts.CreateDbContextAsync(cancellation);
        try
        {
            db.Database.SetCommandTimeout(Deadline);

            // Single-row saves would otherwise run outside the transaction that carries the group.
            db.Database.AutoTransactionBehavior = AutoTransactionBehavior.Always;
            var transaction = await db.Database.BeginTransactionAsync(cancellation);
            await db.Database.ExecuteSqlAsync(
                $"select set_config('app.group_id', {access.GroupId.Value.ToString()}, true)", cancellation);
            return new GroupSession(db, transaction, access.GroupId);
        }
        catch (Exception fault)
        {
            await db.DisposeAsync();
            if (NightsUnavailableException.IsMeantBy(fault))
            {
                throw new NightsUnavailableException(fault);
            }

            throw;
        }
    }

    /// <summary>A context without any group: accounts, links and the queue of plans to make.</summary>
    public Task<GameNightDb> OpenGlobalAsync(CancellationToken cancellation) => contexts.CreateDbContextAsync(cancellation);
}

/// <summary>
/// One transaction with its group set: row-level security shows and takes rows of this group only. Nothing is kept unless
/// <see cref="CommitAsync"/> is called.
/// </summary>
internal sealed class GroupSession(GameNightDb db, IDbContextTransaction transaction, GroupId groupId) : IAsyncDisposable
{
    public GroupId GroupId => groupId;
    public GameNightDb Db => db;

    /// <summary>Asks for a new plan of the night, in the same commit as the change that made it stale.</summary>
    public Task RequestPlanAsync(NightId night, Instant at, CancellationToken cancellation) => db.Database.ExecuteSqlAsync(
        $"""
         insert into replan_queue (group_id, night_id, requested_at) values ({groupId.Value}, {night.Value}, {at})
         on conflict (group_id, night_id) do update set requested_at = excluded.requested_at
         """,
        cancellation);

    /// <exception cref="DbUpdateConcurrencyException">Somebody else changed the same record meanwhile.</exception>
    /// <exception cref="NightsUnavailableException">The database cannot be reached; nothing of this session is kept.</exception>
    public async Task CommitAsync(CancellationToken cancellation)
    {
        try
        {
            await db.SaveChangesAsync(cancellation);
            await transaction.CommitAsync(cancellation);
        }
        catch (Exception fault) when (NightsUnavailableException.IsMeantBy(fault))
        {
            throw new NightsUnavailableException(fault);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await transaction.DisposeAsync();
        await db.DisposeAsync();
    }
}
