using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Live;
using GameNight.Planning.Tests.Toppings;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Live;

/// <summary>Nights that go as nights go: some taps early, some late, some forgotten. Looked at by plain code.</summary>
public class LiveNightPropertyTests
{
    private const int OrderedEvenings = 300;

    private static readonly NightPlanner Planner = new(SharedFolder.Tables);

    private static readonly IReadOnlyList<(NightSnapshot Night, NightPlan Plan)> Nights =
    [
        .. new[] { (5, 1, 1), (9, 1, 1), (12, 2, 2), (9, 2, 1) }.Select(kind =>
        {
            var night = ANight().WithGuests(kind.Item1).But(one => one with { Kitchen = one.Kitchen with { Hands = kind.Item2, PiesPerBake = kind.Item3 } }).Build();
            return (night, Planner.Plan(night, Now, Effort.Quick));
        }),
        OnTwoDoughs(),
        WithWokenYeastAndOneBowl(),
    ];

    private static (NightSnapshot Night, NightPlan Plan) WithWokenYeastAndOneBowl()
    {
        var night = ANight().WithGuests(10).But(one => one with
        {
            Formula = one.Formula with { Yeast = YeastForm.ActiveDry, Preferment = null },
            Kitchen = one.Kitchen with { Bowls = 1, HobRings = 1 },
            OwnSteps =
            [
                new OwnStep(1, Duration.FromMinutes(40), false, Before: new StepTie(StepKind.Shape), Takes: Station.Hob),
                new OwnStep(2, Duration.FromMinutes(40), true, Before: new StepTie(StepKind.Shape), Takes: Station.OvenAtOtherHeat),
            ],
        }).Build();
        return (night, Planner.Plan(night, Now, Effort.Quick));
    }

    private static (NightSnapshot Night, NightPlan Plan) OnTwoDoughs()
    {
        var night = ANight().WithGuests(7).With(AnswerState.Coming, AnEater("apart", needs: ASplit.NoGluten))
            .But(one => one with { Menu = one.Menu with { SecondDough = AMenu.Maize } }).Build();
        return (night, Planner.Plan(night, Now, Effort.Quick));
    }

    private static readonly Gen<(int Night, int[] Slips, bool[] Told, double When)> Evenings =
        Gen.Select(Gen.Int[0, Nights.Count - 1], Gen.Int[-3, 12].Array[200], Gen.Double[0, 1].Select(chance => chance < 0.9).Array[200], Gen.Double[0, 1]);

    [Fact]
    public void What_is_tapped_stands_and_what_is_to_come_keeps_its_order_lags_and_hands() => Evenings.Sample(evening =>
    {
        var (night, plan) = Nights[evening.Night];
        var (first, last) = (plan.Timeline.Steps[0].Start, plan.Timeline.LastPieAt!.Value);
        var now = first + (last - first) * evening.When;
        var marks = Marks(plan, evening.Slips, evening.Told).Where(mark => mark.At <= now).ToList();

        var live = Planner.Live(night, plan, marks, now)!;

        var byId = live.Steps.ToDictionary(step => step.Id);
        Assert.Equal(plan.Timeline.Steps.Select(step => step.Id).Order(), byId.Keys.Order());
        Assert.All(marks.Where(mark => mark.Kind == LiveMarkKind.StepDone), mark => Assert.Equal((LiveState.Done, mark.At), (byId[mark.Step!].State, byId[mark.Step!].End)));
        Assert.All(live.Steps, step => Assert.True(step.End >= step.Start, $"{step.Id} ends before it begins"));
        Assert.All(live.Steps.Where(step => step.State == LiveState.Later), step => Assert.True(step.Start >= step.Planned.Start || !step.IsTapped, $"{step.Id} begins before its plan"));
        Assert.All(live.Steps.Where(step => step is { StartsItself: true, State: LiveState.Due or LiveState.Later }), step => Assert.True(step.Start >= now - Duration.FromMinutes(1), $"{step.Id} was to begin in the past"));

        // Of what is still to come: nobody tops what is not shaped, nothing bakes that is not topped, one surface one pie.
        for (var pie = 1; pie <= plan.Split.Pies.Count; pie++)
        {
            foreach (var (before, after) in new[] { ("shape", "top"), ("top", "bake"), ("bake", "rack"), ("rack", "serve") })
            {
                var (earlier, later) = (byId[$"{before}-{pie}"], byId[$"{after}-{pie}"]);
                Assert.True(later.State != LiveState.Later || later.Start >= earlier.End - Duration.FromMinutes(1), $"{later.Id} before {earlier.Id} ends");
            }

            if (pie > night.Kitchen.PiesPerBake && byId[$"bake-{pie}"].State == LiveState.Later)
            {
                Assert.True(byId[$"bake-{pie}"].Start >= byId[$"bake-{pie - night.Kitchen.PiesPerBake}"].End + night.Kitchen.Recovery - Duration.FromMinutes(1));
            }
        }

        // Hands: of the work to come never more at once than there are.
        var work = live.Steps.Where(step => step is { Planned.NeedsHands: true, State: LiveState.Later, IsTapped: true } && step.End > step.Start).ToList();
        Assert.All(work, step => Assert.True(
            work.Count(other => other.Start <= step.Start && other.End > step.Start) <= live.Hands, $"too few hands for {step.Id}"));

        // One ring of the hob, and an oven that is the pies' once it is heated up.
        if (byId.TryGetValue("own-1", out var soup) && byId["sauce"] is { State: LiveState.Later } sauce && soup.State != LiveState.Done)
        {
            Assert.True(sauce.Start >= soup.End || soup.Start >= sauce.End, "two things on one ring");
        }

        if (byId.TryGetValue("own-2", out var roast) && roast.State != LiveState.Done && byId["preheat"].State == LiveState.Later)
        {
            Assert.True(byId["preheat"].Start >= roast.End, "heated up around what needs another heat");
        }
    }, iter: 500);

    [Fact]
    public void A_tap_more_never_makes_what_is_done_undone_and_being_late_never_brings_the_last_pie_sooner() => Evenings.Sample(evening =>
    {
        var (night, plan) = Nights[evening.Night];
        var (first, last) = (plan.Timeline.FirstPieAt!.Value - Duration.FromHours(3), plan.Timeline.LastPieAt!.Value);
        var now = first + (last - first) * evening.When;
        var marks = Marks(plan, evening.Slips, evening.Told).Where(mark => mark.At <= now).ToList();
        var live = Planner.Live(night, plan, marks, now)!;
        if (live.Next is not { } next)
        {
            return;
        }

        var late = Planner.Live(night, plan, [.. marks, new LiveMark("late", now, LiveMarkKind.NotBefore, Until: Instant.Max(now, next.Start) + Duration.FromMinutes(15))], now)!;
        var tapped = Planner.Live(night, plan, [.. marks, new LiveMark("tap", now, next.StartsItself ? LiveMarkKind.StepBegun : LiveMarkKind.StepDone, next.Id)], now)!;

        Assert.True(late.LastPieAt >= live.LastPieAt);
        Assert.Subset(
            tapped.Steps.Where(step => step.State == LiveState.Done).Select(step => step.Id).ToHashSet(),
            live.Steps.Where(step => step.State == LiveState.Done).Select(step => step.Id).ToHashSet());
        Assert.NotEqual(next.Id, tapped.Next?.Id);
    }, iter: 200);

    /// <summary>What the search says of itself is looked at in the night that follows when the order is taken.</summary>
    [Fact]
    public void Another_order_leaves_what_is_done_and_keeps_what_it_promises()
    {
        var offered = 0;
        Evenings.Sample(
            evening =>
            {
                var (night, plan) = Nights[evening.Night];
                var (first, last) = (plan.Timeline.FirstPieAt!.Value - Duration.FromHours(3), plan.Timeline.LastPieAt!.Value);
                var now = first + (last - first) * evening.When;
                var marks = Marks(plan, evening.Slips, evening.Told).Where(mark => mark.At <= now).ToList();
                var kept = Planner.Live(night, plan, marks, now)!;

                if (Planner.AnotherOrder(night, plan, marks, now, new Effort(4)) is not { } order)
                {
                    return;
                }

                Interlocked.Increment(ref offered);
                var taken = Planner.Live(night, plan, [.. marks, new LiveMark("order", now, LiveMarkKind.NewOrder, Starts: order.Starts)], now)!;

                var before = kept.Steps.ToDictionary(step => step.Id);
                Assert.All(taken.Steps.Where(step => step.IsTapped && before[step.Id].State == LiveState.Done), step => Assert.Equal(before[step.Id], step));
                Assert.True(order.LessOver > Duration.Zero || order.Sooner > Duration.Zero);
                Assert.Equal((order.LastPieAt, order.Sooner), (taken.LastPieAt, kept.LastPieAt - taken.LastPieAt));
            },
            iter: OrderedEvenings);

        Assert.InRange(offered, 10, OrderedEvenings);
    }

    /// <summary>Each step as it really went: so many minutes off its plan, some of it never told.</summary>
    private static IEnumerable<LiveMark> Marks(NightPlan plan, int[] slips, bool[] told)
    {
        var slip = Duration.Zero;
        foreach (var (index, step) in plan.Timeline.Steps.Index())
        {
            if (step.Kind is StepKind.Rack or StepKind.Soak or StepKind.BulkRest or StepKind.ColdFerment or StepKind.SecondRise or StepKind.PutAway)
            {
                continue;
            }

            slip = Duration.Max(Duration.Zero, slip + Duration.FromMinutes(slips[index % slips.Length] / 4));
            if (told[index % told.Length])
            {
                var starts = step.Kind is StepKind.Temper or StepKind.Preheat or StepKind.WakeYeast || (step.Kind == StepKind.Knead && !step.NeedsHands);
                yield return new LiveMark(step.Id, (starts ? step.Start : step.End) + slip, starts ? LiveMarkKind.StepBegun : LiveMarkKind.StepDone, step.Id);
            }
        }
    }
}
