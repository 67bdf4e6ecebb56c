using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Nights.Tests.Plans;

/// <summary>What tests of saved plans have in common.</summary>
public abstract class PlannerTest(ClassDatabase database) : NightsTest(database)
{
    /// <summary>Plans everything that is asked for by now.</summary>
    protected async Task PlanAllAsync(NightsApp? by = null)
    {
        var planner = by ?? App;
        await planner.StartPlanningAsync();
        await UntilAsync(async () => (await QueuedAsync()).Count == 0, "every night is planned");
    }

    /// <summary>A planned night with one guest who comes.</summary>
    protected async Task<GuestNight> OnTheNightAsync()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming());
        await PlanAllAsync();
        return night;
    }

    protected Task UntilPlannedAsync(NightId night) => UntilAsync(
        async () => !(await QueuedAsync()).Contains($"{night.Value}"), "the night is planned");

    protected Task<List<string>> QueuedAsync() =>
        Rows.ReadAsync(
            Database.AdminConnectionString,
            // Rows that wait for a time of mixing to come ask for nothing yet.
            $"select night_id from replan_queue where requested_at <= '{InstantPattern.ExtendedIso.Format(App.Clock.GetCurrentInstant() + Duration.FromSeconds(1))}'");

    internal async Task<SavedPlan?> SavedAsync(GuestNight night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation);
        return await session.Db.Plans.AsNoTracking().SingleOrDefaultAsync(plan => plan.NightId == night.Night, Cancellation);
    }

    protected async Task<NightSnapshot> SnapshotAsync(GuestNight night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation);
        return (await App.Get<NightSnapshots>().LoadAsync(session, night.Night, Cancellation))!;
    }

    /// <summary>Of what the night would be planned from now.</summary>
    protected async Task<string> FingerprintAsync(GuestNight night) =>
        PlanJson.Fingerprint(await SnapshotAsync(night), SharedFolder.Tables);

    protected Task<int> SpoilAsync(GuestNight night, string set) => Rows.TellAsync(
        Database.AdminConnectionString, $"update plans set {set} where night_id = '{night.Night.Value}'");
}
