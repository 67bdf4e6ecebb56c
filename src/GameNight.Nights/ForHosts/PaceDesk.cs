using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>How long work takes here.</summary>
/// <param name="Seen">By the taps of past nights; empty when none tells.</param>
/// <param name="Kept">What nights are planned with instead of the table; empty for nothing.</param>
public sealed record PaceView(IReadOnlyList<LearnedPace> Seen, IReadOnlyList<StepPace> Kept);

/// <summary>What the taps of past nights teach of the work, and whether nights are planned with it.</summary>
public sealed class PaceDesk
{
    /// <summary>Hands change over the years: the newest nights tell.</summary>
    public const int NewestNights = 12;

    private readonly GroupSessions _sessions;
    private readonly KitchenDesk _kitchen;
    private readonly ReferenceTables _tables;
    private readonly IClock _clock;

    internal PaceDesk(GroupSessions sessions, KitchenDesk kitchen, ReferenceTables tables, IClock clock)
    {
        _sessions = sessions;
        _kitchen = kitchen;
        _tables = tables;
        _clock = clock;
    }

    /// <summary>A night that is still going on tells nothing yet.</summary>
    public async Task<PaceView> PaceAsync(GroupAccess access, CancellationToken cancellation)
    {
        var (facts, _) = await _kitchen.KitchenAsync(access, cancellation);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var (db, now) = (session.Db, _clock.GetCurrentInstant());
        var taps = (await db.LiveTaps.AsNoTracking().Where(row => row.TakenBackAt == null && row.At < now)
            .OrderBy(row => row.At).ThenBy(row => row.Id).ToListAsync(cancellation)).ToLookup(row => row.NightId, row => row.Mark);
        List<NightId> newest = [.. taps.OrderByDescending(night => night.Max(mark => mark.At)).Take(NewestNights).Select(night => night.Key)];
        var plans = await db.Plans.AsNoTracking().Where(row => newest.Contains(row.NightId)).ToListAsync(cancellation);
        return new PaceView(
            PaceSeen.Learn(
                plans.Select(row => PlanBook.Read(row) is { } plan && plan.Timeline.LastPieAt <= now
                    ? PaceSeen.Of(plan, [.. taps[row.NightId]], facts.Kitchen.Kneading, _tables.Steps)
                    : []),
                _tables.Steps),
            facts.Kitchen.Pace ?? []);
    }

    /// <summary>Plans the nights to come with what was seen until now. Safe to repeat.</summary>
    public async Task<SaveResult> KeepAsync(GroupAccess access, CancellationToken cancellation) =>
        await SetAsync(access, [.. (await PaceAsync(access, cancellation)).Seen.Select(seen => new StepPace(seen.Step, seen.Minutes))], cancellation);

    /// <summary>Plans the nights to come by the table again. Safe to repeat.</summary>
    public Task<SaveResult> ForgetAsync(GroupAccess access, CancellationToken cancellation) => SetAsync(access, [], cancellation);

    private async Task<SaveResult> SetAsync(GroupAccess access, IReadOnlyList<StepPace> pace, CancellationToken cancellation)
    {
        var (facts, version) = await _kitchen.KitchenAsync(access, cancellation);
        return await _kitchen.SetKitchenAsync(
            access, facts with { Kitchen = facts.Kitchen with { Pace = pace.Count > 0 ? pace : null } }, version, cancellation);
    }
}
