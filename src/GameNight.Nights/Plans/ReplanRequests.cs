using System.Threading.Channels;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Plans;

/// <summary>
/// Asks for new plans: a row in the same commit as the change, then a wake-up. A lost wake-up costs seconds, never a plan.
/// </summary>
internal sealed class ReplanRequests(IClock clock, NightChanges changes)
{
    /// <summary>A night is replanned until it is this long over.</summary>
    private static readonly Period Aftermath = Period.FromDays(1);

    /// <summary>
    /// A row asks for a plan from its time on: now, or when mixing is due. Requests made while the clock stands still are
    /// told apart by parts of this.
    /// </summary>
    public static readonly Duration Soon = Duration.FromSeconds(1);

    private readonly Channel<bool> _wake = Channel.CreateBounded<bool>(
        new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    public ChannelReader<bool> WakeUps => _wake.Reader;

    public void Night(GroupSession session, NightId night) => session.RequestPlan(night, clock.GetCurrentInstant());

    /// <summary>Kitchen, dough or menu changed: every night of the group that is still to come.</summary>
    public async Task UpcomingNightsAsync(GroupSession session, CancellationToken cancellation)
    {
        var since = clock.GetCurrentInstant().InUtc().LocalDateTime - Aftermath;
        var nights = await session.Db.Nights.AsNoTracking()
            .Where(night => night.ServeAt >= since).Select(night => night.Id).ToListAsync(cancellation);
        foreach (var night in nights)
        {
            Night(session, night);
        }
    }

    /// <summary>After the commit: start planning, and let open pages show that something is under way.</summary>
    public void Wake(NightId? night = null)
    {
        _wake.Writer.TryWrite(true);
        if (night is { } changed)
        {
            changes.Publish(changed);
        }
    }
}
