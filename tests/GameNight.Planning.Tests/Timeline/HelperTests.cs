using CsCheck;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Timeline;

public class HelperTests
{
    private static readonly Effort Little = new(1);
    private static readonly IReadOnlyList<StepKind> ForCooks = SharedFolder.Tables.Steps.ForCooks;

    /// <summary>One to three helpers, each of either skill, and a few own steps of the host, of a helper or of anybody.</summary>
    private static readonly Gen<TimelineRequest> Helped =
        from night in RandomNights.Any
        from skills in Gen.Bool.Array[1, 3]
        from own in Gen.Select(Gen.Int[5, 90], Gen.Int[-40 * 60, 3 * 60], Gen.Int[0, 240], Gen.Int[-1, 4]).Array[0, 3]
        select night with
        {
            Hands = 1 + skills.Length,
            Helpers = [.. skills.Select(isCook => isCook ? HelperSkill.Everything : HelperSkill.FetchAndClear)],
            ForCooks = ForCooks,
            Own = [.. own.Select((one, i) => new OwnStep(
                i + 1, Duration.FromMinutes(one.Item1), true,
                night.ServeAt + Duration.FromMinutes(one.Item2), night.ServeAt + Duration.FromMinutes(one.Item2 + one.Item1 + one.Item3),
                Who: one.Item4 < 0 ? null : one.Item4))],
        };

    [Fact]
    public void Nobody_does_two_things_at_once_or_what_is_not_theirs_on_random_nights_placed_quickly() =>
        Helped.Sample(night => KeepsItsRules(night, Effort.Quick), iter: 400, threads: 1);

    [Fact]
    public void Nor_when_the_solver_places_them() => Helped.Sample(night => KeepsItsRules(night, Little), iter: 15, threads: 1);

    private static bool KeepsItsRules(TimelineRequest night, Effort effort)
    {
        var timeline = night.Plan(effort);
        Assert.Empty(TimelineCheck.Breaches(night, timeline));
        return true;
    }

    [Fact]
    public void Of_the_work_at_dough_and_oven_who_fetches_and_clears_does_nothing_and_of_the_rest_what_they_can()
    {
        var night = Evening.Usual.WithPies(10) with { Hands = 2, Helpers = [HelperSkill.FetchAndClear], ForCooks = ForCooks };

        var timeline = night.Plan(Little);

        var helped = timeline.Steps.Where(step => step.By == 1).Select(step => step.Kind).Distinct().ToList();
        Assert.Contains(StepKind.Serve, helped);
        Assert.Empty(helped.Intersect([StepKind.Mix, StepKind.Knead, StepKind.Ball, StepKind.Sauce, StepKind.Shape, StepKind.Top]));
    }

    [Fact]
    public void What_is_done_days_ahead_is_the_hosts_for_helpers_come_for_the_evening()
    {
        var night = Evening.Usual with { Batches = 1, Hands = 3, Helpers = [HelperSkill.Everything, HelperSkill.FetchAndClear], ForCooks = ForCooks };

        var timeline = night.Plan(Little);

        Assert.All(timeline.Steps.Where(step => step.End <= timeline.Step("temper-1").Start), step => Assert.Null(step.By));
        Assert.Contains(timeline.Steps, step => step.By == 2);
    }

    [Fact]
    public void A_helper_of_less_skill_brings_the_last_pie_no_sooner_than_one_who_does_everything()
    {
        var night = Evening.Usual.WithPies(12) with { Hands = 2, PiesPerBake = 3 };

        var alone = (night with { Hands = 1 }).Plan(Effort.Quick).LastPieAt;
        var fetching = (night with { Helpers = [HelperSkill.FetchAndClear], ForCooks = ForCooks }).Plan(Effort.Quick).LastPieAt;
        var cooking = night.Plan(Effort.Quick).LastPieAt;

        Assert.True(cooking < fetching, $"{cooking} {fetching}");
        Assert.True(fetching < alone, $"{fetching} {alone}");
    }

    [Fact]
    public void The_check_sees_work_given_to_the_wrong_hands()
    {
        var night = Evening.Usual with { Hands = 2, Helpers = [HelperSkill.FetchAndClear], ForCooks = ForCooks };
        var timeline = night.Plan(Effort.Quick);

        HostTimeline Given(string id, int? by) => timeline with { Steps = [.. timeline.Steps.Select(step => step.Id == id ? step with { By = by } : step)] };

        Assert.Empty(TimelineCheck.Breaches(night, timeline));
        Assert.NotEmpty(TimelineCheck.Breaches(night, Given("shape-2", 1)));
        Assert.NotEmpty(TimelineCheck.Breaches(night, Given("serve-2", 2)));
    }

    [Fact]
    public void An_own_step_is_done_by_whom_it_is_for()
    {
        foreach (var who in new[] { 0, 1, 2 })
        {
            var night = Evening.Usual with
            {
                Hands = 3,
                Helpers = [HelperSkill.Everything, HelperSkill.FetchAndClear],
                ForCooks = ForCooks,
                Own = [new OwnStep(1, Duration.FromMinutes(30), true, Before: new StepTie(StepKind.Serve), Who: who)],
            };

            Assert.Equal(who == 0 ? null : who, night.Plan(Little).Step("own-1").By);
        }
    }

    [Fact]
    public void When_the_helper_who_cooks_leaves_only_the_host_shapes_and_the_other_still_serves()
    {
        var night = ANight().WithGuests(12).But(one => one with
        {
            Kitchen = one.Kitchen with { Hands = 2, PiesPerBake = 3 },
            Helpers = [HelperSkill.Everything],
        }).Build();
        var planner = new NightPlanner(SharedFolder.Tables);
        var plan = planner.Plan(night, Now, Effort.Quick);
        var at = plan.Timeline.Step("shape-1").Start;

        var both = planner.Live(night, plan, [], at)!;
        var alone = planner.Live(night, plan, [new LiveMark("a", at, LiveMarkKind.HandsNow, Hands: 1)], at)!;
        var fetching = planner.Live(night with { Helpers = [HelperSkill.FetchAndClear] }, plan, [], at)!;

        Assert.True(alone.LastPieAt > both.LastPieAt);
        Assert.True(fetching.LastPieAt > both.LastPieAt);
        Assert.True(fetching.LastPieAt <= alone.LastPieAt);
        var shaping = fetching.Steps.Where(step => step.Kind is StepKind.Shape or StepKind.Top && step.State == LiveState.Later).OrderBy(step => step.Start).ToList();
        Assert.All(shaping.Zip(shaping.Skip(1)), pair => Assert.True(pair.First.End <= pair.Second.Start));
    }
}
