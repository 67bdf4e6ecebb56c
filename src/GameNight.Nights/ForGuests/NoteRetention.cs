using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>
/// Keeps the word given with the consent: must-nots and notes are erased <see cref="DietaryNote.KeptDays"/> days after the
/// night. Safe to run as often as one likes.
/// </summary>
internal sealed partial class NoteRetention(GroupSessions sessions, IClock clock, ILogger<NoteRetention> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromHours(1);

    /// <returns>How many notes were erased.</returns>
    public async Task<int> EraseAsync(CancellationToken cancellation)
    {
        var erased = 0;
        foreach (var (group, night) in await NightsPastAsync(cancellation))
        {
            await using var session = await sessions.OpenAsync(new GroupAccess(group, null, null), cancellation);
            erased += await session.Db.DietaryNotes.Where(note => note.NightId == night).ExecuteDeleteAsync(cancellation);
            await session.CommitAsync(cancellation);
        }

        NightsTelemetry.Erased(erased);
        return erased;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await EraseAsync(stoppingToken);
                await Task.Delay(Pause, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (NightsUnavailableException fault)
            {
                SayNotErased(log, fault);
                await Task.Delay(TimeSpan.FromMinutes(1), stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    /// <summary>The directory of links knows every night with guests, across groups, and when its links end.</summary>
    private async Task<IReadOnlyList<(GroupId Group, NightId Night)>> NightsPastAsync(CancellationToken cancellation)
    {
        var linksEndBefore = clock.GetCurrentInstant() - Duration.FromDays(DietaryNote.KeptDays) + LinkDirectory.KeptAfterNight;
        await using var db = await sessions.OpenGlobalAsync(cancellation);
        var nights = await db.Links.AsNoTracking()
            .Where(link => link.Scope == LinkScope.Answer && link.ExpiresAt < linksEndBefore)
            .Select(link => new { link.GroupId, link.NightId }).Distinct().ToListAsync(cancellation);
        return [.. nights.Select(night => (night.GroupId, night.NightId!.Value))];
    }

    [LoggerMessage(LogLevel.Warning, "Notes could not be erased now; they will be in the next round.")]
    private static partial void SayNotErased(ILogger log, Exception fault);
}
