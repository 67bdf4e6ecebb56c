using CsCheck;
using GameNight.Planning.Appetite;
using GameNight.Planning.Contract;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.Planning.Tests.BegunDoughTests;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class LateOptionsTests
{
    private static readonly ReferenceTables Tables = SharedFolder.Tables;
    private static readonly LateOptionsFinder Finder = new(Tables);

    [Fact]
    public void Before_the_dough_is_begun_and_after_the_first_pie_there_is_nothing_to_choose()
    {
        var (night, plan) = Begun(6);

        Assert.Empty(Finder.For(night with { Begun = null }, plan, Now).All);
        Assert.Empty(Finder.For(night, plan, night.ServeAt).All);
    }

    [Fact]
    public void Every_outlook_is_what_the_planner_says_once_it_is_chosen() =>
        Gen.Select(Gen.Int[2, 9], Gen.Int[0, 14], Gen.Int[1, 60]).Sample(
            (then, now, hours) =>
            {
                var (night, plan) = Late(then, now, Duration.FromHours(hours));

                foreach (var option in Finder.For(night, plan, Now + Duration.FromHours(hours)).All)
                {
                    var chosen = night with { Late = option.Chosen(night.Late ?? new LateChoices()) };
                    Assert.Empty(new SnapshotCheck(Tables).Problems(chosen));
                    Assert.Equal(option.Outlook, Plan(chosen, Duration.FromHours(hours)).Pies.Chosen);
                }
            },
            iter: 25);

    [Fact]
    public void More_guests_can_have_a_rescue_dough_courses_or_a_higher_chance_accepted()
    {
        var (night, plan) = Late(5, 9, Duration.FromDays(2));

        var options = Finder.For(night, plan, Now + Duration.FromDays(2));

        var rescue = Assert.Single(options.All.OfType<RescueOption>());
        Assert.Equal(plan.Pies.Count.Proposed.Value - plan.Pies.Count.Value.Value, rescue.Dough.Balls.Value);
        Assert.True(rescue.Outlook.RunOutChance <= night.RunOutChance);
        Assert.All(options.All.OfType<CourseOption>(), course => Assert.True(course.Outlook.RunOutChance < plan.Pies.Chosen.RunOutChance));
        Assert.Equal(plan.Pies.Chosen, Assert.Single(options.All.OfType<AcceptOption>()).Outlook);
        Assert.Empty(options.All.OfType<KeepBallsOption>());
        Assert.Null(options.NoRescue);
    }

    [Fact]
    public void What_is_missing_is_counted_in_slices_of_the_committed_dough_and_what_does_not_help_says_so()
    {
        var (night, plan) = Late(5, 9, Duration.FromDays(2));

        var options = Finder.For(night, plan, Now + Duration.FromDays(2)).All;

        Assert.All(options, option => Assert.Equal(option.Outlook.RunOutChance < plan.Pies.Chosen.RunOutChance, option.Helps));
        Assert.All(options.Where(option => option is RescueOption or CourseOption), option => Assert.True(option.Helps));
        var divided = options.OfType<RedivideOption>().ToList();
        Assert.NotEmpty(divided);
        Assert.All(divided, option =>
        {
            Assert.Equal((double)plan.Dough.Balls / option.Anew.Balls.Value, option.OfCommittedSlice, 1e-12);

            // The same dough for the same people: by weight about as much is missing, however it is cut.
            Assert.Equal(plan.Pies.Chosen.ExpectedShortageSlices, option.ShortageSlices, tolerance: 1.5);
        });
        Assert.All(options.Where(option => option is not RedivideOption), option => Assert.Equal(1, option.OfCommittedSlice));
    }

    [Fact]
    public void A_dough_divided_anew_is_compared_in_slices_of_then()
    {
        var after = Duration.FromDays(1);
        var (then, planThen) = Begun(6);
        var night = then with { Late = new LateChoices(Finder.For(then, planThen, Now + after).All.OfType<RedivideOption>().First().Anew) };

        var changes = LateChanges.Between(new PlannedNight(then, planThen), new PlannedNight(night, Plan(night, after)));

        Assert.Empty(changes.Guests);
        Assert.Equal(
            changes.Then.ExpectedLeftoverSlices - changes.Then.ExpectedShortageSlices,
            changes.Now.ExpectedLeftoverSlices - changes.Now.ExpectedShortageSlices, tolerance: 0.5);
    }

    [Fact]
    public void A_rescue_dough_has_its_own_yeast_for_its_own_hours_and_free_hands()
    {
        var (night, plan) = Late(5, 9, Duration.FromDays(2));
        var rescue = Finder.For(night, plan, Now + Duration.FromDays(2)).All.OfType<RescueOption>().Single();
        var made = rescue.Plan;

        Assert.Equal(plan.Dough.Ball.Value, made.Dough.Ball.Value);
        Assert.InRange((night.ServeAt - made.MixAt).TotalHours, 4, 10);
        Assert.True(made.Yeast.ShareOfFlour.Value > plan.Yeast.ShareOfFlour.Value, "hours at room temperature need more than days in the cold");
        Assert.All(
            RescuePlan.Hands(night, rescue.Dough, Tables),
            busy => Assert.All(night.Away, away => Assert.True(away.Until <= busy.From || away.From >= busy.Until)));
        var gas = YeastDoseModel.GasOfWanted(
            new DoughJourney(
                new Celsius(Tables.Dough.TargetDoughCelsius.Value), made.BallAt - made.MixAt, Duration.Zero, made.ReadyAt - made.BallAt,
                night.Kitchen.Room, night.Kitchen.Fridge, 0, made.Dough.Ball.Value, made.Dough.Batches.Max(batch => batch.Total)),
            made.Dough.Formula, made.Yeast.ShareOfFlour.Value, Tables.Fermentation, Tables.Dough, Tables.Materials);
        Assert.Equal(1, gas, 1e-6);
    }

    [Fact]
    public void The_plan_follows_a_rescue_dough_with_pies_times_and_hands()
    {
        var after = Duration.FromDays(2);
        var (night, plan) = Late(5, 9, after);
        var rescue = Finder.For(night, plan, Now + after).All.OfType<RescueOption>().Single();

        var followed = Plan(night with { Late = rescue.Chosen(new LateChoices()) }, after);

        Assert.Equal(plan.Dough.Balls + rescue.Dough.Balls.Value, followed.Split.Pies.Count);
        Assert.Equal(followed.Split.Pies.Count, followed.Timeline.Steps.Count(step => step.Kind == StepKind.Bake));
        Assert.Equal(PlanJson.Canonical(plan.Dough), PlanJson.Canonical(followed.Dough));
        Assert.Equal(PlanJson.Canonical(rescue.Plan), PlanJson.Canonical(followed.Rescue));
        StepKind[] hands = [StepKind.Sauce, StepKind.GrateCheese, StepKind.PrepareToppings, StepKind.Shape, StepKind.Top];
        Assert.All(
            followed.Timeline.Steps.Where(step => hands.Contains(step.Kind)),
            step => Assert.All(RescuePlan.Hands(night, rescue.Dough, Tables), busy => Assert.True(step.End <= busy.From || step.Start >= busy.Until, step.Id)));
    }

    [Fact]
    public void A_rescue_dough_that_comes_too_late_is_refused_and_says_how_long_it_needs()
    {
        var after = Now + Duration.FromHours(69.5);
        var (night, plan) = Late(5, 9, Duration.FromHours(69.5));

        var options = Finder.For(night, plan, after);

        Assert.Empty(options.All.OfType<RescueOption>());
        Assert.Equal(new NoTimeForRescue(night.ServeAt - after, Duration.FromHours(4)), options.NoRescue);
        Assert.NotEmpty(options.All.OfType<CourseOption>());
    }

    [Fact]
    public void Without_free_hands_in_the_hours_before_there_is_no_rescue_dough()
    {
        var (night, plan) = Late(5, 9, Duration.FromDays(2));
        var busy = night with { Away = [.. night.Away, new HostAway(Now + Duration.FromDays(2), night.ServeAt - Duration.FromHours(3))] };

        var options = Finder.For(busy, plan, Now + Duration.FromDays(2));

        Assert.Empty(options.All.OfType<RescueOption>());
        Assert.NotNull(options.NoRescue);
    }

    [Fact]
    public void Fewer_guests_leave_balls_to_keep()
    {
        var (night, plan) = Late(9, 5, Duration.FromDays(1));

        var options = Finder.For(night, plan, Now + Duration.FromDays(1));

        var keep = Assert.Single(options.All.OfType<KeepBallsOption>());
        Assert.Equal(plan.Pies.Count.Value.Value - plan.Pies.Count.Proposed.Value, keep.Balls);
        Assert.Equal(plan.Pies.Count.Proposed, keep.Outlook.Pies);
        Assert.True(keep.Outlook.RunOutChance <= night.RunOutChance);
        Assert.Empty(options.All.OfType<RescueOption>());
        var followed = Plan(night with { Late = keep.Chosen(new LateChoices()) }, Duration.FromDays(1));
        Assert.Equal(keep.Outlook.Pies.Value, followed.Split.Pies.Count);
    }

    [Fact]
    public void The_same_dough_in_other_balls_weighs_the_same_and_is_only_offered_while_balls_can_rest()
    {
        var (night, plan) = Late(5, 5, Duration.FromDays(1));

        var options = Finder.For(night, plan, Now + Duration.FromDays(1)).All.OfType<RedivideOption>().ToList();

        Assert.Equal(4, options.Count);
        Assert.All(options, option =>
        {
            var followed = Plan(night with { Late = option.Chosen(new LateChoices()) }, Duration.FromDays(1));
            Assert.Equal(plan.Dough.Total, followed.Dough.Total);
            Assert.Equal(option.Anew.Balls.Value, followed.Dough.Balls);
            Assert.Equal(option.Anew.Balls.Value, followed.Dough.Batches.Sum(batch => batch.Balls));
            Assert.Equal(plan.Dough.Ball.Value.Value * plan.Dough.Balls, followed.Dough.Ball.Value.Value * followed.Dough.Balls, 1e-6);
            Assert.Contains(new DoughRedivided(plan.Dough.Balls, followed.Dough.Balls), followed.Dough.Ball.Because);

            // A tenth of a centimetre is all that a diameter is rounded to.
            var area = Math.PI * Math.Pow(option.Anew.Diameter.Value, 2) / 4;
            Assert.Equal(1, area * option.Anew.ThicknessGramsPerCm2 / option.Ball.Value, 0.01);
        });
        Assert.Empty(Finder.For(night, plan, night.ServeAt - Duration.FromHours(3)).All.OfType<RedivideOption>());
    }

    [Fact]
    public void What_is_chosen_is_not_offered_again_and_taking_it_back_gives_the_plan_of_before()
    {
        var after = Duration.FromDays(2);
        var (night, plan) = Late(5, 9, after);
        var late = Finder.For(night, plan, Now + after).All.OfType<CourseOption>().Last().Chosen(new LateChoices());
        var chosen = night with { Late = late };

        Assert.Empty(Finder.For(chosen, Plan(chosen, after), Now + after).All.OfType<CourseOption>());
        Assert.Equal(PlanJson.Canonical(plan), PlanJson.Canonical(Plan(chosen with { Late = null }, after)));
    }

    [Fact]
    public void Choices_about_a_dough_that_is_not_begun_do_nothing()
    {
        var night = ANight().WithGuests(6).Build();
        var late = new LateChoices(new Redivided(new PieCount(9), new Centimetres(20), 0.3), 2, AppetiteTaken.ALot);

        Assert.Equal(PlanJson.Canonical(Plan(night, Duration.Zero)), PlanJson.Canonical(Plan(night with { Late = late }, Duration.Zero)));
    }

    /// <summary>A dough begun for so many guests, and so many who come now.</summary>
    private static (NightSnapshot Night, NightPlan Plan) Late(int then, int now, Duration after)
    {
        var night = Begun(then).Night with { Guests = ANight().WithGuests(now).Build().Guests };
        return (night, Plan(night, after));
    }
}
