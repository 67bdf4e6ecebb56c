using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>How long the oldest message that is due has waited. The app works without mail, so it is degraded and not down.</summary>
internal sealed class MessagesHealth(GroupSessions sessions, Postman postman, IClock clock) : IHealthCheck
{
    public static readonly Duration TooLong = Duration.FromMinutes(15);

    public async Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        try
        {
            await using var db = await sessions.OpenGlobalAsync(cancellationToken);
            var age = await AgeAsync(db, clock.GetCurrentInstant(), cancellationToken);
            NightsTelemetry.OutboxAge(age);
            return !postman.IsWell ? HealthCheckResult.Degraded("messages are not looked after")
                : age > TooLong ? HealthCheckResult.Degraded("messages have waited too long")
                : HealthCheckResult.Healthy();
        }
        catch (Exception fault) when (fault is OperationCanceledException || NightsUnavailableException.IsMeantBy(fault))
        {
            // The other check says so.
            return HealthCheckResult.Degraded("the database does not answer");
        }
    }

    /// <summary>Zero when nothing is due.</summary>
    public static async Task<Duration> AgeAsync(GameNightDb db, Instant now, CancellationToken cancellation)
    {
        var oldest = await db.PostQueue.AsNoTracking().Where(row => row.DueAt < now)
            .OrderBy(row => row.DueAt).Select(row => (Instant?)row.DueAt).FirstOrDefaultAsync(cancellation);
        return oldest is { } due ? now - due : Duration.Zero;
    }
}
