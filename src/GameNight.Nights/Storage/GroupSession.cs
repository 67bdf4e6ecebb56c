using System.Data;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using NodaTime;
using Npgsql;

namespace GameNight.Nights.Storage;

/// <summary>Opens sessions. The one place that makes database contexts for group data.</summary>
internal sealed class GroupSessions(IDbContextFactory<GameNightDb> contexts)
{
    /// <summary>Longer than any honest query; a hanging network must not hang a page.</summary>
    private static readonly TimeSpan Deadline = TimeSpan.FromSeconds(10);

    /// <param name="isolation">Repeatable read sees all tables as they stood at one moment.</param>
    /// <exception cref="NightsUnavailableException">The database cannot be reached.</exception>
    public Task<GroupSession> OpenAsync(
        GroupAccess access, CancellationToken cancellation, IsolationLevel isolation = IsolationLevel.ReadCommitted) => OpenedAsync(
        async db =>
        {
            // Single-row saves would otherwise run outside the transaction that carries the group.
            db.Database.AutoTransactionBehavior = AutoTransactionBehavior.Always;
            var transaction = await db.Database.BeginTransactionAsync(isolation, cancellation);
            await EnterAsync(db, access.GroupId, cancellation);
            return new GroupSession(db, transaction, access.GroupId);
        },
        cancellation);

    /// <summary>
    /// Claims the errand that is due longest, and enters its group. Nobody else takes it until the session ends; a process that
    /// dies lets go of it.
    /// </summary>
    /// <param name="nightsOnly">Leaves messages where they are.</param>
    /// <returns>Null when nothing is due.</returns>
    /// <exception cref="NightsUnavailableException">The database cannot be reached.</exception>
    public Task<(GroupSession Session, PostRow Errand)?> ClaimAsync(Instant now, bool nightsOnly, CancellationToken cancellation) =>
        OpenedAsync<(GroupSession, PostRow)?>(
            async db =>
            {
                db.Database.AutoTransactionBehavior = AutoTransactionBehavior.Always;
                var transaction = await db.Database.BeginTransactionAsync(cancellation);
                var due = await db.PostQueue.FromSql(
                    $"""
                     select * from post_queue where due_at <= {now} and (not {nightsOnly} or errand = 'Night')
                     order by due_at limit 1 for update skip locked
                     """).ToListAsync(cancellation);
                if (due is not [var errand])
                {
                    await transaction.DisposeAsync();
                    await db.DisposeAsync();
                    return null;
                }

                await EnterAsync(db, errand.GroupId, cancellation);
                return (new GroupSession(db, transaction, errand.GroupId), errand);
            },
            cancellation);

    /// <summary>A host's own memberships, before any group is entered.</summary>
    /// <exception cref="NightsUnavailableException">The database cannot be reached.</exception>
    public async Task<IReadOnlyList<GroupMembership>> MembershipsOfAsync(HostId host, CancellationToken cancellation)
    {
        var (db, memberships) = await OpenedAsync(
            async db =>
            {
                await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
                await db.Database.ExecuteSqlAsync(
                    $"select set_config('app.host_id', {host.Value.ToString()}, true)", cancellation);
                return (db, await db.Memberships.AsNoTracking().ToListAsync(cancellation));
            },
            cancellation);
        await db.DisposeAsync();
        return memberships;
    }

    /// <summary>A context without any group: accounts, links and the queue of plans to make.</summary>
    /// <exception cref="NightsUnavailableException">The database cannot be reached.</exception>
    public Task<GameNightDb> OpenGlobalAsync(CancellationToken cancellation) => OpenedAsync(
        async db =>
        {
            await db.Database.OpenConnectionAsync(cancellation);
            return db;
        },
        cancellation);

    private static Task<int> EnterAsync(GameNightDb db, GroupId group, CancellationToken cancellation) =>
        db.Database.ExecuteSqlAsync($"select set_config('app.group_id', {group.Value.ToString()}, true)", cancellation);

    private async Task<T> OpenedAsync<T>(Func<GameNightDb, Task<T>> open, CancellationToken cancellation)
    {
        var db = await contexts.CreateDbContextAsync(cancellation);
        try
        {
            db.Database.SetCommandTimeout(Deadline);
            return await open(db);
        }
        catch (Exception fault)
        {
            await db.DisposeAsync();
            if (fault is not NightsUnavailableException && NightsUnavailableException.IsMeantBy(fault))
            {
                throw new NightsUnavailableException(fault);
            }

            throw;
        }
    }
}

/// <summary>
/// One transaction with its group set: row-level security shows and takes rows of this group only. Nothing is kept unless
/// <see cref="CommitAsync"/> is called.
/// </summary>
internal sealed class GroupSession(GameNightDb db, IDbContextTransaction transaction, GroupId groupId) : IAsyncDisposable
{
    private readonly Dictionary<NightId, Instant> _toPlan = [];
    private readonly Dictionary<NightId, Instant> _toLookAfter = [];

    public GroupId GroupId => groupId;
    public GameNightDb Db => db;

    /// <summary>Asks for a new plan of the night, in the same commit as the change that made it stale.</summary>
    public void RequestPlan(NightId night, Instant at) => _toPlan[night] = at;

    /// <summary>Has reminders and thanks of the night looked after from then on, in the same commit.</summary>
    public void LookAfter(NightId night, Instant at) => _toLookAfter[night] = at;

    /// <exception cref="DbUpdateConcurrencyException">Somebody else changed the same record meanwhile.</exception>
    /// <exception cref="NightsUnavailableException">The database cannot be reached; nothing of this session is kept.</exception>
    public async Task CommitAsync(CancellationToken cancellation)
    {
        try
        {
            await db.SaveChangesAsync(cancellation);

            // After the records and in one order everywhere, or two commits could wait for each other.
            foreach (var (night, at) in _toPlan.OrderBy(request => request.Key.Value))
            {
                await QueueAsync(night, at, cancellation);
            }

            foreach (var (night, at) in _toLookAfter.OrderBy(request => request.Key.Value))
            {
                await LookAfterAsync(night, at, cancellation);
            }

            await transaction.CommitAsync(cancellation);
        }
        catch (Exception fault) when (NightsUnavailableException.IsMeantBy(fault))
        {
            throw fault as NightsUnavailableException ?? new NightsUnavailableException(fault);
        }
    }

    /// <summary>Commits new records whose keys their sender made.</summary>
    /// <returns>False when they are there already: sent twice, they count once.</returns>
    /// <inheritdoc cref="CommitAsync"/>
    public async Task<bool> CommitNewAsync(CancellationToken cancellation)
    {
        try
        {
            await CommitAsync(cancellation);
            return true;
        }
        catch (DbUpdateException fault) when (fault.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation })
        {
            return false;
        }
    }

    public async ValueTask DisposeAsync()
    {
        await transaction.DisposeAsync();
        await db.DisposeAsync();
    }

    private Task<int> LookAfterAsync(NightId night, Instant at, CancellationToken cancellation) => db.Database.ExecuteSqlAsync(
        $"""
         insert into post_queue as queue (group_id, subject, errand, due_at) values ({groupId.Value}, {night.Value}, 'Night', {at})
         on conflict (group_id, subject) do update set due_at = least(queue.due_at, excluded.due_at)
         """,
        cancellation);

    // A later request always has a later time, even when clocks disagree or stand still: the planner tells them apart by it.
    // Only a row that waits for the time of mixing, further off than clocks disagree, is brought forward.
    private Task<int> QueueAsync(NightId night, Instant at, CancellationToken cancellation) => db.Database.ExecuteSqlAsync(
        $"""
         insert into replan_queue as queue (group_id, night_id, requested_at) values ({groupId.Value}, {night.Value}, {at})
         on conflict (group_id, night_id) do update
         set requested_at = case
             when queue.requested_at > excluded.requested_at + interval '1 minute' then excluded.requested_at
             else greatest(excluded.requested_at, queue.requested_at + interval '1 microsecond')
         end
         """,
        cancellation);
}
