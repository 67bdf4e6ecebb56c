using CsCheck;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Timeline;

public class OwnStepTests
{
    private static readonly Effort Little = new(1);

    private static readonly Gen<StepTie?> AnyTie = Gen.Frequency(
        (2, Gen.Int[0, 0].Select(_ => (StepTie?)null)),
        (2, Gen.Int[0, StepTie.Kinds.Count - 1].Select(kind => (StepTie?)new StepTie(StepTie.Kinds[kind]))),
        (1, Gen.Int[1, 4].Select(number => (StepTie?)new StepTie(StepKind.Own, number))));

    /// <summary>Hours and lengths at random, ties to planned steps and to one another: sensible and not, but none in a circle.</summary>
    private static readonly Gen<IReadOnlyList<OwnStep>> AnySteps =
        (from length in Gen.Int[1, 180]
         from needsHands in Gen.Bool
         from minute in Gen.Int[-5 * 24 * 60, 20 * 60]
         from room in Gen.Frequency((2, Gen.Const(0)), (3, Gen.Int[0, 36 * 60]))
         from isTimed in Gen.Bool
         from after in AnyTie
         from before in AnyTie
         from takes in Gen.Int[0, 3]
         let step = new OwnStep(1, Duration.FromMinutes(length), needsHands, After: after, Before: before, Takes: takes < 2 ? null : (Station)(takes - 2))
         select isTimed || !step.HasLimit
             ? step with { From = Evening.Usual.ServeAt + Duration.FromMinutes(minute), Until = Evening.Usual.ServeAt + Duration.FromMinutes(minute + length + room) }
             : step)
        .List[1, 4].Select(steps => Checked([.. steps.Select((step, i) => step with { Number = i + 1 })]));

    private static IReadOnlyList<OwnStep> Checked(IReadOnlyList<OwnStep> steps) => OwnStepCheck.Problems(steps) is []
        ? steps
        : [.. steps.Select(step => step with { After = Free(step.After), Before = Free(step.Before) })
            .Select(step => step.HasLimit ? step : step with { Before = new StepTie(StepKind.Serve) })];

    private static StepTie? Free(StepTie? tie) => tie?.Step == StepKind.Own ? null : tie;

    [Fact]
    public void Random_own_steps_on_random_nights_keep_every_rule_or_are_said_to_find_no_room() =>
        Gen.Select(RandomNights.Any, AnySteps).Sample((night, own) => KeepsItsRules(night with { Own = own }, Effort.Quick), iter: 400, threads: 1);

    [Fact]
    public void So_they_do_when_the_solver_places_them() =>
        Gen.Select(RandomNights.Any, AnySteps).Sample((night, own) => KeepsItsRules(night with { Own = own }, Little), iter: 10, threads: 1);

    [Fact]
    public void A_night_that_works_without_own_steps_works_with_any() =>
        Gen.Select(RandomNights.Any, AnySteps).Sample(
            (night, own) => night.Plan(Effort.Quick).FirstPieAt == (night with { Own = own }).Plan(Effort.Quick).FirstPieAt, iter: 200, threads: 1);

    private static bool KeepsItsRules(TimelineRequest night, Effort effort)
    {
        var timeline = night.Plan(effort);
        Assert.Empty(TimelineCheck.Breaches(night, timeline));
        return true;
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_step_at_a_time_of_the_clock_is_then_and_the_rest_goes_around_it(int slices)
    {
        var alone = Evening.Usual.Plan(new Effort(slices));
        var at = alone.Step("sauce").Start;
        var request = Evening.Usual with { Own = [new OwnStep(7, Duration.FromMinutes(45), true, at, at + Duration.FromMinutes(45))] };

        var timeline = request.Plan(new Effort(slices));

        Assert.Equal((at, at + Duration.FromMinutes(45), StepKind.Own), (timeline.Step("own-7").Start, timeline.Step("own-7").End, timeline.Step("own-7").Kind));
        Assert.True(timeline.Step("sauce").End <= at || timeline.Step("sauce").Start >= timeline.Step("own-7").End);
        Assert.Empty(timeline.Conflicts.OfType<OwnStepFindsNoRoom>());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_chain_of_own_steps_keeps_its_order_between_the_steps_it_is_tied_to(int slices)
    {
        var quarter = Duration.FromMinutes(15);
        var request = Evening.Usual with
        {
            Own =
            [
                new OwnStep(3, quarter, true, After: new StepTie(StepKind.Own, 1), Before: new StepTie(StepKind.Preheat)),
                new OwnStep(1, quarter, true, After: new StepTie(StepKind.Shop)),
                new OwnStep(2, quarter, false, After: new StepTie(StepKind.Serve)),
            ],
        };

        var timeline = request.Plan(new Effort(slices));

        Assert.True(timeline.Step("own-1").Start >= timeline.Step("shop").End);
        Assert.True(timeline.Step("own-3").Start >= timeline.Step("own-1").End);
        Assert.True(timeline.Step("own-3").End <= timeline.Step("preheat").Start);
        Assert.Equal(timeline.LastPieAt, timeline.Step("own-2").Start);
        Assert.False(timeline.Step("own-2").NeedsHands);
    }

    [Fact]
    public void What_finds_no_room_is_left_out_and_told_with_what_takes_the_hands_and_where_there_is_some()
    {
        var alone = Evening.Usual.Plan(Effort.Quick);
        var at = alone.Step("shape-1").Start;
        var request = Evening.Usual with { Own = [new OwnStep(4, Duration.FromMinutes(30), true, at, at + Duration.FromMinutes(30))] };

        var timeline = request.Plan(Effort.Quick);

        var told = Assert.Single(timeline.Conflicts.OfType<OwnStepFindsNoRoom>());
        Assert.Equal((4, (Instant?)at, (Instant?)(at + Duration.FromMinutes(30))), (told.Number, told.WindowFrom, told.WindowUntil));
        Assert.Contains(StepKind.Shape, told.TakenBy);
        Assert.Equal(alone.Steps, timeline.Steps);

        // The nearest time that is told does work.
        var moved = request with { Own = [request.Own![0] with { From = told.NearestFree, Until = told.NearestFree + Duration.FromMinutes(30) }] };
        Assert.Equal(told.NearestFree, moved.Plan(Effort.Quick).Step("own-4").Start);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void What_needs_the_oven_at_another_heat_comes_before_it_is_heated_up_or_after_the_last_pie(int slices)
    {
        var hour = Duration.FromHours(1);
        var request = Evening.Usual with
        {
            Own =
            [
                new OwnStep(1, hour, false, Evening.SaturdayAt(12), Evening.SaturdayAt(23), Takes: Station.OvenAtOtherHeat),
                new OwnStep(2, hour, false, Evening.SaturdayAt(12), Evening.SaturdayAt(23), Takes: Station.OvenAtOtherHeat),
                new OwnStep(3, hour, false, After: new StepTie(StepKind.Serve), Takes: Station.OvenAtOtherHeat),
            ],
        };

        var timeline = request.Plan(new Effort(slices));

        var (one, other) = (timeline.Step("own-1"), timeline.Step("own-2"));
        Assert.True(Instant.Max(one.End, other.End) <= timeline.Step("preheat").Start);
        Assert.True(one.End <= other.Start || other.End <= one.Start, "two heats at once");
        Assert.True(timeline.Step("own-3").Start >= timeline.Steps.Where(step => step.Kind == StepKind.Bake).Max(step => step.End));
        Assert.Empty(timeline.Conflicts.OfType<OwnStepFindsNoRoom>());
    }

    [Fact]
    public void An_oven_at_another_heat_in_the_middle_of_the_pies_is_told_with_their_hours_and_the_nearest_others()
    {
        var alone = Evening.Usual.Plan(Effort.Quick);
        var (heated, free) = (alone.Step("preheat").Start, alone.Steps.Where(step => step.Kind == StepKind.Bake).Max(step => step.End));
        var at = heated + Duration.FromMinutes(20);
        var request = Evening.Usual with { Own = [new OwnStep(5, Duration.FromMinutes(30), false, at, at + Duration.FromMinutes(30), Takes: Station.OvenAtOtherHeat)] };

        var timeline = request.Plan(Effort.Quick);

        var told = Assert.Single(timeline.Conflicts.OfType<OwnStepFindsNoRoom>());
        Assert.Equal((heated, free), (told.OvenTakenFrom!.Value, told.OvenTakenUntil!.Value));
        Assert.Equal(heated - Duration.FromMinutes(30), told.NearestFree);
        var moved = request with { Own = [request.Own![0] with { From = told.NearestFree, Until = told.NearestFree + Duration.FromMinutes(30) }] };
        Assert.Equal(told.NearestFree, moved.Plan(Effort.Quick).Step("own-5").Start);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void On_one_ring_a_soup_and_the_sauce_come_one_after_the_other_and_on_two_side_by_side(int slices)
    {
        var sauce = Evening.Usual.Plan(new Effort(slices)).Step("sauce");
        var one = Evening.Usual with { HobRings = 1, Own = [new OwnStep(1, Duration.FromMinutes(90), false, sauce.Start, sauce.Start + Duration.FromMinutes(90), Takes: Station.Hob)] };

        var timeline = one.Plan(new Effort(slices));
        var (soup, moved) = (timeline.Step("own-1"), timeline.Step("sauce"));

        Assert.True(moved.End <= soup.Start || soup.End <= moved.Start);
        Assert.Equal(sauce.Start, (one with { HobRings = 2 }).Plan(new Effort(slices)).Step("sauce").Start);
    }

    [Fact]
    public void Limits_that_leave_no_time_are_told_as_that()
    {
        var request = Evening.Usual with
        {
            Own = [new OwnStep(1, Duration.FromMinutes(20), true, After: new StepTie(StepKind.Serve), Before: new StepTie(StepKind.Preheat))],
        };

        var told = Assert.Single(request.Plan(Effort.Quick).Conflicts.OfType<OwnStepFindsNoRoom>());

        Assert.Null(told.WindowFrom);
        Assert.Empty(told.TakenBy);
    }

    [Fact]
    public void What_has_passed_is_not_planned_any_more_and_holds_nothing_up()
    {
        var yesterday = Evening.Usual.Now - Duration.FromDays(1);
        var request = Evening.Usual with
        {
            Own =
            [
                new OwnStep(1, Duration.FromMinutes(20), true, yesterday, yesterday + Duration.FromMinutes(20)),
                new OwnStep(2, Duration.FromMinutes(20), true, After: new StepTie(StepKind.Own, 1), Before: new StepTie(StepKind.Preheat)),
            ],
        };

        var timeline = request.Plan(Effort.Quick);

        Assert.DoesNotContain(timeline.Steps, step => step.Id == "own-1");
        Assert.Contains(timeline.Steps, step => step.Id == "own-2");
        Assert.Empty(timeline.Conflicts.OfType<OwnStepFindsNoRoom>());
    }

    [Fact]
    public void The_check_sees_an_own_step_that_was_moved_or_dropped()
    {
        var at = Evening.SaturdayAt(12);
        var request = Evening.Usual with { Own = [new OwnStep(1, Duration.FromMinutes(20), true, at, at + Duration.FromMinutes(60), Before: new StepTie(StepKind.Preheat))] };
        var timeline = request.Plan(Effort.Quick);

        foreach (var minutes in new[] { -90, 90, 600 })
        {
            var by = Duration.FromMinutes(minutes);
            var moved = timeline with
            {
                Steps = [.. timeline.Steps.Select(step => step.Kind == StepKind.Own ? step with { Start = step.Start + by, End = step.End + by } : step)],
            };
            Assert.NotEmpty(TimelineCheck.Breaches(request, moved));
        }

        Assert.NotEmpty(TimelineCheck.Breaches(request, timeline with { Steps = [.. timeline.Steps.Where(step => step.Kind != StepKind.Own)] }));
    }

    [Fact]
    public void A_circle_a_step_of_thirty_hours_and_a_tie_to_nothing_are_refused()
    {
        var hour = Duration.FromHours(1);
        OwnStep[] itself = [new OwnStep(1, hour, true, After: new StepTie(StepKind.Own, 1))];
        OwnStep[] circle = [new OwnStep(1, hour, true, After: new StepTie(StepKind.Own, 2)), new OwnStep(2, hour, true, After: new StepTie(StepKind.Own, 1))];

        Assert.Equal(SnapshotFault.Circle, Assert.Single(OwnStepCheck.Problems(itself)).Fault);
        Assert.Equal(SnapshotFault.Circle, Assert.Single(OwnStepCheck.Problems(circle)).Fault);
        var long30 = Assert.Single(OwnStepCheck.Problems([new OwnStep(1, Duration.FromHours(30), true, Before: new StepTie(StepKind.Serve))]));
        Assert.Equal((SnapshotFault.OutOfRange, 1800, 720), (long30.Fault, (int)long30.Given, (int)long30.High));
        Assert.Equal(SnapshotFault.UnknownStep, Assert.Single(OwnStepCheck.Problems([new OwnStep(1, hour, true, Before: new StepTie(StepKind.Own, 9))])).Fault);
        Assert.Equal(SnapshotFault.UnknownStep, Assert.Single(OwnStepCheck.Problems([new OwnStep(1, hour, true, Before: new StepTie(StepKind.Soak))])).Fault);
        Assert.Equal(SnapshotFault.NoTime, Assert.Single(OwnStepCheck.Problems([new OwnStep(1, hour, true)])).Fault);
    }

    [Fact]
    public void A_step_that_was_planned_before_the_dough_was_balled_stands_with_the_begun_dough()
    {
        var night = ANight().WithGuests(6).But(one => one with
        {
            OwnSteps = [new OwnStep(1, Duration.FromMinutes(10), true, After: new StepTie(StepKind.Mix)), new OwnStep(2, Duration.FromMinutes(10), true, Before: new StepTie(StepKind.Serve))],
        }).Build();
        var planner = new NightPlanner(SharedFolder.Tables);
        var plan = planner.Plan(night, Now, Effort.Quick);
        var begun = BegunDough.Of(night, plan)!;

        var after = planner.Plan(night with { Begun = begun }, plan.Timeline.DoughCommitment!.Value + Duration.FromMinutes(30), Effort.Quick);

        Assert.Equal(plan.Timeline.Step("own-1") with { CanWait = default }, after.Timeline.Step("own-1"));
        Assert.Contains(after.Timeline.Steps, step => step.Id == "own-2");
    }

    [Fact]
    public void On_the_night_an_own_step_is_tapped_like_any_other_and_what_was_forgotten_holds_nothing_up()
    {
        var night = ANight().WithGuests(6).But(one => one with
        {
            OwnSteps = [new OwnStep(1, Duration.FromMinutes(10), true, Before: new StepTie(StepKind.Preheat)), new OwnStep(2, Duration.FromMinutes(10), false, After: new StepTie(StepKind.Serve))],
        }).Build();
        var planner = new NightPlanner(SharedFolder.Tables);
        var plan = planner.Plan(night, Now, Effort.Quick);
        var at = plan.Timeline.Step("own-1").Start + Duration.FromMinutes(3);

        var tapped = planner.Live(night, plan, [new LiveMark("a", at, LiveMarkKind.StepDone, "own-1")], at)!;
        Assert.Equal((LiveState.Done, at), (tapped.Steps.Single(step => step.Id == "own-1").State, tapped.Steps.Single(step => step.Id == "own-1").End));
        Assert.True(tapped.Steps.Single(step => step.Id == "own-2").StartsItself);

        var topped = plan.Timeline.Step("top-3").End;
        var forgotten = planner.Live(night, plan, [new LiveMark("b", topped, LiveMarkKind.StepDone, "top-3")], topped)!;
        Assert.Equal(LiveState.Done, forgotten.Steps.Single(step => step.Id == "own-1").State);
        Assert.Equal(LiveState.Later, forgotten.Steps.Single(step => step.Id == "own-2").State);
    }
}
