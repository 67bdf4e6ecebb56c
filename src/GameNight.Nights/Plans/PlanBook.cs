using System.Text.Json;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Plans;

/// <summary>A night to plan, and the moment from which steps may be placed.</summary>
internal sealed record PlanningTask(NightSnapshot Night, Instant AsOf, string Fingerprint);

/// <summary>Saved plans: read with names joined, replaced whole, and found stale.</summary>
internal sealed class PlanBook(GroupSessions sessions, NightSnapshots snapshots, NightPlanner planner, IClock clock)
{
    /// <summary>From mixing to serving there is this much more than the cold ferment at the very most.</summary>
    private static readonly Duration BesidesTheCold = Duration.FromHours(12);

    /// <returns>What to plan, or null when the night is gone.</returns>
    public async Task<PlanningTask?> TaskAsync(GroupId group, NightId night, CancellationToken cancellation)
    {
        await using var session = await sessions.OpenAsync(new GroupAccess(group, null, null), cancellation);
        var snapshot = await snapshots.LoadAsync(session, night, cancellation);
        if (snapshot is null)
        {
            return null;
        }

        var saved = await session.Db.Plans.AsNoTracking().Where(row => row.NightId == night)
            .Select(row => new { row.AnswerBy, row.DoughCommitment }).SingleOrDefaultAsync(cancellation);
        var fingerprint = PlanJson.Fingerprint(snapshot, planner.Tables);
        var now = clock.GetCurrentInstant();

        // Once shopping has begun the dough keeps the times it was promised: planning on from now would only say that it
        // is too late to begin what is already under way.
        return saved is { AnswerBy: { } begun, DoughCommitment: { } mixing } && begun <= now
            && snapshot.ServeAt - mixing <= snapshot.ColdFerment.Longest + BesidesTheCold
            ? new PlanningTask(snapshot with { ByHand = snapshot.ByHand with { MixAt = mixing } }, begun, fingerprint)
            : new PlanningTask(snapshot, now, fingerprint);
    }

    public async Task SaveAsync(
        GroupId group, NightId night, string fingerprint, NightPlan plan, Instant madeAt, CancellationToken cancellation)
    {
        await using var session = await sessions.OpenAsync(new GroupAccess(group, null, null), cancellation);
        if (!await session.Db.Nights.AnyAsync(row => row.Id == night, cancellation))
        {
            return;
        }

        var saved = await session.Db.Plans.SingleOrDefaultAsync(row => row.NightId == night, cancellation);
        if (saved is null)
        {
            saved = new SavedPlan(group, night);
            session.Db.Plans.Add(saved);
        }

        saved.Replace(fingerprint, plan, madeAt, JsonSerializer.Serialize(plan, PlanJson.Options));
        await session.CommitAsync(cancellation);
    }

    /// <summary>
    /// A plan is stale when it was made from something else, or when a moment has passed that it counted on: then what it
    /// says is still shown, and a new one is made.
    /// </summary>
    public static bool IsStale(SavedPlan plan, string fingerprint, Instant now) =>
        plan.Fingerprint != fingerprint
        || plan.EngineVersion != NightPlanner.EngineVersion
        || Deadlines(plan).Any(deadline => deadline > plan.MadeAt && deadline <= now && plan.MadeAt < now - Duration.FromMinutes(1));

    /// <returns>Null when the stored document cannot be read by this version: it is then made anew.</returns>
    public static NightPlan? Read(SavedPlan plan)
    {
        if (plan.Envelope != SavedPlan.CurrentEnvelope)
        {
            return null;
        }

        try
        {
            return JsonSerializer.Deserialize<NightPlan>(plan.Document, PlanJson.Options);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static IEnumerable<Instant> Deadlines(SavedPlan plan) =>
        new[] { plan.AnswerBy, plan.DoughCommitment }.OfType<Instant>();
}
