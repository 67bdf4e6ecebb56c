using GameNight.Planning.Dough;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Live;

/// <summary>What taps say of how long work takes.</summary>
public class PaceSeenTests
{
    private static readonly StepTable Table = SharedFolder.Tables.Steps;
    private static readonly NightPlanner Planner = new(SharedFolder.Tables);
    private static readonly NightPlan Usual = Planner.Plan(ANight().WithGuests(5).Build(), Now, Effort.Quick);
    private static readonly Instant Begins = Instant.FromUtc(2026, 12, 12, 15, 0);

    /// <summary>By hand: cheese 15 min and toppings 25 min in the table; told done after 12 and 50 min.</summary>
    [Fact]
    public void A_step_that_follows_directly_took_from_the_tap_before_to_its_own()
    {
        var plan = Of(At(StepKind.Sauce, 0, 40), At(StepKind.GrateCheese, 40, 55), At(StepKind.PrepareToppings, 55, 80));

        var seen = PaceSeen.Of(plan, [Done("sauce", 45), Done("grate-cheese", 57), Done("prepare-toppings", 107)], KneadingWay.ByHand, Table);

        Assert.Equal([(StepName.GrateCheese, 12.0 / 15), (StepName.PrepareToppings, 50.0 / 25)], seen.Select(one => (one.Step, one.Ratio)));
    }

    /// <summary>Nobody taps between shaping a pie and topping it: together 4 + 3 min in the table, told after 14 min.</summary>
    [Fact]
    public void What_is_told_together_took_as_much_longer_each()
    {
        var plan = Of(At(StepKind.PrepareToppings, 0, 25), At(StepKind.Shape, 25, 29, 1), At(StepKind.Top, 29, 32, 1));

        var seen = PaceSeen.Of(plan, [Done("prepare-toppings", 20), Done("top-1", 34)], KneadingWay.ByHand, Table);

        Assert.Equal([(StepName.Shape, 2.0), (StepName.Top, 2.0)], seen.Select(one => (one.Step, one.Ratio)));
    }

    [Fact]
    public void After_a_pause_after_trouble_and_when_taps_come_in_one_go_nothing_is_told()
    {
        var close = Of(At(StepKind.GrateCheese, 0, 15), At(StepKind.PrepareToppings, 15, 40));
        LiveMark[] told = [Done("grate-cheese", 15), Done("prepare-toppings", 40)];
        Assert.Single(PaceSeen.Of(close, told, KneadingWay.ByHand, Table));

        Assert.Empty(PaceSeen.Of(Of(At(StepKind.GrateCheese, 0, 15), At(StepKind.PrepareToppings, 20, 45)), told, KneadingWay.ByHand, Table));
        foreach (var kind in new[] { LiveMarkKind.NotBefore, LiveMarkKind.WentWrong, LiveMarkKind.NewOrder, LiveMarkKind.HandsNow })
        {
            Assert.Empty(PaceSeen.Of(close, [.. told, new LiveMark("x", Begins + Duration.FromMinutes(30), kind)], KneadingWay.ByHand, Table));
        }

        Assert.Empty(PaceSeen.Of(close, [Done("grate-cheese", 15), Done("prepare-toppings", 16)], KneadingWay.ByHand, Table));
        Assert.Empty(PaceSeen.Of(close, [Done("grate-cheese", 15), Done("prepare-toppings", 300)], KneadingWay.ByHand, Table));
        Assert.Empty(PaceSeen.Of(close, [Done("prepare-toppings", 40)], KneadingWay.ByHand, Table));
    }

    /// <summary>A helper's work says nothing of when the host's began.</summary>
    [Fact]
    public void Each_pair_of_hands_is_measured_by_its_own_taps()
    {
        var plan = Of(At(StepKind.GrateCheese, 0, 15), At(StepKind.PrepareToppings, 0, 25, by: 1), At(StepKind.Shape, 15, 19, 1), At(StepKind.Top, 19, 22, 1));

        var seen = PaceSeen.Of(plan, [Done("grate-cheese", 15), Done("prepare-toppings", 20), Done("top-1", 22)], KneadingWay.ByHand, Table);

        Assert.Equal([1.0, 1.0], seen.Select(one => one.Ratio));
        Assert.Equal([StepName.Shape, StepName.Top], seen.Select(one => one.Step));
    }

    /// <summary>A whole night played at one and a half times the table's pace is learned as that.</summary>
    [Fact]
    public void A_night_played_at_another_pace_is_learned_as_that_pace()
    {
        const double pace = 1.5;
        var (marks, at, before) = (new List<LiveMark>(), Instant.MinValue, (TimelineStep?)null);
        foreach (var step in Usual.Timeline.Steps.Where(step => step.NeedsHands && step.End > step.Start).OrderBy(step => step.Start))
        {
            at = before is { } last && step.Start - last.End <= Duration.FromMinutes(1) ? at : Instant.Max(at, step.Start);
            var minutes = Table.MinutesOf(OnTimeName(step)) * (step.Kind == StepKind.Ball ? Usual.Dough.Batches[step.Number - 1].Balls : 1);
            at += Duration.FromMinutes(minutes * pace);
            before = step;
            if (step.Kind != StepKind.Shape)
            {
                marks.Add(new LiveMark(step.Id, at, LiveMarkKind.StepDone, step.Id));
            }
        }

        var seen = PaceSeen.Of(Usual, marks, KneadingWay.ByHand, Table);

        Assert.Contains(seen, one => one.Step == StepName.Shape);
        Assert.All(seen, one => Assert.Equal(pace, one.Ratio, 6));
    }

    /// <summary>By hand: the logarithms' mean is halved by one night, left at three quarters by three.</summary>
    [Fact]
    public void The_table_is_worth_one_night()
    {
        IReadOnlyList<SeenWork> twice = [new(StepName.GrateCheese, 2), new(StepName.GrateCheese, 2)];

        var one = Assert.Single(PaceSeen.Learn([twice], Table));
        Assert.Equal((StepName.GrateCheese, 15, 1), (one.Step, one.TableMinutes, one.Nights));
        Assert.Equal(30, one.SeenMinutes, 9);
        Assert.Equal(15 * Math.Sqrt(2), one.Minutes, 9);

        var three = Assert.Single(PaceSeen.Learn([twice, twice, twice, []], Table));
        Assert.Equal(15 * Math.Pow(2, 0.75), three.Minutes, 9);
        Assert.Empty(PaceSeen.Learn([], Table));
    }

    [Fact]
    public void A_night_is_planned_with_the_pace_of_its_kitchen()
    {
        var night = ANight().WithGuests(5).But(one => one with { Kitchen = one.Kitchen with { Pace = [new(StepName.PrepareToppings, 50), new(StepName.Shape, 6.5)] } }).Build();

        var steps = Planner.Plan(night, Now, Effort.Quick).Timeline.Steps;

        Assert.Equal(50, Minutes(StepKind.PrepareToppings));
        Assert.Equal(7, Minutes(StepKind.Shape));
        Assert.Equal(Table.MinutesOf(StepName.GrateCheese), Minutes(StepKind.GrateCheese));

        double Minutes(StepKind kind) => steps.First(step => step.Kind == kind) is var one ? (one.End - one.Start).TotalMinutes : 0;
    }

    [Theory]
    [InlineData(StepName.Shape, 0.4)]
    [InlineData(StepName.Shape, 241)]
    [InlineData(StepName.BulkRest, 60)]
    public void A_pace_out_of_range_or_of_what_waits_is_refused(StepName step, double minutes) =>
        Assert.NotEmpty(new SnapshotCheck(SharedFolder.Tables).Problems(
            ANight().But(one => one with { Kitchen = one.Kitchen with { Pace = [new(step, minutes)] } }).Build()));

    [Fact]
    public void The_same_step_twice_is_refused() =>
        Assert.NotEmpty(new SnapshotCheck(SharedFolder.Tables).Problems(
            ANight().But(one => one with { Kitchen = one.Kitchen with { Pace = [new(StepName.Shape, 5), new(StepName.Shape, 6)] } }).Build()));

    private static StepName OnTimeName(TimelineStep step) => OnTime.NameOf(step.Kind, isKneadedByHand: true);

    private static NightPlan Of(params TimelineStep[] steps) => Usual with { Timeline = Usual.Timeline with { Steps = steps } };

    private static TimelineStep At(StepKind kind, int from, int until, int number = 0, int? by = null) =>
        new(TimelineSteps.IdOf(kind, number), kind, number, Begins + Duration.FromMinutes(from), Begins + Duration.FromMinutes(until), true, Duration.Zero, by);

    private static LiveMark Done(string step, int minute) => new(step, Begins + Duration.FromMinutes(minute), LiveMarkKind.StepDone, step);
}
