using System.Text.Json;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Timeline;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Plans;

/// <summary>A night to plan, and the moment from which steps may be placed.</summary>
internal sealed record PlanningTask(NightSnapshot Night, Instant AsOf, string Fingerprint);

/// <summary>Saved plans: read with names joined, replaced whole, and found stale.</summary>
internal sealed class PlanBook(GroupSessions sessions, NightSnapshots snapshots, NightPlanner planner, DoughCommitments doughs, IClock clock)
{
    /// <summary>Records a dough whose time of mixing has passed by itself, and says what there is to plan.</summary>
    /// <returns>Null when the night is gone or cancelled, or its plan is settled.</returns>
    public async Task<PlanningTask?> TaskAsync(GroupId group, NightId night, CancellationToken cancellation)
    {
        await using var session = await sessions.OpenAsync(new GroupAccess(group, null, null), cancellation);
        await DoughCommitments.TakeTurnAsync(session, night, cancellation);
        var now = clock.GetCurrentInstant();
        await doughs.IsBegunAsync(session, night, now, cancellation);
        await session.CommitAsync(cancellation);
        return await TaskAsync(new GroupAccess(group, null, null), night, now, cancellation);
    }

    private async Task<PlanningTask?> TaskAsync(GroupAccess access, NightId night, Instant now, CancellationToken cancellation)
    {
        await using var session = await sessions.OpenAsync(access, cancellation);
        var snapshot = await snapshots.LoadAsync(session, night, cancellation);
        if (snapshot is null || await session.Db.Nights.AnyAsync(row => row.Id == night && row.CancelledAt != null, cancellation))
        {
            return null;
        }

        var saved = await session.Db.Plans.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == night, cancellation);
        var fingerprint = PlanJson.Fingerprint(snapshot, planner.Tables);
        if (IsSettled(saved, snapshot, now))
        {
            return null;
        }

        // Once shopping has begun the dough keeps the times it was promised, also before it is begun: planning on from now
        // would only say that it is too late to begin what is already under way. From then on the snapshot holds it. What a host may
        // set is when mixing begins: a preferment, or yeast that is woken, comes before.
        return snapshot.Begun is null && saved is { AnswerBy: { } begun, DoughCommitment: { } mixing } && begun <= now
            && DoughCommitments.IsWithinReach(mixing, snapshot.ServeAt, snapshot.ColdFerment.Longest)
            ? new PlanningTask(snapshot with { ByHand = snapshot.ByHand with { MixAt = Read(saved)?.Timeline.Begins(StepKind.Mix) ?? mixing } }, begun, fingerprint)
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

        var answerBy = saved.AnswerBy;
        saved.Replace(fingerprint, plan, madeAt, JsonSerializer.Serialize(plan, PlanJson.Options));
        if (saved.AnswerBy != answerBy || await session.Db.Memberships.AnyAsync(row => row.RemindedMinutesAhead != null, cancellation))
        {
            // Reminders of guests and hosts follow from it.
            session.LookAfter(night, madeAt);
        }

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

    /// <summary>
    /// The serving time has passed and there is a plan: nothing better can be planned any more, so what was planned stays.
    /// </summary>
    public static bool IsSettled(SavedPlan? plan, NightSnapshot night, Instant now) =>
        night.ServeAt <= now && plan is not null && Read(plan) is not null;

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
        catch (Exception fault) when (fault is JsonException or NotSupportedException or ArgumentException)
        {
            // Not JSON of a plan, a reason without its kind, or a value that its own type refuses.
            return null;
        }
    }

    private static IEnumerable<Instant> Deadlines(SavedPlan plan) =>
        new[] { plan.AnswerBy, plan.DoughCommitment }.OfType<Instant>();
}
