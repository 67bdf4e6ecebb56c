using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
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

    /// <summary>Between shopping and the first of the dough: the times that were promised are those of every step of it.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Once_shopping_has_begun_what_is_mixed_ahead_or_woken_keeps_its_time_too(bool isAhead)
    {
        var night = await App.OpenNightForOneGuestAsync();
        var facts = (await App.ViewAsync(night.Group, night.Night)).Facts;
        var recipe = (await App.Kitchen.RecipesAsync(night.Group.Access, Cancellation)).Single(one => one.Id == facts.Formula);
        var formula = isAhead
            ? recipe.Formula with { Preferment = new Preferment("Sponge", new Share(0.2), new Share(1), Duration.FromHours(12), new Share(0.3)) }
            : recipe.Formula with { Yeast = YeastForm.ActiveDry, Preferment = null };
        Assert.IsType<SaveResult.Saved>(await App.Kitchen.SetRecipeAsync(night.Group.Access, recipe.Id, recipe.Name, formula, recipe.Shape, recipe.Version, Cancellation));
        await App.AnswerAsync(night.Link, Answers.Coming());
        await PlanAllAsync();
        var before = await DoughAsync();
        Assert.Contains(before, step => step.Kind == (isAhead ? StepKind.Preferment : StepKind.WakeYeast));

        App.Clock.Reset((await SavedAsync(night))!.AnswerBy!.Value + Duration.FromMinutes(2));
        await App.AnswerAsync(night.Link, Answers.Coming(revision: 1, companions: 1));
        await UntilPlannedAsync(night.Night);

        var plan = PlanBook.Read((await SavedAsync(night))!)!;
        Assert.Empty(plan.Timeline.Conflicts.OfType<ChosenMixTimeDoesNotFit>());
        Assert.Equal(before.Select(step => (step.Id, step.Start)), (await DoughAsync()).Select(step => (step.Id, step.Start)));

        async Task<List<TimelineStep>> DoughAsync() => [.. PlanBook.Read((await SavedAsync(night))!)!.Timeline.Steps
            .Where(step => step.Kind is StepKind.Preferment or StepKind.WakeYeast or StepKind.Mix && step.Number <= 1)];
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
