using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Tests.Timeline;

public class TimelineConflictTests
{
    public static TheoryData<int> Efforts => new(0, Effort.Usual.Slices);

    private static TimelineRequest OneBatchAnyTime => Evening.Usual with { Away = [], Batches = 1 };

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Serving_in_twenty_hours_is_too_late_for_a_cold_ferment(int slices)
    {
        var request = OneBatchAnyTime with { Now = Evening.On(-1, 23, 30) };

        var timeline = request.Plan(new Effort(slices));

        // By hand: shape 19:11, balls out 17:11, balled 40 h before at Fri 01:11; balling 12, rest 120, knead 20, mix 15.
        // From now on: shop until 00:30, balled at 03:17, balls out on Sunday 19:17, shape 21:17, table 21:36.
        Assert.Empty(timeline.Steps);
        Assert.Equal(
            new TooLateForColdFerment(
                NeededMixAt: Evening.On(-2, 22, 24),
                EarliestServeAt: Evening.On(1, 21, 45),
                HoursPossible: Duration.FromMinutes((18 * 60) + 41),
                // Balled at 03:17 and out at 17:11: 13 h 54 min.
                ColdPossible: Duration.FromHours(13)),
            Assert.Single(timeline.Conflicts));
    }

    [Fact]
    public void The_shorter_cold_ferment_named_is_one_that_works_and_an_hour_more_is_not()
    {
        var request = Evening.Usual with { Now = Evening.On(-1, 20) };
        var cold = Assert.IsType<TooLateForColdFerment>(Assert.Single(request.Plan(Effort.Quick).Conflicts)).ColdPossible!.Value;

        Assert.NotEmpty(With(cold).Steps);
        Assert.Empty(With(cold + Duration.FromHours(1)).Steps);

        HostTimeline With(Duration hours) =>
            (request with { ColdFerment = request.ColdFerment with { Shortest = hours, Wanted = hours } }).Plan(Effort.Quick);
    }

    /// <summary>Thirty pies take one pair of hands four and a half hours, and bedtime is three and a half after the first; ovens there are enough.</summary>
    [Fact]
    public void The_number_of_hands_named_is_one_that_works_and_one_fewer_is_not()
    {
        var request = Evening.Usual.WithPies(30) with { PiesPerBake = 6, Batches = 4 };
        var conflict = request.Plan(Effort.Quick).Conflicts.OfType<NoFreeHands>().First();

        var hands = Assert.IsType<int>(conflict.HandsThen);

        Assert.NotEmpty((request with { Hands = hands }).Plan(Effort.Quick).Steps);
        Assert.Empty((request with { Hands = hands - 1 }).Plan(Effort.Quick).Steps);
    }

    [Fact]
    public void The_earliest_serving_time_named_is_one_that_works()
    {
        var request = Evening.Usual with { Now = Evening.On(-1, 20) };
        var conflict = Assert.IsType<TooLateForColdFerment>(Assert.Single(request.Plan(Effort.Quick).Conflicts));

        Assert.NotEmpty((request with { ServeAt = conflict.EarliestServeAt }).Plan(Effort.Quick).Steps);
        Assert.Empty((request with { ServeAt = conflict.EarliestServeAt - Duration.FromMinutes(15) }).Plan(Effort.Quick).Steps);
    }

    [Fact]
    public void A_serving_time_that_has_passed_is_named()
    {
        var timeline = (Evening.Usual with { Now = Evening.Usual.ServeAt }).Plan(Effort.Quick);

        Assert.Equal(new ServingTimeHasPassed(Evening.Usual.ServeAt), Assert.Single(timeline.Conflicts));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Nobody_at_home_to_take_the_balls_out_is_named_with_what_would_work(int slices)
    {
        var request = Evening.Usual with
        {
            Away = [.. Evening.Usual.Away, new HostAway(Evening.SaturdayAt(12), Evening.SaturdayAt(18))],
        };

        var timeline = request.Plan(new Effort(slices));

        // By hand: shape 19:11, or 15 minutes sooner if it waits shaped and topped, so out between 14:56 and 17:11; bake
        // 19:18, so oven on between 17:23 and 17:53. Out at 18:00 means shape at 20:00 and the table at 20:19.
        Assert.Empty(timeline.Steps);
        Assert.Equal(
            [
                new NoFreeHands(
                    StepKind.Temper,
                    Number: 1,
                    WindowFrom: Evening.SaturdayAt(14, 56),
                    WindowUntil: Evening.SaturdayAt(17, 12),
                    NearestFree: Evening.SaturdayAt(18),
                    ServeAtThen: Evening.SaturdayAt(20, 30)),
                new NoFreeHands(
                    StepKind.Preheat,
                    Number: 0,
                    WindowFrom: Evening.SaturdayAt(17, 23),
                    WindowUntil: Evening.SaturdayAt(17, 54),
                    NearestFree: Evening.SaturdayAt(18),
                    ServeAtThen: Evening.SaturdayAt(20, 30)),
            ],
            timeline.Conflicts.Cast<NoFreeHands>().Select(conflict => conflict with { FreeThen = null }));
        Assert.All(
            timeline.Conflicts.Cast<NoFreeHands>(),
            conflict => Assert.Equal([new HostAway(Evening.SaturdayAt(12), Evening.SaturdayAt(18))], conflict.FreeThen!));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void A_host_who_is_always_away_gets_a_conflict_without_a_way_out(int slices)
    {
        var request = Evening.Usual with { Away = [new HostAway(Evening.On(-100, 0), Evening.On(100, 0))] };

        var conflicts = request.Plan(new Effort(slices)).Conflicts;

        Assert.NotEmpty(conflicts);
        Assert.All(conflicts, conflict => Assert.True(conflict is NoFreeHands { NearestFree: null, ServeAtThen: null }));
    }

    [Fact]
    public void More_pies_than_fit_before_bedtime_are_named_together_with_the_oven()
    {
        var timeline = Evening.Usual.WithPies(14).Plan(Effort.Quick);

        Assert.Empty(timeline.Steps);
        Assert.Contains(timeline.Conflicts, conflict => conflict is NoFreeHands { Number: > 1, ServeAtThen: not null });
        Assert.Contains(timeline.Conflicts, conflict => conflict is LastPieIsLate);
    }

    [Fact]
    public void A_surface_that_recovers_longer_than_the_oven_may_idle_clashes()
    {
        var request = Evening.Usual with
        {
            Durations = Evening.Durations with { Recovery = TimelineLimits.HotBetweenPies + Duration.FromMinutes(30) },
        };

        var clash = Assert.IsType<RulesClash>(Assert.Single(request.Plan(Effort.Usual).Conflicts));

        Assert.Equal([StepKind.Bake], clash.Steps);
        Assert.Equal(Duration.FromMinutes(30), clash.By);
    }

    [Fact]
    public void A_shortest_ferment_beyond_the_longest_clashes()
    {
        var request = Evening.Usual with
        {
            ColdFerment = new ColdFerment(Duration.FromHours(50), Duration.FromHours(48), Duration.FromHours(40)),
        };

        var clash = Assert.IsType<RulesClash>(Assert.Single(request.Plan(Effort.Quick).Conflicts));

        Assert.Equal([StepKind.Ball, StepKind.Temper], clash.Steps.Order());
        Assert.Equal(Duration.FromHours(10), clash.By);
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void A_mixing_time_that_does_not_fit_is_told_and_the_night_planned_without_it(int slices)
    {
        var request = OneBatchAnyTime with { MixAt = Evening.On(-1, 12) };

        var timeline = request.Plan(new Effort(slices));

        // By hand: 40 h leave until Thu 22:24; 72 h before 17:01, less 12 + 60 + 120 + 20 + 15 minutes, is Wed 13:14.
        Assert.Equal(
            new ChosenMixTimeDoesNotFit(Evening.On(-1, 12), Evening.On(-3, 13, 14), Evening.On(-2, 22, 24)),
            timeline.Conflicts[0]);
        Assert.Equal((OneBatchAnyTime with { MixAt = null }).Plan(new Effort(slices)).Steps, timeline.Steps);
    }

    [Fact]
    public void The_last_of_six_pies_on_one_stone_is_late_and_two_at_once_would_do()
    {
        var timeline = Evening.Usual.Plan(Effort.Quick);

        Assert.Equal(new LastPieIsLate(Duration.FromMinutes(95), 2, 1), Assert.Single(timeline.Conflicts));
        Assert.Empty((Evening.Usual with { PiesPerBake = 2 }).Plan(Effort.Quick).Conflicts);
    }

    [Fact]
    public void Work_of_thirty_hours_finds_no_place_between_two_nights_of_sleep()
    {
        var long30 = Duration.FromHours(30);
        StepDurations[] tooLong =
        [
            Evening.Durations with { Shop = long30 },
            Evening.Durations with { Mix = long30 },
            Evening.Durations with { Knead = long30 },
            Evening.Durations with { Sauce = long30 },
            Evening.Durations with { GrateCheese = long30 },
            Evening.Durations with { PrepareToppings = long30 },
            Evening.Durations with { Shape = long30 },
            Evening.Durations with { Top = long30 },
            Evening.Durations with { Bake = long30 },
            Evening.Durations with { Serve = long30 },
        ];

        foreach (var durations in tooLong)
        {
            var timeline = (Evening.Usual with { Durations = durations }).Plan(Effort.Quick);

            Assert.Empty(timeline.Steps);
            Assert.NotEmpty(timeline.Conflicts);
        }
    }

    [Fact]
    public void Waiting_of_thirty_hours_is_no_trouble()
    {
        var request = Evening.Usual with { Durations = Evening.Durations with { BulkRest = Duration.FromHours(30) } };

        Assert.NotEmpty(request.Plan(Effort.Quick).Steps);
    }
}
