using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Tests.Plans;

public sealed class DoughCommitmentTests(ClassDatabase database) : PlannerTest(database)
{
    [Fact]
    public async Task A_host_who_commits_fixes_the_dough_for_all_that_comes_later()
    {
        var night = await PlannedAsync();
        var before = (await PlanAsync(night)).Plan!;

        Assert.IsType<CommitResult.Done>(await App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation));
        Assert.IsType<AnswerResult.RecordedAsLateChange>(await App.AnswerAsync(night.Link, Answers.Coming(revision: 1, companions: 2)));
        await App.Nights.OverruleAsync(night.Group.Access, night.Night, hand => hand with { Pies = new PieCount(9) }, Cancellation);
        await UntilPlannedAsync(night.Night);

        var after = await PlanAsync(night);
        Assert.Equal(Frozen(before), Frozen(after.Plan!));
        var change = Assert.Single(after.Late!.Guests);
        Assert.Equal((LateChangeKind.Changed, 1, 3), (change.Kind, change.Then.Heads, change.Now.Heads));
        var commitment = (await App.ViewAsync(night.Group, night.Night)).Commitment!;
        Assert.Equal(("Hana", true), (commitment.By, commitment.CanBeTakenBack));
    }

    [Fact]
    public async Task Two_hosts_who_commit_at_once_make_one_record()
    {
        var night = await PlannedAsync();

        var results = await Task.WhenAll(Enumerable.Range(0, 6)
            .Select(_ => App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation)));

        Assert.All(results, result => Assert.IsType<CommitResult.Done>(result));
        Assert.NotNull(await RecordAsync(night));
    }

    [Fact]
    public async Task An_answer_during_the_commit_is_either_in_the_record_or_late()
    {
        for (var round = 0; round < 6; round++)
        {
            var night = await PlannedAsync();

            var answering = App.AnswerAsync(night.Link, Answers.NotComing(revision: 1));
            var committing = App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation);
            await Task.WhenAll(answering, committing);

            var isLate = await answering is AnswerResult.RecordedAsLateChange;
            if (await committing is CommitResult.PlanIsBeingRedone)
            {
                // The answer was first: what was on the screen was not the newest.
                Assert.False(isLate);
                Assert.Null(await RecordAsync(night));
                continue;
            }

            var then = System.Text.Json.JsonSerializer.Deserialize<NightSnapshot>((await RecordAsync(night))!.Snapshot, PlanJson.Options)!;
            var known = then.Guests.Single(guest => guest.Id == night.Guest.ToString()).Answer;
            Assert.True(isLate);
            Assert.Equal(AnswerState.Coming, known);
        }
    }

    [Fact]
    public async Task A_commitment_can_be_taken_back_and_the_dough_follows_the_answers_again()
    {
        var night = await PlannedAsync();
        await App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation);

        Assert.IsType<CommitResult.Done>(await App.Doughs.TakeBackAsync(night.Group.Access, night.Night, Cancellation));
        Assert.IsType<CommitResult.Done>(await App.Doughs.TakeBackAsync(night.Group.Access, night.Night, Cancellation));

        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, Answers.Coming(revision: 1, companions: 2)));
        Assert.Null(await RecordAsync(night));
        Assert.Null((await SnapshotAsync(night)).Begun);
    }

    [Fact]
    public async Task A_commitment_cannot_be_taken_back_once_mixing_is_due()
    {
        var night = await PlannedAsync();
        await App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation);
        var mixing = (await SavedAsync(night))!.DoughCommitment!.Value;
        App.Clock.Reset(mixing);

        var result = await App.Doughs.TakeBackAsync(night.Group.Access, night.Night, Cancellation);

        Assert.Equal(new CommitResult.MixingIsDue(mixing), result);
        Assert.NotNull(await RecordAsync(night));
    }

    [Fact]
    public async Task A_time_of_mixing_that_passes_by_itself_is_recorded_by_the_planner()
    {
        var night = await PlannedAsync();
        App.Clock.Reset((await SavedAsync(night))!.DoughCommitment!.Value + Duration.FromSeconds(2));

        await UntilAsync(async () => await RecordAsync(night) is not null, "the dough is recorded");

        Assert.Null((await RecordAsync(night))!.By);
        Assert.Null((await App.ViewAsync(night.Group, night.Night)).Commitment!.By);
    }

    [Fact]
    public async Task An_answer_that_comes_before_the_planner_noticed_is_late_and_not_in_the_record()
    {
        var night = await PlannedAsync();
        var mixing = (await SavedAsync(night))!.DoughCommitment!.Value;
        App.Clock.Reset(mixing + Duration.FromMilliseconds(1));

        var result = await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1));

        Assert.IsType<AnswerResult.RecordedAsLateChange>(result);
        var then = System.Text.Json.JsonSerializer.Deserialize<NightSnapshot>((await RecordAsync(night))!.Snapshot, PlanJson.Options)!;
        Assert.Equal(AnswerState.Coming, then.Guests.Single(guest => guest.Id == night.Guest.ToString()).Answer);
    }

    [Fact]
    public async Task Nothing_is_committed_while_the_plan_on_the_screen_is_not_the_newest()
    {
        var night = await App.OpenNightForOneGuestAsync();

        Assert.IsType<CommitResult.PlanIsBeingRedone>(await App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation));
        Assert.Null(await RecordAsync(night));
    }

    [Fact]
    public async Task A_night_moved_out_of_reach_lets_its_dough_go()
    {
        var night = await PlannedAsync();
        await App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation);
        var view = await App.ViewAsync(night.Group, night.Night);

        var near = Assert.IsType<NightResult.Kept>(await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, view.Facts with { ServeAt = view.Facts.ServeAt.PlusHours(3) }, view.Version, Cancellation));
        view = await App.ViewAsync(night.Group, night.Night);
        var far = Assert.IsType<NightResult.Kept>(await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, view.Facts with { ServeAt = view.Facts.ServeAt.PlusDays(14) }, view.Version, Cancellation));

        Assert.Equal((false, true), (near.DoughIsLetGo, far.DoughIsLetGo));
        Assert.NotNull(view.Commitment);
        Assert.Null(await RecordAsync(night));
    }

    [Fact]
    public async Task A_cancelled_night_begins_no_dough_by_itself_and_is_planned_anew_when_it_takes_place_after_all()
    {
        var night = await PlannedAsync();
        var mixing = (await SavedAsync(night))!.DoughCommitment!.Value;
        await App.Nights.CancelAsync(night.Group.Access, night.Night, Cancellation);
        App.Clock.Reset(mixing + Duration.FromHours(1));
        await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation);
        await UntilPlannedAsync(night.Night);

        Assert.Null(await RecordAsync(night));
        Assert.IsType<CommitResult.Cancelled>(await App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation));

        await App.Nights.ReinstateAsync(night.Group.Access, night.Night, Cancellation);
        await UntilPlannedAsync(night.Night);

        Assert.Null(await RecordAsync(night));
        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, Answers.Coming(revision: 1)));
    }

    private async Task<GuestNight> PlannedAsync()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming());
        await PlanAllAsync();
        return night;
    }

    private async Task<PlanView> PlanAsync(GuestNight night) =>
        (await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!;

    private async Task<CommittedDough?> RecordAsync(GuestNight night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation);
        return await session.Db.CommittedDoughs.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == night.Night, Cancellation);
    }

    private static string Frozen(NightPlan plan) =>
        PlanJson.Canonical(new { plan.Dough, plan.Yeast, plan.Water, plan.Timeline.DoughCommitment });
}
