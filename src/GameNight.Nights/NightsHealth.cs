using GameNight.Nights.Plans;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace GameNight.Nights;

/// <summary>Ready: the database answers, is migrated to the end, and the replanner is alive.</summary>
internal sealed class NightsHealth(GroupSessions sessions, Replanner replanner) : IHealthCheck
{
    private static readonly TimeSpan Deadline = TimeSpan.FromSeconds(3);

    public async Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        deadline.CancelAfter(Deadline);
        try
        {
            await using var db = await sessions.OpenGlobalAsync(deadline.Token);
            var pending = await db.Database.GetPendingMigrationsAsync(deadline.Token);
            return pending.Any() ? HealthCheckResult.Unhealthy("migrations are pending")
                : !replanner.IsWell ? HealthCheckResult.Unhealthy("the planner is failing")
                : HealthCheckResult.Healthy();
        }
        catch (Exception fault) when (fault is OperationCanceledException || NightsUnavailableException.IsMeantBy(fault))
        {
            return HealthCheckResult.Unhealthy("the database does not answer");
        }
    }
}
