using System.Text.Json;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Plans;

/// <summary>
/// Records that the dough of a night is begun, with what was known then. Whoever writes answers or records takes the night's
/// turn first, so an answer is either in the record or late, never neither.
/// </summary>
internal sealed class DoughCommitments(NightSnapshots snapshots)
{
    /// <summary>From mixing to serving there is this much more than the cold ferment at the very most.</summary>
    private static readonly Duration BesidesTheCold = Duration.FromHours(12);

    /// <summary>Everybody who answers, commits or moves one night does so one after the other, until the session ends.</summary>
    public static Task TakeTurnAsync(GroupSession session, NightId night, CancellationToken cancellation) =>
        session.Db.Database.ExecuteSqlAsync(
            $"select 1 from nights where group_id = {session.GroupId.Value} and id = {night.Value} for no key update",
            cancellation);

    /// <summary>
    /// Records what nobody recorded although the time of mixing has passed, within the session's commit. To be called before
    /// anything of the night is changed.
    /// </summary>
    /// <returns>True when the dough is begun, recorded or not.</returns>
    public async Task<bool> IsBegunAsync(GroupSession session, NightId id, Instant now, CancellationToken cancellation)
    {
        var db = session.Db;
        if (await db.CommittedDoughs.AnyAsync(row => row.NightId == id, cancellation))
        {
            return true;
        }

        var saved = await db.Plans.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        if (!(saved?.DoughCommitment <= now)
            || await db.Nights.AnyAsync(row => row.Id == id && row.CancelledAt != null, cancellation)
            || await snapshots.LoadAsync(session, id, cancellation) is not { } snapshot
            || !IsWithinReach(saved.DoughCommitment.Value, snapshot.ServeAt, snapshot.ColdFerment.Longest))
        {
            return false;
        }

        if (PlanBook.Read(saved) is { } plan && BegunDough.Of(snapshot, plan) is not null)
        {
            db.CommittedDoughs.Add(Write(session.GroupId, id, now, by: null, snapshot, plan));
        }

        return true;
    }

    /// <summary>A dough mixed then can still be baked for a night served then; otherwise another one is planned.</summary>
    public static bool IsWithinReach(Instant mixing, Instant serveAt, Duration longestCold) =>
        serveAt > mixing && serveAt - mixing <= longestCold + BesidesTheCold;

    public static CommittedDough Write(
        GroupId group, NightId night, Instant at, HostId? by, NightSnapshot snapshot, NightPlan plan) => new(
        group,
        night,
        at,
        by,
        SavedPlan.CurrentEnvelope,
        JsonSerializer.Serialize(snapshot, PlanJson.Options),
        JsonSerializer.Serialize(plan, PlanJson.Options));

    public static PlannedNight Read(CommittedDough dough) => new(
        JsonSerializer.Deserialize<NightSnapshot>(dough.Snapshot, PlanJson.Options)!,
        JsonSerializer.Deserialize<NightPlan>(dough.Plan, PlanJson.Options)!);
}
