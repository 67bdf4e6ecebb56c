using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Nights.Plans;

/// <summary>
/// Makes the plans that were asked for, one at a time: solving takes a whole core. The queue is in Postgres, so a restart
/// loses nothing; a change to the night being solved starts it over.
/// </summary>
internal sealed partial class Replanner(
    GroupSessions sessions,
    ReplanRequests requests,
    PlanBook plans,
    NightPlanner planner,
    NightChanges changes,
    IClock clock,
    PlanningEffort effort,
    ILogger<Replanner> log) : BackgroundService
{
    private static readonly TimeSpan Poll = TimeSpan.FromSeconds(5);

    /// <summary>
    /// Between looks at whether the night being solved was changed by another process; changes of this one wake us.
    /// </summary>
    private static readonly TimeSpan Glance = TimeSpan.FromSeconds(1);

    /// <summary>True while the last round went well: for the health check.</summary>
    public bool IsWell { get; private set; } = true;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await RoundAsync(stoppingToken);
                IsWell = true;
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                // The queue is kept; the next round tries again.
                IsWell = false;
                SayRoundFailed(log, fault);
            }

            await WaitAsync(Poll, stoppingToken);
        }
    }

    private async Task RoundAsync(CancellationToken stopping)
    {
        // A night that fails must not keep all others waiting; the next round tries it again.
        var failed = new List<NightId>();
        while (await NextAsync(failed, stopping) is { } row)
        {
            try
            {
                await PlanAsync(row, stopping);
            }
            catch (Exception fault) when (!stopping.IsCancellationRequested && !NightsUnavailableException.IsMeantBy(fault))
            {
                failed.Add(row.NightId);
                SayNightFailed(log, row.NightId, fault);
            }
        }
    }

    /// <summary>Until somebody asks for a plan, or for so long. A wake-up taken here is not lost: the queue says the rest.</summary>
    private async Task WaitAsync(TimeSpan atMost, CancellationToken stopping)
    {
        using var pause = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        pause.CancelAfter(atMost);
        try
        {
            await requests.WakeUps.ReadAsync(pause.Token);
        }
        catch (OperationCanceledException)
        {
            // Time for the poll, or for the end.
        }
    }

    private async Task<ReplanRow?> NextAsync(List<NightId> failed, CancellationToken cancellation)
    {
        var due = clock.GetCurrentInstant() + ReplanRequests.Soon;
        await using var db = await sessions.OpenGlobalAsync(cancellation);
        if (NightsTelemetry.CountsWaiting)
        {
            NightsTelemetry.WaitForPlan(await db.ReplanQueue.CountAsync(cancellation));
        }

        return await db.ReplanQueue.AsNoTracking()
            .Where(row => !failed.Contains(row.NightId) && row.RequestedAt <= due)
            .OrderBy(row => row.RequestedAt).FirstOrDefaultAsync(cancellation);
    }

    private async Task PlanAsync(ReplanRow row, CancellationToken stopping)
    {
        Instant? mixing = null;
        using var run = NightsTelemetry.BeginPlan(row.NightId);
        if (await plans.TaskAsync(row.GroupId, row.NightId, stopping) is { } task)
        {
            using var superseded = CancellationTokenSource.CreateLinkedTokenSource(stopping);
            var watching = WatchAsync(row, superseded);
            try
            {
                var plan = await SolveAsync(row, task, superseded.Token);
                run.Made(plan.SolverSlices);
                mixing = task.Night.Begun is null ? plan.Timeline.DoughCommitment : null;
            }
            catch (OperationCanceledException) when (!stopping.IsCancellationRequested)
            {
                // Something changed meanwhile: the row is still there with a later time, and the next round takes it.
                run.Superseded();
                return;
            }
            finally
            {
                await superseded.CancelAsync();
                await watching;
            }
        }
        else
        {
            run.Settled();
        }

        await DoneAsync(row, mixing, stopping);
        changes.Publish(row.NightId);
    }

    private async Task<NightPlan> SolveAsync(ReplanRow row, PlanningTask task, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var quick = new TaskCompletionSource<NightPlan>(TaskCreationOptions.RunContinuationsAsynchronously);
        var solving = Task.Run(
            () => planner.Plan(task.Night, task.AsOf, effort.Effort, new Relay(quick), cancellation), cancellation);

        if (await Task.WhenAny(quick.Task, solving) == quick.Task)
        {
            await plans.SaveAsync(row.GroupId, row.NightId, task.Fingerprint, await quick.Task, now, cancellation);
            changes.Publish(row.NightId);
        }

        var best = await solving;
        await plans.SaveAsync(row.GroupId, row.NightId, task.Fingerprint, best, now, cancellation);
        return best;
    }

    /// <summary>Ends the solving when the same night was asked for again.</summary>
    private async Task WatchAsync(ReplanRow row, CancellationTokenSource superseded)
    {
        try
        {
            while (true)
            {
                await WaitAsync(Glance, superseded.Token);
                superseded.Token.ThrowIfCancellationRequested();
                await using var db = await sessions.OpenGlobalAsync(superseded.Token);
                var later = await db.ReplanQueue.AsNoTracking().AnyAsync(
                    other => other.GroupId == row.GroupId && other.NightId == row.NightId
                        && other.RequestedAt > row.RequestedAt,
                    superseded.Token);
                if (later)
                {
                    await superseded.CancelAsync();
                }
            }
        }
        catch (OperationCanceledException)
        {
            // Solved, or superseded.
        }
        catch (Exception fault) when (NightsUnavailableException.IsMeantBy(fault))
        {
            // Without the database nobody can have changed the night either.
        }
    }

    /// <param name="mixing">
    /// When the dough is begun unless a host commits before: then the night is looked at again, to record it.
    /// </param>
    private async Task DoneAsync(ReplanRow row, Instant? mixing, CancellationToken cancellation)
    {
        await using var db = await sessions.OpenGlobalAsync(cancellation);
        var done = db.ReplanQueue.Where(other =>
            other.GroupId == row.GroupId && other.NightId == row.NightId && other.RequestedAt <= row.RequestedAt);
        if (mixing is { } due && due > clock.GetCurrentInstant() + ReplanRequests.Soon)
        {
            await done.ExecuteUpdateAsync(rows => rows.SetProperty(other => other.RequestedAt, due), cancellation);
        }
        else
        {
            await done.ExecuteDeleteAsync(cancellation);
        }
    }

    [LoggerMessage(LogLevel.Error, "Planning failed and will be tried again.")]
    private static partial void SayRoundFailed(ILogger log, Exception fault);

    [LoggerMessage(LogLevel.Error, "Planning night {Night} failed and will be tried again.")]
    private static partial void SayNightFailed(ILogger log, NightId night, Exception fault);

    private sealed class Relay(TaskCompletionSource<NightPlan> first) : IProgress<NightPlan>
    {
        public void Report(NightPlan value) => first.TrySetResult(value);
    }
}

/// <summary>How hard the replanner tries for each plan.</summary>
public sealed record PlanningEffort(Effort Effort);
