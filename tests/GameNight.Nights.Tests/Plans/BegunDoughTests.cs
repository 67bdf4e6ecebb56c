using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Plans;

public sealed class BegunDoughTests(ClassDatabase database) : PlannerTest(database)
{
    [Fact]
    public async Task A_late_change_is_planned_around_the_dough_that_is_begun()
    {
        var (night, mixing) = await BegunAsync();

        Assert.IsType<AnswerResult.RecordedAsLateChange>(await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1)));
        await UntilPlannedAsync(night.Night);

        var saved = (await SavedAsync(night))!;
        var plan = PlanBook.Read(saved)!;
        Assert.Equal(await FingerprintAsync(night), saved.Fingerprint);
        Assert.Equal(mixing, saved.DoughCommitment);
        Assert.Equal(mixing, plan.Timeline.Steps.Single(step => step.Kind == StepKind.Mix).Start);
        Assert.Empty(plan.Timeline.Conflicts.OfType<ChosenMixTimeDoesNotFit>());
        Assert.IsType<AnswerResult.RecordedAsLateChange>(await App.AnswerAsync(night.Link, Answers.Coming(revision: 2)));
    }

    [Fact]
    public async Task The_plan_stays_while_the_dough_ferments()
    {
        var (night, _) = await BegunAsync();
        var before = await StartsAsync();

        await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation);
        await UntilPlannedAsync(night.Night);

        Assert.Equal(before, await StartsAsync());

        async Task<IEnumerable<(string, Instant)>> StartsAsync() =>
            PlanBook.Read((await SavedAsync(night))!)!.Timeline.Steps.Select(step => (step.Id, step.Start));
    }

    [Fact]
    public async Task An_own_step_of_the_time_of_the_dough_stands_with_it_until_it_is_taken_out()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming());
        await OverruleAsync(overrides => overrides.WithOwn(new NamedOwnStep("Call the neighbours", new OwnStep(5, Duration.FromMinutes(10), true, After: new StepTie(StepKind.Mix)))));
        await PlanAllAsync();
        var before = (await OwnAsync())!;

        App.Clock.Reset((await SavedAsync(night))!.DoughCommitment!.Value + Duration.FromHours(3));
        await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1));
        await UntilPlannedAsync(night.Night);
        Assert.Equal(before with { CanWait = Duration.Zero }, await OwnAsync());

        await OverruleAsync(overrides => overrides.WithoutOwn(5));
        await UntilPlannedAsync(night.Night);
        Assert.Null(await OwnAsync());

        Task<SaveResult> OverruleAsync(Func<NightOverrides, NightOverrides> change) => App.Nights.OverruleAsync(night.Group.Access, night.Night, change, Cancellation);
        async Task<TimelineStep?> OwnAsync() => PlanBook.Read((await SavedAsync(night))!)!.Timeline.Steps.SingleOrDefault(step => step.Kind == StepKind.Own);
    }

    [Fact]
    public async Task Another_dough_is_begun_when_the_night_moves_out_of_its_reach()
    {
        var (night, mixing) = await BegunAsync();
        var view = await App.ViewAsync(night.Group, night.Night);

        await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, view.Facts with { ServeAt = view.Facts.ServeAt.PlusDays(14) }, view.Version,
            Cancellation);
        await UntilPlannedAsync(night.Night);

        Assert.True((await SavedAsync(night))!.DoughCommitment > mixing + Duration.FromDays(10));
        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1)));
    }

    [Fact]
    public async Task A_dough_stays_begun_when_nothing_more_can_be_planned()
    {
        var (night, mixing) = await BegunAsync();
        var view = await App.ViewAsync(night.Group, night.Night);

        await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, view.Facts with { ServeAt = new LocalDateTime(2026, 12, 11, 6, 0) }, view.Version,
            Cancellation);
        await UntilPlannedAsync(night.Night);

        Assert.Equal(mixing, (await SavedAsync(night))!.DoughCommitment);
        Assert.IsType<AnswerResult.RecordedAsLateChange>(await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1)));
    }

    [Fact]
    public async Task The_plan_of_a_night_that_is_over_is_kept_whatever_changes()
    {
        var (night, _) = await BegunAsync();
        App.Clock.Reset((await App.ViewAsync(night.Group, night.Night)).ServeAt + Duration.FromDays(2));
        var before = (await SavedAsync(night))!.Document;
        var (kitchen, version) = await App.Kitchen.KitchenAsync(night.Group.Access, Cancellation);

        await App.Kitchen.SetKitchenAsync(night.Group.Access, kitchen with { Kitchen = kitchen.Kitchen with { Hands = 3 } }, version, Cancellation);
        await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1));
        var view = (await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!;
        await UntilPlannedAsync(night.Night);

        Assert.NotNull(view.Plan);
        Assert.NotEmpty(view.Plan.Timeline.Steps);
        Assert.Equal(before, (await SavedAsync(night))!.Document);
    }

    /// <summary>A night with one guest who comes, planned, three hours after the dough was begun.</summary>
    private async Task<(GuestNight Night, Instant Mixing)> BegunAsync()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming());
        await PlanAllAsync();
        var mixing = (await SavedAsync(night))!.DoughCommitment!.Value;
        App.Clock.Reset(mixing + Duration.FromHours(3));
        return (night, mixing);
    }
}
