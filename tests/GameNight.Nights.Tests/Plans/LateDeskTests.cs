using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Plans;

public sealed class LateDeskTests(ClassDatabase database) : PlannerTest(database)
{
    private LateDesk Late => App.Get<LateDesk>();

    [Fact]
    public async Task What_is_chosen_is_planned_and_can_be_taken_back()
    {
        var night = await LateCompanionsAsync();
        var before = await ViewAsync(night);
        var rescue = Assert.Single(before.Options.All.OfType<RescueOption>());

        Assert.IsType<LateResult.Done>(await ChooseAsync(night, rescue));
        await UntilPlannedAsync(night.Night);
        var chosen = await ViewAsync(night);

        Assert.Equal(rescue.Dough, chosen.Night.Late!.Rescue);
        Assert.Equal(rescue.Outlook, chosen.Plan!.Pies.Chosen);
        Assert.Equal(rescue.Dough.MixAt, chosen.Plan.Rescue!.MixAt);
        Assert.Empty(chosen.Options.All.OfType<RescueOption>());

        Assert.IsType<LateResult.Done>(await Late.TakeBackAsync(night.Group.Access, night.Night, LateChoice.Rescue, Cancellation));
        await UntilPlannedAsync(night.Night);
        var after = await ViewAsync(night);

        Assert.Null(after.Night.Late);
        Assert.Null(after.Plan!.Rescue);
        Assert.Equal(before.Plan!.Pies.Chosen, after.Plan.Pies.Chosen);
    }

    [Fact]
    public async Task Nothing_is_chosen_by_itself()
    {
        var night = await LateCompanionsAsync();

        var view = await ViewAsync(night);

        Assert.NotEmpty(view.Options.All);
        Assert.Null(view.Night.Late);
        Assert.Equal(view.Plan!.Dough.Balls, view.Plan.Pies.Count.Value.Value);
    }

    [Fact]
    public async Task Chosen_twice_is_chosen_once_and_a_second_choice_stands_beside_the_first()
    {
        var night = await LateCompanionsAsync();
        var options = (await ViewAsync(night)).Options.All;
        var course = options.OfType<CourseOption>().First();

        Assert.IsType<LateResult.Done>(await ChooseAsync(night, course));
        Assert.IsType<LateResult.Done>(await ChooseAsync(night, course));
        Assert.IsType<LateResult.PlanIsBeingRedone>(await ChooseAsync(night, options.OfType<CourseOption>().Last()));
        await UntilPlannedAsync(night.Night);
        var division = (await ViewAsync(night)).Options.All.OfType<RedivideOption>().First();
        Assert.IsType<LateResult.Done>(await ChooseAsync(night, division));

        Assert.Equal(new LateChoices(division.Anew, Course: course.Takes), (await SnapshotAsync(night)).Late);
    }

    [Fact]
    public async Task What_time_went_over_is_not_possible_any_more()
    {
        var night = await LateCompanionsAsync();
        var view = await ViewAsync(night);
        App.Clock.Reset(view.Night.ServeAt - Duration.FromHours(1));

        Assert.IsType<LateResult.NotPossibleAnyMore>(await ChooseAsync(night, view.Options.All.OfType<RescueOption>().Single()));
        Assert.Null((await SnapshotAsync(night)).Late);
    }

    [Fact]
    public async Task A_commitment_that_is_taken_back_takes_the_choices_with_it()
    {
        var night = await LateCompanionsAsync();
        await ChooseAsync(night, (await ViewAsync(night)).Options.All.OfType<CourseOption>().First());

        Assert.IsType<CommitResult.Done>(await App.Doughs.TakeBackAsync(night.Group.Access, night.Night, Cancellation));

        var overrides = (await App.ViewAsync(night.Group, night.Night)).Overrides;
        Assert.Null(overrides.Late);
        Assert.Equal(LetGoCause.CommitmentTakenBack, overrides.Gone!.Cause);
        Assert.NotNull(overrides.Gone.Choices.Course);
    }

    [Fact]
    public async Task A_night_that_is_moved_a_little_keeps_its_rescue_dough()
    {
        var night = await LateCompanionsAsync();
        var rescue = (await ViewAsync(night)).Options.All.OfType<RescueOption>().Single();
        await ChooseAsync(night, rescue);

        await MoveAsync(night, hours: 1);
        await UntilPlannedAsync(night.Night);

        var view = await ViewAsync(night);
        Assert.Equal(rescue.Dough, view.Night.Late!.Rescue);
        Assert.Equal(view.Night.ServeAt, view.Plan!.Rescue!.ReadyAt);
        Assert.True(view.Plan.Rescue.Yeast.ShareOfFlour.Value < rescue.Plan.Yeast.ShareOfFlour.Value);
        Assert.Null((await App.ViewAsync(night.Group, night.Night)).Overrides.Gone);
    }

    [Fact]
    public async Task A_rescue_dough_that_does_not_fit_the_moved_night_goes_alone_and_is_told_until_it_is_seen()
    {
        var night = await LateCompanionsAsync();
        await ChooseAsync(night, (await ViewAsync(night)).Options.All.OfType<CourseOption>().First());
        await UntilPlannedAsync(night.Night);
        var rescue = (await ViewAsync(night)).Options.All.OfType<RescueOption>().Single();
        await ChooseAsync(night, rescue);

        await MoveAsync(night, hours: 5);
        await MoveAsync(night, hours: -5);

        var overrides = (await App.ViewAsync(night.Group, night.Night)).Overrides;
        Assert.Null(overrides.Late!.Rescue);
        Assert.NotNull(overrides.Late.Course);
        Assert.Equal(new LetGo(new LateChoices(Rescue: rescue.Dough), LetGoCause.NightMoved, App.Clock.GetCurrentInstant()), overrides.Gone);

        Assert.IsType<LateResult.Done>(await Late.SeenAsync(night.Group.Access, night.Night, Cancellation));
        Assert.IsType<LateResult.Done>(await Late.SeenAsync(night.Group.Access, night.Night, Cancellation));
        Assert.Null((await App.ViewAsync(night.Group, night.Night)).Overrides.Gone);
    }

    [Fact]
    public async Task What_was_chosen_stands_through_other_answers_and_other_numbers_of_another_host()
    {
        var night = await LateCompanionsAsync();
        var rescue = (await ViewAsync(night)).Options.All.OfType<RescueOption>().Single();
        await ChooseAsync(night, rescue);

        await App.AnswerAsync(night.Link, Answers.Coming(revision: 2));
        await App.Nights.OverruleAsync(night.Group.Access, night.Night, overrides => overrides.With(Overridable.SaucePerPieGrams, 90), Cancellation);
        var meanwhile = await ViewAsync(night);
        await UntilPlannedAsync(night.Night);

        // Not needed any more, it is still the host's to take back.
        Assert.Equal(rescue.Dough, meanwhile.Night.Late!.Rescue);
        var after = await ViewAsync(night);
        Assert.Equal(rescue.Dough, after.Night.Late!.Rescue);
        Assert.Equal(rescue.Dough.MixAt, after.Plan!.Rescue!.MixAt);
    }

    [Fact]
    public async Task Who_is_no_host_here_chooses_nothing()
    {
        var night = await LateCompanionsAsync();
        var course = (await ViewAsync(night)).Options.All.OfType<CourseOption>().First();
        var guest = new GroupAccess(night.Group.Id, null, null);

        await Assert.ThrowsAsync<RightMissingException>(() => Late.ChooseAsync(guest, night.Night, course, Cancellation));
        await Assert.ThrowsAsync<RightMissingException>(() => Late.TakeBackAsync(guest, night.Night, LateChoice.Course, Cancellation));
    }

    private async Task MoveAsync(GuestNight night, int hours)
    {
        var view = await App.ViewAsync(night.Group, night.Night);
        Assert.IsType<NightResult.Kept>(await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, view.Facts with { ServeAt = view.Facts.ServeAt.PlusHours(hours) }, view.Version, Cancellation));
    }

    private Task<LateResult> ChooseAsync(GuestNight night, LateOption option) =>
        Late.ChooseAsync(night.Group.Access, night.Night, option, Cancellation);

    private async Task<PlanView> ViewAsync(GuestNight night) =>
        (await App.Plans.PlanAsync(night.Group.Access, night.Night, Cancellation))!;

    /// <summary>A dough that is committed for one guest, who then brings two more.</summary>
    private async Task<GuestNight> LateCompanionsAsync()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming());
        await PlanAllAsync();
        Assert.IsType<CommitResult.Done>(await App.Doughs.CommitAsync(night.Group.Access, night.Night, Cancellation));
        await App.AnswerAsync(night.Link, Answers.Coming(revision: 1, companions: 2));
        await UntilPlannedAsync(night.Night);
        return night;
    }
}
