using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Timeline;

public class OnTimeTests
{
    private static readonly NightPlanner Planner = new(SharedFolder.Tables);

    [Fact]
    public void A_plan_says_how_likely_its_times_hold_and_which_steps_decide()
    {
        var plan = Planner.Plan(ANight().WithGuests(9).Build(), Now, new Effort(1));
        var chance = plan.Timeline.OnTime!;

        Assert.InRange(chance.FirstPie.Value, 0.2, 1);
        Assert.True(chance.LastLateNineInTen >= Duration.Zero);
        Assert.NotEmpty(chance.Decisive);
        Assert.All(chance.Decisive, one => Assert.Contains(plan.Timeline.Steps, step => step.Id == one.StepId));
        Assert.Equal(chance.Decisive.OrderByDescending(one => one.Evenings.Value), chance.Decisive);
        Assert.Null(Planner.Plan(ANight().WithGuests(9).Build(), Now, Effort.Quick).Timeline.OnTime);
    }

    [Fact]
    public void Without_a_pie_there_is_no_time_to_keep() =>
        Assert.Null(Planner.Plan(ANight().Build(), Now, new Effort(1)).Timeline.OnTime);

    [Fact]
    public void The_same_timeline_has_the_same_chance()
    {
        var night = ANight().WithGuests(7).Build();

        Assert.Equal(Planner.Plan(night, Now, new Effort(1)).Timeline.OnTime!.LastPie, Planner.Plan(night, Now, new Effort(1)).Timeline.OnTime!.LastPie);
    }

    [Fact]
    public void Steps_that_never_differ_are_always_on_time()
    {
        var table = Banded(_ => 1);
        var (request, timeline) = Usual();

        var chance = OnTime.Of(request, timeline, table)!;

        Assert.Equal((1, 1), (chance.FirstPie.Value, chance.LastPie.Value));
        Assert.Equal((Duration.Zero, Duration.Zero), (chance.FirstLateNineInTen, chance.LastLateNineInTen));
    }

    [Fact]
    public void Wider_bands_make_it_less_likely_and_later()
    {
        var (request, timeline) = Usual();
        var wide = Banded(row => Math.Min(3, row.Band * 1.5));

        var (usual, wider) = (OnTime.Of(request, timeline, SharedFolder.Tables.Steps)!, OnTime.Of(request, timeline, wide)!);

        Assert.True(wider.FirstPie.Value < usual.FirstPie.Value);
        Assert.True(wider.LastLateNineInTen > usual.LastLateNineInTen);
    }

    /// <summary>Nobody holds the first pie back because a later one will slip behind a round: on the night that is not known yet.</summary>
    [Fact]
    public void A_round_at_the_table_makes_the_last_pie_later_and_not_the_first()
    {
        var open = Evening.Usual with { Away = [.. Evening.Usual.Away.Where(away => away.From < Evening.SaturdayAt(12))] };
        var rounds = open with
        {
            Away = [.. open.Away, new(Evening.SaturdayAt(20, 30), Evening.SaturdayAt(22, 0))],
        };

        var (freely, inBreaks) = (Chance(open), Chance(rounds));

        Assert.InRange(inBreaks.FirstLateNineInTen - freely.FirstLateNineInTen, -Duration.FromMinutes(10), Duration.FromMinutes(10));
        Assert.True(inBreaks.LastLateNineInTen > freely.LastLateNineInTen);

        static OnTimeChance Chance(TimelineRequest request) =>
            OnTime.Of(request, Backwards.From(request, new Effort(4), CancellationToken.None), SharedFolder.Tables.Steps)!;
    }

    /// <summary>A buffer where a step is least certain: nothing of the pies moves for it.</summary>
    [Fact]
    public void Balls_that_are_warm_as_long_ahead_as_they_may_take_longer_make_the_first_pie_likelier()
    {
        var (justAhead, byBand) = (Chance(10), Chance(18));

        Assert.True(byBand.Chance.FirstPie.Value > justAhead.Chance.FirstPie.Value + 0.03);
        Assert.Equal(justAhead.Timeline.Step("shape-1").Start, byBand.Timeline.Step("shape-1").Start);

        // By hand: tempering of some hours, four times in five within 15 %; at most half an hour.
        var plan = Planner.Plan(ANight().WithGuests(9).Build(), Now, Effort.Quick).Timeline;
        var tempering = plan.Step("temper-1").End - plan.Step("temper-1").Start;
        var expected = Math.Min(30, 0.15 * tempering.TotalMinutes);
        Assert.InRange((plan.Step("shape-1").Start - plan.Step("temper-1").End).TotalMinutes, expected - 1, expected + 1);

        static (HostTimeline Timeline, OnTimeChance Chance) Chance(int minutes)
        {
            var request = Evening.Usual with { BallsAhead = Duration.FromMinutes(minutes) };
            var timeline = request.Plan(Effort.Quick);
            return (timeline, OnTime.Of(request, timeline, SharedFolder.Tables.Steps)!);
        }
    }

    /// <summary>Warm balls wait two hours: by hand, the sixth pie is shaped 95 minutes after the first, so that 25 are left for being ahead.</summary>
    [Fact]
    public void Being_ahead_makes_no_second_wave_of_balls()
    {
        var timeline = (Evening.Usual with { BallsAhead = Duration.FromMinutes(60) }).Plan(Effort.Quick);

        Assert.Single(timeline.Steps, step => step.Kind == StepKind.Temper);
        Assert.Equal(timeline.Step("shape-6").Start - TimelineLimits.TemperedBeforeShaped, timeline.Step("temper-1").End);
    }

    private static StepTable Banded(Func<StepRow, double> band)
    {
        var table = SharedFolder.Tables.Steps;
        return new StepTable(
            [.. table.Steps.Select(row => row with { Band = band(row) })], table.ColdFerment, table.RescueDough, table.RestAfterBalling, table.Troubles);
    }

    private static (TimelineRequest Request, HostTimeline Timeline) Usual()
    {
        var request = Evening.Usual;
        return (request, request.Plan(Effort.Quick));
    }
}
