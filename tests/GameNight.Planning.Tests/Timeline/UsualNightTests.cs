using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Tests.Timeline;

public class UsualNightTests
{
    public static TheoryData<int> Efforts => new(0, Effort.Usual.Slices);

    private static HostTimeline Plan(TimelineRequest request, int slices)
    {
        var timeline = request.Plan(new Effort(slices));
        Assert.Empty(TimelineCheck.Breaches(request, timeline));
        return timeline;
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Puts_the_first_pie_on_the_table_at_the_serving_time(int slices)
    {
        var timeline = Plan(Evening.Usual, slices);

        // By hand: serve 2, rack 3, bake 7, top 3, shape 4 minutes before half past seven.
        Assert.Equal(Evening.SaturdayAt(19, 30), timeline.FirstPieAt);
        Assert.Equal(Evening.SaturdayAt(19, 11), timeline.Step("shape-1").Start);
        Assert.Equal(Evening.SaturdayAt(19, 18), timeline.Step("bake-1").Start);

        // One surface: a pie every 7 + 12 minutes.
        Assert.Equal(Evening.SaturdayAt(19, 30) + Duration.FromMinutes(5 * 19), timeline.LastPieAt);
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Mixes_on_the_free_evening_two_days_before(int slices)
    {
        var timeline = Plan(Evening.Usual, slices);

        Assert.Equal(Evening.On(-2, 18, 30), timeline.DoughCommitment);
        Assert.Equal(Evening.On(-2, 17, 30), timeline.AnswerBy);
        Assert.True(timeline.Step("ball-2").End <= Evening.On(-2, 22));
    }

    [Theory]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(9)]
    [InlineData(12)]
    public void Answers_close_on_a_half_hour_at_or_before_the_shopping(int pies)
    {
        var request = Evening.Usual.WithPies(pies) with { MixAt = Evening.On(-2, 18, 47) };
        var timeline = request.Plan(Effort.Quick);

        var (close, shopping) = (timeline.AnswerBy!.Value, timeline.Step("shop").Start);
        Assert.Equal(0, close.ToUnixTimeSeconds() % 1800);
        Assert.InRange(shopping - close, Duration.Zero, Duration.FromMinutes(29));
        Assert.NotEqual(0, shopping.ToUnixTimeSeconds() % 1800);
    }

    [Fact]
    public void Answers_do_not_close_before_the_moment_of_planning()
    {
        var shopping = Evening.On(-2, 17, 44);

        Assert.Equal(shopping, HostTimeline.AnswersClose(shopping, Evening.Usual with { Now = Evening.On(-2, 17, 40) }));
        Assert.Equal(Evening.On(-2, 17, 30), HostTimeline.AnswersClose(shopping, Evening.Usual with { Now = Evening.On(-2, 17, 30) }));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Leaves_a_breather_before_shaping_and_a_little_slack_before_the_oven(int slices)
    {
        var timeline = Plan(Evening.Usual, slices);

        Assert.Equal(Evening.SaturdayAt(18, 41), timeline.Step("grate-cheese").End);
        Assert.Equal(Duration.FromMinutes(30), timeline.Step("grate-cheese").CanWait);
        Assert.Equal(Duration.FromMinutes(10), timeline.Step("preheat").CanWait);
        Assert.Equal(Duration.FromMinutes(10), timeline.Step("temper-1").CanWait);
        Assert.Equal(Duration.Zero, timeline.Step("top-1").CanWait);
    }

    [Fact]
    public void Is_proved_best_within_the_usual_effort() =>
        Assert.Equal(TimelineQuality.Proved, Evening.Usual.Plan(Effort.Usual).Quality);

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Mixes_a_preferment_in_waking_hours_before_the_dough_and_shops_before_that(int slices)
    {
        var timeline = Plan(
            Evening.Usual with { Preferment = new PrefermentWork(Duration.FromMinutes(10), Duration.FromHours(12)) }, slices);

        var (preferment, mix) = (timeline.Step("preferment"), timeline.Step("mix-1"));
        Assert.InRange(mix.Start - preferment.Start, Duration.FromHours(12), Duration.FromHours(15));
        Assert.InRange(preferment.Start.InUtc().Hour, 7, 22);
        Assert.Equal(preferment.Start, timeline.DoughCommitment);
        Assert.True(timeline.AnswerBy + Duration.FromMinutes(60) <= preferment.Start);
    }

    [Fact]
    public void Takes_own_pies_out_of_the_oven_before_another_is_topped()
    {
        var request = Evening.Usual with { OwnPies = 2, PiesPerBake = 3, Hands = 3 };

        var timeline = Plan(request, slices: 2);

        Assert.True(timeline.Step("top-3").Start >= timeline.Step("bake-2").End);
        Assert.True(timeline.Step("top-2").Start < timeline.Step("bake-1").End);
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Takes_the_balls_of_many_pies_out_in_waves(int slices)
    {
        var request = Evening.Usual.WithPies(12);

        var timeline = Plan(request, slices);

        Assert.True(timeline.Steps.Count(step => step.Kind == StepKind.Temper) > 1);
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Mixes_when_the_host_says(int slices)
    {
        var request = Evening.Usual with { MixAt = Evening.On(-2, 19) };

        var timeline = Plan(request, slices);

        Assert.Equal(request.MixAt, timeline.DoughCommitment);
        Assert.DoesNotContain(timeline.Conflicts, conflict => conflict is ChosenMixTimeDoesNotFit);
    }

    [Fact]
    public void Needs_nothing_without_pies()
    {
        var timeline = (Evening.Usual with { Pies = 0, Balls = 0, Batches = 0 }).Plan(Effort.Usual);

        Assert.Empty(timeline.Steps);
        Assert.Empty(timeline.Conflicts);
        Assert.Null(timeline.AnswerBy);
    }

    [Fact]
    public void Minds_neither_the_order_of_unavailable_hours_nor_that_they_overlap()
    {
        var untidy = Evening.Usual with
        {
            Away = [.. Evening.Usual.Away.Reverse(), Evening.Usual.Away[0], .. Evening.Work(-2, -2)],
        };

        Assert.Equal(Evening.Usual.Plan(Effort.Usual).Steps, untidy.Plan(Effort.Usual).Steps);
    }

    [Fact]
    public void Bakes_forty_pies_on_one_stone_when_nobody_has_to_sleep()
    {
        var request = Evening.Usual.WithPies(40) with { Batches = 5, Away = [.. Evening.Sleep(-7, 0), .. Evening.Work(-2, -1)] };

        var timeline = Plan(request, slices: 0);

        Assert.Equal(Duration.FromMinutes(39 * 19), timeline.LastPieAt - timeline.FirstPieAt);
        Assert.Equal(
            new LastPieIsLate(Duration.FromMinutes(39 * 19), null, null), Assert.Single(timeline.Conflicts));
    }

    [Fact]
    public void Stops_when_it_is_cancelled() => Assert.ThrowsAny<OperationCanceledException>(
        () => Backwards.From(Evening.Usual, Effort.Usual, new CancellationToken(canceled: true)));
}
