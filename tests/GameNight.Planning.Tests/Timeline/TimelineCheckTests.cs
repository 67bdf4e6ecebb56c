using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Tests.Timeline;

public class TimelineCheckTests
{
    [Theory]
    [InlineData("shape-1", -120)]
    [InlineData("top-2", -1)]
    [InlineData("bake-3", 4)]
    [InlineData("serve-4", 30)]
    [InlineData("knead-1", 45)]
    [InlineData("ball-2", 300)]
    [InlineData("mix-1", -60)]
    [InlineData("preheat", 20)]
    [InlineData("temper-1", -240)]
    [InlineData("sauce", -1440)]
    [InlineData("shop", 10)]
    [InlineData("cold-ferment-1", 5)]
    public void Sees_a_step_that_was_moved(string id, int minutes)
    {
        var timeline = Evening.Usual.Plan(Effort.Quick);
        var by = Duration.FromMinutes(minutes);
        var moved = timeline with
        {
            Steps = [.. timeline.Steps.Select(step =>
                step.Id == id ? step with { Start = step.Start + by, End = step.End + by } : step)],
        };

        Assert.NotEmpty(TimelineCheck.Breaches(Evening.Usual, moved));
        Assert.Throws<InvalidOperationException>(() => TimelineCheck.Require(Evening.Usual, moved));
    }

    [Fact]
    public void Sees_a_step_that_is_missing()
    {
        var timeline = Evening.Usual.Plan(Effort.Quick);

        var without = timeline with { Steps = [.. timeline.Steps.Where(step => step.Id != "rack-2")] };

        Assert.NotEmpty(TimelineCheck.Breaches(Evening.Usual, without));
    }

    [Theory]
    [InlineData("wake-yeast-1", -15)]
    [InlineData("wake-yeast-1", 5)]
    [InlineData("mix-2", -90)]
    public void Sees_woken_yeast_and_bowls_that_were_moved(string id, int minutes)
    {
        var request = Evening.Usual with { YeastWakes = Duration.FromMinutes(10), Bowls = 1 };
        var timeline = request.Plan(Effort.Quick);

        Assert.Empty(TimelineCheck.Breaches(request, timeline));
        Assert.NotEmpty(TimelineCheck.Breaches(request, Moved(timeline, id, minutes)));
    }

    [Theory]
    [InlineData("own-1", 120)]
    [InlineData("own-2", 0)]
    public void Sees_an_oven_or_a_ring_that_is_wanted_twice(string id, int minutes)
    {
        var afternoon = (Evening.SaturdayAt(12), Evening.SaturdayAt(19));
        var request = Evening.Usual with
        {
            HobRings = 1,
            Own =
            [
                new OwnStep(1, Duration.FromMinutes(60), false, afternoon.Item1, afternoon.Item2, Takes: Station.OvenAtOtherHeat),
                new OwnStep(2, Duration.FromMinutes(60), false, afternoon.Item1, afternoon.Item2, Takes: Station.Hob),
            ],
        };
        var timeline = request.Plan(Effort.Quick);
        var to = id == "own-2" ? timeline.Step("sauce").Start : timeline.Step(id).Start + Duration.FromMinutes(minutes);

        Assert.Empty(TimelineCheck.Breaches(request, timeline));
        Assert.NotEmpty(TimelineCheck.Breaches(request, Moved(timeline, id, (int)(to - timeline.Step(id).Start).TotalMinutes)));
    }

    private static HostTimeline Moved(HostTimeline timeline, string id, int minutes)
    {
        var by = Duration.FromMinutes(minutes);
        return timeline with
        {
            Steps = [.. timeline.Steps.Select(step => step.Id == id ? step with { Start = step.Start + by, End = step.End + by } : step)],
        };
    }

    [Theory]
    [InlineData("second-mix", -180)]
    [InlineData("second-mix", 30)]
    [InlineData("second-rise", 1)]
    public void Sees_a_second_dough_that_was_moved(string id, int minutes)
    {
        var request = Evening.Usual with { SecondDough = new SecondDoughWork(Duration.FromMinutes(12), Duration.FromMinutes(60), FirstPie: 1) };
        var timeline = request.Plan(Effort.Quick);
        var by = Duration.FromMinutes(minutes);

        Assert.Empty(TimelineCheck.Breaches(request, timeline));
        Assert.NotEmpty(TimelineCheck.Breaches(request, timeline with
        {
            Steps = [.. timeline.Steps.Select(step => step.Id == id ? step with { Start = step.Start + by, End = step.End + by } : step)],
        }));
    }

    [Fact]
    public void Sees_work_while_the_host_is_away()
    {
        var timeline = Evening.Usual.Plan(Effort.Quick);
        var sauce = timeline.Step("sauce");
        var out5 = new HostAway(sauce.Start + Duration.FromMinutes(5), sauce.Start + Duration.FromMinutes(10));

        var breaches = TimelineCheck.Breaches(
            Evening.Usual with { Away = [.. Evening.Usual.Away, out5] }, timeline);

        Assert.Equal("sauce while the host is away", Assert.Single(breaches));
    }

    [Fact]
    public void Sees_more_work_than_hands()
    {
        var request = Evening.Usual with { Hands = 2 };
        var timeline = request.Plan(Effort.Quick);

        Assert.NotEmpty(TimelineCheck.Breaches(request with { Hands = 1 }, timeline));
    }
}
