using GameNight.Planning.Dough;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Live;

public class LiveNightTests
{
    private static readonly NightPlanner Planner = new(SharedFolder.Tables);
    private static readonly NightSnapshot Night = ANight().WithGuests(9).Build();
    private static readonly NightPlan Plan = Planner.Plan(Night, Now, Effort.Quick);

    [Fact]
    public void Without_a_tap_the_night_stands_as_it_was_planned()
    {
        var live = At(Plan.Timeline.Steps[0].Start - Duration.FromHours(1));

        Assert.Equal(Duration.Zero, live.Late);
        Assert.Equal(Plan.Timeline.LastPieAt, live.LastPieAt);
        Assert.All(live.Steps, step => Assert.Equal((step.Planned.Start, step.Planned.End), (step.Start, step.End)));
        Assert.All(live.Steps, step => Assert.Equal(LiveState.Later, step.State));
        Assert.Equal(StepKind.Shop, live.Next!.Kind);
        Assert.Empty(live.Clocks);
        Assert.Empty(live.Risks);
    }

    [Fact]
    public void A_night_that_is_tapped_as_planned_never_moves()
    {
        var marks = AsPlanned();

        foreach (var moment in marks.Select(mark => mark.At).Distinct())
        {
            var live = At(moment, [.. marks.Where(mark => mark.At <= moment)]);

            Assert.Equal(Duration.Zero, live.Late);
            Assert.Empty(live.Risks);
            Assert.All(live.Steps.Where(step => step.IsTapped), step => Assert.Equal(step.Planned.Start, step.Start));
        }

        var over = At(Plan.Timeline.LastPieAt!.Value + Duration.FromMinutes(1), marks);
        Assert.All(over.Steps.Where(step => step.Kind != StepKind.PutAway), step => Assert.Equal(LiveState.Done, step.State));
    }

    /// <summary>USDA FSIS: two hours at room temperature, counted here from the last pie on the table.</summary>
    [Fact]
    public void What_is_left_on_the_table_has_two_hours_from_the_last_pie_as_it_really_came()
    {
        var late = Plan.Timeline.LastPieAt!.Value + Duration.FromMinutes(17);
        List<LiveMark> marks = [.. AsPlanned().SkipLast(1), Done(Plan.Timeline.Steps.Last(step => step.Kind == StepKind.Serve).Id, late)];

        var first = Assert.Single(At(late, marks).Clocks, running => running is { Kind: LiveClockKind.PutAway, Number: 1 });
        var clock = Assert.Single(At(late, marks).Clocks, running => running is { Kind: LiveClockKind.PutAway, Number: 0 });
        Assert.Equal(Step("serve-1").End + Duration.FromHours(2), first.Ends);
        Assert.Equal(late + Duration.FromHours(2), clock.Ends);
        Assert.Equal(LiveState.Running, At(late, marks).Step("put-away").State);
        Assert.Equal(LiveState.Done, At(clock.Ends, marks).Step("put-away").State);
        Assert.DoesNotContain(At(late, [.. marks.SkipLast(1)]).Clocks, running => running.Id == clock.Id);
        Assert.DoesNotContain(At(late, [.. marks, new LiveMark("heard", late, LiveMarkKind.ClockHeard, clock.Id)]).Clocks, running => running.Id == clock.Id);
    }

    [Fact]
    public void A_pie_that_is_in_rings_when_it_comes_out_and_holds_up_the_next_until_it_is_out()
    {
        var (topped, bake) = (Step("top-1"), Step("bake-1"));
        var marks = Until(topped.End);
        var before = At(topped.End, marks);
        var late = bake.End + Duration.FromMinutes(6);

        var clock = Assert.Single(before.Clocks, clock => clock.Kind == LiveClockKind.PieOut);
        Assert.Equal((1, bake.End), (clock.Number, clock.Ends));
        Assert.Contains(At(late, marks).Clocks, running => running.Id == clock.Id && running.Ends < late);
        Assert.Equal(Step("bake-2").Start + Duration.FromMinutes(6), At(late, marks).Step("bake-2").Start);

        var taken = At(late, [.. marks, Done("bake-1", late)]);
        Assert.DoesNotContain(taken.Clocks, running => running.Id == clock.Id);
        Assert.Equal(late + Night.Kitchen.Recovery, Assert.Single(taken.Clocks, running => running.Kind == LiveClockKind.SurfaceReady).Ends);
        Assert.Equal(Duration.FromMinutes(6), taken.Late);
    }

    [Fact]
    public void Fifteen_minutes_late_moves_the_rest_and_says_when_the_last_pie_comes()
    {
        var shape = Step("shape-2");
        var marks = Until(shape.Start);

        var live = At(shape.Start, [.. marks, new LiveMark("late", shape.Start, LiveMarkKind.NotBefore, Until: shape.Start + Duration.FromMinutes(15))]);

        Assert.Equal(shape.Start + Duration.FromMinutes(15), live.Step("shape-2").Start);
        Assert.Equal(Plan.Timeline.LastPieAt + live.Late, live.LastPieAt);
        Assert.InRange(live.Late.TotalMinutes, 1, 15);
        Assert.All(live.Steps.Where(step => step.State == LiveState.Done && step.IsTapped), step => Assert.Equal(step.Planned.Start, step.Start));
    }

    [Fact]
    public void Balls_that_nobody_took_out_are_due_and_push_the_pies()
    {
        var wave = Step("temper-1");
        var later = wave.Start + Duration.FromMinutes(40);

        var live = At(later, Until(wave.Start - Duration.FromMinutes(1)));

        Assert.Equal(LiveState.Due, live.Step("temper-1").State);
        Assert.Equal(later, live.Step("temper-1").Start);
        Assert.True(live.Step("shape-1").Start >= later + (wave.End - wave.Start));
        Assert.True(live.Late > Duration.Zero);
    }

    [Fact]
    public void A_shaped_base_that_waits_too_long_is_told_at_risk_and_one_that_is_topped_is_not()
    {
        var topped = Step("top-2").End;
        var marks = Until(Step("shape-2").End).Append(Done("top-2", topped));
        var shapedLongAgo = Until(Step("shape-1").End);
        var waits = At(Step("shape-1").End + Duration.FromMinutes(30), [.. shapedLongAgo]);

        Assert.Contains(waits.Risks, risk => risk is { Waiting: StepKind.Shape, For: StepKind.Top, Number: 1 });
        Assert.DoesNotContain(At(topped, [.. marks]).Risks, risk => risk.Waiting == StepKind.Shape);
    }

    [Fact]
    public void A_helper_who_leaves_makes_the_rest_later_and_one_who_comes_does_not()
    {
        var two = ANight().WithGuests(12).But(night => night with { Kitchen = night.Kitchen with { Hands = 2, PiesPerBake = 2 } }).Build();
        var plan = Planner.Plan(two, Now, Effort.Quick);
        var first = plan.Timeline.Steps.First(step => step.Kind == StepKind.Serve).End;
        var marks = AsPlanned(plan).Where(mark => mark.At <= first).ToList();

        var with = Planner.Live(two, plan, marks, first)!;
        var without = Planner.Live(two, plan, [.. marks, new LiveMark("gone", first, LiveMarkKind.HandsNow, Hands: 1)], first)!;
        var more = Planner.Live(two, plan, [.. marks, new LiveMark("more", first, LiveMarkKind.HandsNow, Hands: 3)], first)!;

        Assert.True(without.LastPieAt > with.LastPieAt);
        Assert.Equal(with.LastPieAt, more.LastPieAt);
        Assert.Equal((2, 1), (with.Hands, without.Hands));
    }

    /// <summary>
    /// Worked by hand: two places, one pair of hands, the second pie five minutes late at serving. Serving pie 2 before pie 3
    /// is topped leaves a place of the oven empty for three minutes, and again at every second pie.
    /// </summary>
    [Fact]
    public void When_the_kept_order_makes_the_table_wait_another_is_offered_and_counts_once_it_is_taken()
    {
        var two = ANight().WithGuests(9).But(night => night with { Kitchen = night.Kitchen with { PiesPerBake = 2 } }).Build();
        var plan = Planner.Plan(two, Now, Effort.Quick);
        var topped = plan.Timeline.Steps.Single(step => step.Id == "top-2");
        var now = topped.End + Duration.FromMinutes(5);
        List<LiveMark> marks = [.. AsPlanned(plan).Where(mark => mark.At < topped.End), Done("top-2", now)];
        var kept = Planner.Live(two, plan, marks, now)!;

        var order = Planner.AnotherOrder(two, plan, marks, now, new Effort(4))!;
        var taken = Planner.Live(two, plan, [.. marks, new LiveMark("order", now, LiveMarkKind.NewOrder, Starts: order.Starts)], now)!;

        Assert.True(kept.Step("serve-2").Start < kept.Step("top-3").Start);
        Assert.True(taken.Step("serve-2").Start > taken.Step("top-3").Start);
        Assert.True(order.Sooner >= Duration.FromMinutes(5));
        Assert.Equal((kept.LastPieAt - order.Sooner, order.LastPieAt), (order.LastPieAt, taken.LastPieAt));
        Assert.Empty(taken.Risks);
        Assert.Equal(taken.Steps.Where(step => step is { IsTapped: true, State: LiveState.Later, Planned.NeedsHands: true }).Select(step => (step.Kind, step.Number, step.Start)),
            order.Work.Where(work => work.Kind is not (StepKind.Temper or StepKind.Preheat)).Select(work => (work.Kind, work.Number, work.Start)));
    }

    [Fact]
    public void A_night_that_is_on_time_is_offered_no_other_order() =>
        Assert.Null(Planner.AnotherOrder(Night, Plan, Until(Step("serve-2").End), Step("serve-2").End, new Effort(4)));

    [Fact]
    public void An_order_of_other_steps_says_nothing()
    {
        var now = Step("serve-2").End;
        var marks = Until(now);
        var starts = Plan.Timeline.Steps.Skip(1).ToDictionary(step => step.Id, step => step.Start + Duration.FromHours(1));

        Assert.Equal(At(now, marks).Steps, At(now, [.. marks, new LiveMark("order", now, LiveMarkKind.NewOrder, Starts: starts)]).Steps);
    }

    [Fact]
    public void An_evening_that_runs_late_goes_on_into_the_hosts_quiet_hours()
    {
        var night = ANight().WithGuests(9).But(one => one with { Away = [new HostAway(Plan.Timeline.LastPieAt!.Value, Plan.Timeline.LastPieAt.Value + Duration.FromHours(8))] }).Build();
        var plan = Planner.Plan(night, Now, Effort.Quick);
        var shape = plan.Timeline.Steps.Single(step => step.Id == "shape-4");

        var live = Planner.Live(night, plan, [.. AsPlanned(plan).Where(mark => mark.At <= shape.Start), new LiveMark("late", shape.Start, LiveMarkKind.NotBefore, Until: shape.Start + Duration.FromMinutes(40))], shape.Start)!;

        Assert.InRange(live.Late, Duration.FromMinutes(20), Duration.FromMinutes(40));
    }

    [Theory]
    [InlineData(StepTrouble.SpringsBack, "shape-2", 10)]
    [InlineData(StepTrouble.SticksToPeel, "top-2", 2)]
    public void What_went_wrong_times_the_rest_anew(StepTrouble trouble, string id, int minutes)
    {
        var step = Step(id);
        var marks = Until(step.Start);

        var live = At(step.Start, [.. marks, new LiveMark("wrong", step.Start, LiveMarkKind.WentWrong, id, Trouble: trouble)]);

        Assert.Equal(step.End + Duration.FromMinutes(minutes), live.Step(id).End);
    }

    [Fact]
    public void Woken_yeast_rings_when_it_should_foam_and_a_second_try_later_with_mixing_behind_it()
    {
        var night = ANight().WithGuests(9).But(one => one with { Formula = one.Formula with { Yeast = YeastForm.ActiveDry, Preferment = null } }).Build();
        var plan = Planner.Plan(night, Now, Effort.Quick);
        var (wake, mix) = (plan.Timeline.Steps.Single(step => step.Id == "wake-yeast-1"), plan.Timeline.Steps.Single(step => step.Id == "mix-1"));
        var foams = wake.Start + Duration.FromMinutes(SharedFolder.Tables.Dough.Activation.FoamMinutes);
        List<LiveMark> begun = [.. AsPlanned(plan).Where(mark => mark.At <= wake.Start)];
        var dead = foams + Duration.FromMinutes(1);

        Assert.Equal((foams, wake.Start), (wake.End, plan.Timeline.DoughCommitment));
        Assert.InRange(mix.Start, wake.End, wake.End + TimelineLimits.WokenBeforeMixed);
        Assert.Equal(foams, Assert.Single(Planner.Live(night, plan, begun, foams)!.Clocks, clock => clock is { Kind: LiveClockKind.YeastFoams, Number: 1 }).Ends);

        begun.Add(new LiveMark("dead", dead, LiveMarkKind.WentWrong, "mix-1", Trouble: StepTrouble.NoFoam));
        var again = Planner.Live(night, plan, begun, dead)!;
        var expected = dead + Duration.FromMinutes(SharedFolder.Tables.Steps.Of(StepTrouble.NoFoam).Minutes);
        Assert.Equal(expected, Assert.Single(again.Clocks, clock => clock is { Kind: LiveClockKind.YeastFoams, Number: 1 }).Ends);
        Assert.Equal(expected, again.Step("mix-1").Start);
        Assert.DoesNotContain(Planner.Live(night, plan, [.. begun, Done("mix-1", expected + Duration.FromMinutes(15))], expected + Duration.FromMinutes(15))!.Clocks, clock => clock.Kind == LiveClockKind.YeastFoams && clock.Number == 1);
    }

    [Fact]
    public void After_a_soggy_middle_the_next_pie_rings_a_minute_later_and_the_last_one_stays_as_it_was()
    {
        var (first, second) = (Step("bake-1"), Step("top-2"));
        var marks = Until(second.Start).Append(new LiveMark("soggy", second.Start, LiveMarkKind.WentWrong, "bake-1", Trouble: StepTrouble.SoggyMiddle));

        var live = At(second.End, [.. marks, Done("top-2", second.End)]);

        var clock = Assert.Single(live.Clocks, clock => clock is { Kind: LiveClockKind.PieOut, Number: 2 });
        Assert.Equal(second.End + Night.Kitchen.Bake + Duration.FromMinutes(1), clock.Ends);
        Assert.Equal(first.End, live.Step("bake-1").End);
    }

    [Fact]
    public void A_clock_of_ones_own_rings_until_it_is_heard()
    {
        var set = new LiveMark("a", Plan.Timeline.FirstPieAt!.Value, LiveMarkKind.ClockSet, Until: Plan.Timeline.FirstPieAt.Value + Duration.FromMinutes(5), Name: "Peppers");
        var later = set.Until!.Value + Duration.FromMinutes(2);

        Assert.Equal("Peppers", Assert.Single(At(later, [set]).Clocks, clock => clock.Kind == LiveClockKind.Own).Name);
        Assert.Empty(At(later, [set, new LiveMark("b", later, LiveMarkKind.ClockHeard, "a")]).Clocks);
    }

    [Fact]
    public void The_order_in_which_taps_arrive_makes_no_difference()
    {
        var marks = Until(Step("bake-2").End);
        var now = Step("bake-2").End;

        var live = At(now, marks);

        Assert.Equal(live.Steps, At(now, [.. Enumerable.Reverse(marks)]).Steps);
        Assert.Equal(live.Clocks, At(now, [.. marks.Skip(3), .. marks.Take(3)]).Clocks);
    }

    [Fact]
    public void A_second_tap_of_the_same_step_changes_nothing()
    {
        var marks = Until(Step("top-2").End);
        var now = Step("top-2").End + Duration.FromMinutes(1);

        Assert.Equal(At(now, marks).Steps, At(now, [.. marks, Done("top-2", now), Done("top-1", now)]).Steps);
    }

    [Fact]
    public void A_later_tap_stands_for_those_that_were_forgotten()
    {
        var served = Step("serve-1").End;
        var marks = Until(Step("temper-1").End).Append(Done("serve-1", served));

        var live = At(served, [.. marks]);

        Assert.All(["shape-1", "top-1", "bake-1", "serve-1"], id => Assert.Equal(LiveState.Done, live.Step(id).State));
        Assert.True(live.Next!.Number == 2 || live.Next.Kind is StepKind.Sauce or StepKind.GrateCheese or StepKind.PrepareToppings);
    }

    private static LiveEvening At(Instant now, params IReadOnlyList<LiveMark> marks) => Planner.Live(Night, Plan, marks, now)!;

    private static TimelineStep Step(string id) => Plan.Timeline.Steps.Single(step => step.Id == id);

    private static LiveMark Done(string id, Instant at) => new($"{id}-done-{at}", at, LiveMarkKind.StepDone, id);

    private static List<LiveMark> Until(Instant moment) => [.. AsPlanned().Where(mark => mark.At <= moment)];

    private static List<LiveMark> AsPlanned() => AsPlanned(Plan);

    /// <summary>Every tap at its planned moment.</summary>
    private static List<LiveMark> AsPlanned(NightPlan plan) =>
    [
        .. plan.Timeline.Steps.SelectMany(step => step.Kind switch
        {
            StepKind.Rack or StepKind.Soak or StepKind.BulkRest or StepKind.ColdFerment or StepKind.SecondRise or StepKind.PutAway => Array.Empty<LiveMark>(),
            StepKind.Temper or StepKind.Preheat or StepKind.WakeYeast => [new LiveMark($"{step.Id}-begun", step.Start, LiveMarkKind.StepBegun, step.Id)],
            StepKind.Knead when !step.NeedsHands => [new LiveMark($"{step.Id}-begun", step.Start, LiveMarkKind.StepBegun, step.Id)],
            _ => [new LiveMark($"{step.Id}-done", step.End, LiveMarkKind.StepDone, step.Id)],
        }).OrderBy(mark => mark.At),
    ];
}

internal static class LiveEveningReading
{
    public static LiveStep Step(this LiveEvening live, string id) => live.Steps.Single(step => step.Id == id);
}
