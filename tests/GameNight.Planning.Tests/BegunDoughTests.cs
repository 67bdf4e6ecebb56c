using System.Text.Json;
using CsCheck;
using GameNight.Planning.Appetite;
using GameNight.Planning.Contract;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class BegunDoughTests
{
    private static readonly NightPlanner Planner = new(SharedFolder.Tables);

    private static readonly Gen<IReadOnlyList<GuestSnapshot>> Answers =
        Gen.Select(Gen.Enum<AnswerState>(), Gen.Enum<PortionClass>(), Gen.Enum<Allergen>().Array[0, 2], Gen.Bool).Array[0, 12]
            .Select(rows => ANightWith(rows.Select((row, index) => (row.Item1, AnEater(
                $"late-{index}",
                row.Item2,
                needs: new DietaryNeeds([], [.. row.Item3.Distinct()], []),
                eatsHere: row.Item4)))).Guests);

    [Fact]
    public void A_begun_dough_never_changes_whatever_is_answered_later() => Answers.Sample(
        answers =>
        {
            var (night, plan) = Begun(guests: 7);
            var later = Plan(night with { Guests = answers }, Duration.FromDays(2));

            Assert.Equal(Kept(plan), Kept(later));
            Assert.Equal(plan.Dough.Balls, later.Pies.Count.Value.Value);
            Assert.Equal(plan.Dough.Balls, later.Split.Pies.Count);
        },
        iter: 60);

    [Fact]
    public void A_begun_dough_never_changes_with_recipe_kitchen_hours_or_numbers_set_by_hand()
    {
        var (night, plan) = Begun(guests: 6);

        var later = Plan(
            night with
            {
                Formula = night.Formula with { Water = new Share(0.7), Loss = new Share(0.05) },
                Shape = night.Shape with { Diameter = new Centimetres(25), SlicesPerPie = 4 },
                Kitchen = night.Kitchen with { BatchCapacity = new Grams(600), Room = new Celsius(27), Tap = new Celsius(25) },
                RunOutChance = new Share(0.01),
                Away = [.. night.Away, new HostAway(plan.Timeline.DoughCommitment!.Value - Duration.FromHours(1), plan.Timeline.DoughCommitment.Value + Duration.FromHours(4))],
                ByHand = new ByHand(new PieCount(11), new Grams(300), new Share(0.02), null, null, Now + Duration.FromHours(1)),
            },
            Duration.FromDays(1));

        Assert.Equal(Kept(plan), Kept(later));
        Assert.Equal(plan.Slices.Slices, later.Slices.Slices);
        Assert.NotNull(later.Timeline.LastPieAt);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void The_evening_is_planned_around_a_begun_dough_at_every_effort(int slices)
    {
        var (night, plan) = Begun(guests: 9);

        var later = Planner.Plan(night, plan.Timeline.DoughCommitment!.Value + Duration.FromDays(1), new Effort(slices), null, TestContext.Current.CancellationToken);

        Assert.Empty(later.Conflicts.Except(plan.Conflicts));
        Assert.Equal(night.ServeAt, later.Timeline.FirstPieAt);
        Assert.Equal(plan.Timeline.ColdFermentLength, later.Timeline.ColdFermentLength, WithinHalfAnHour);
        Assert.Equal(later.Dough.Batches.Count, later.Timeline.Steps.Count(step => step.Kind == StepKind.ColdFerment));
    }

    [Fact]
    public void More_guests_than_the_dough_was_begun_for_raise_the_run_out_chance_and_say_how_many_pies_would_do()
    {
        var (night, plan) = Begun(guests: 5);
        var crowd = ANight().WithGuests(12).Build().Guests;

        var later = Plan(night with { Guests = crowd }, Duration.FromDays(2));

        Assert.True(later.Pies.Chosen.RunOutChance > plan.Pies.Chosen.RunOutChance);
        Assert.True(later.Pies.Count.Proposed > later.Pies.Count.Value);
        Assert.False(later.Pies.Count.IsByHand);
        Assert.Contains(new DoughIsBegun(later.Pies.Count.Value), later.Pies.Count.Because);
    }

    [Fact]
    public void A_night_moved_later_says_how_long_the_dough_is_cold_now_and_how_much_it_rises()
    {
        var (night, plan) = Begun(guests: 6);

        var moved = Plan(night with { ServeAt = night.ServeAt + Duration.FromDays(2), Away = [] }, Duration.FromDays(2));

        var conflict = Assert.Single(moved.Conflicts.OfType<BegunDoughOffItsHours>());
        Assert.Equal(plan.Timeline.ColdFermentLength + Duration.FromDays(2), conflict.Cold, WithinHalfAnHour);
        Assert.True(conflict.GasOfWanted > 1.05, $"{conflict.GasOfWanted}");
        Assert.Equal(Kept(plan), Kept(moved));
    }

    [Fact]
    public void A_dough_within_its_hours_makes_the_wanted_gas()
    {
        var (night, plan) = Begun(guests: 6);
        var tooNarrow = night with
        {
            ColdFerment = new ColdFerment(Duration.Zero, Duration.FromHours(1), Duration.FromHours(2)),
        };

        var conflict = Assert.Single(Plan(tooNarrow, Duration.Zero).Conflicts.OfType<BegunDoughOffItsHours>());

        Assert.InRange(conflict.GasOfWanted, 0.98, 1.02);
        Assert.Empty(plan.Conflicts.OfType<BegunDoughOffItsHours>());
    }

    [Fact]
    public void A_night_moved_before_its_dough_can_rest_keeps_the_dough_and_says_that_it_does_not_work()
    {
        var (night, plan) = Begun(guests: 6);
        var mixing = plan.Timeline.DoughCommitment!.Value;

        var moved = Plan(night with { ServeAt = mixing + Duration.FromHours(2) }, Duration.FromHours(1));

        Assert.Equal(Kept(plan), Kept(moved));
        Assert.Null(moved.Timeline.FirstPieAt);
        Assert.Equal(mixing, moved.Timeline.DoughCommitment);
        Assert.Equal(Duration.Zero, Assert.Single(moved.Conflicts.OfType<BegunDoughOffItsHours>()).Cold);
    }

    [Fact]
    public void A_plan_without_a_dough_has_nothing_to_begin()
    {
        var nobody = ANight().Build();
        var tooLate = ANight().WithGuests(6).But(night => night with { ServeAt = Now + Duration.FromHours(5) }).Build();

        Assert.Null(BegunDough.Of(nobody, Plan(nobody, Duration.Zero)));
        Assert.Null(BegunDough.Of(tooLate, Plan(tooLate, Duration.Zero)));
    }

    [Fact]
    public void A_snapshot_with_a_begun_dough_is_read_back_as_it_was()
    {
        var (night, _) = Begun(guests: 8);
        var text = JsonSerializer.Serialize(night, PlanJson.Options);

        var read = JsonSerializer.Deserialize<NightSnapshot>(text, PlanJson.Options)!;

        Assert.Equal(PlanJson.Canonical(night), PlanJson.Canonical(read));
        Assert.Empty(new SnapshotCheck(SharedFolder.Tables).Problems(read));
    }

    [Fact]
    public void A_begun_dough_that_no_plan_made_is_refused()
    {
        var (night, _) = Begun(guests: 8);
        var begun = night.Begun!;
        var check = new SnapshotCheck(SharedFolder.Tables);

        Assert.NotEmpty(check.Problems(night with { Begun = begun with { Steps = [] } }));
        Assert.NotEmpty(check.Problems(night with { Begun = begun with { Dough = begun.Dough with { Balls = 1000 } } }));
        Assert.NotEmpty(check.Problems(night with { Begun = begun with { Shape = begun.Shape with { SlicesPerPie = 0 } } }));
    }

    [Fact]
    public void Planning_again_around_a_begun_dough_begins_the_same_dough()
    {
        var (night, _) = Begun(guests: 7);

        var again = BegunDough.Of(night, Plan(night, Duration.FromDays(1)))!;

        Assert.Equal(PlanJson.Canonical(night.Begun), PlanJson.Canonical(again));
    }

    /// <summary>When the balls leave the fridge follows the evening, which may be improved.</summary>
    private static bool WithinHalfAnHour(Duration left, Duration right) =>
        Math.Abs((left - right).TotalMinutes) <= 30;

    /// <summary>A night whose dough is begun, and the plan it was begun by.</summary>
    internal static (NightSnapshot Night, NightPlan Plan) Begun(int guests)
    {
        var night = ANight().WithGuests(guests).Build();
        var plan = Plan(night, Duration.Zero);
        return (night with { Begun = BegunDough.Of(night, plan) }, plan);
    }

    internal static NightPlan Plan(NightSnapshot night, Duration after) =>
        Planner.Plan(night, Now + after, Effort.Quick, null, TestContext.Current.CancellationToken);

    private static NightSnapshot ANightWith(IEnumerable<(AnswerState Answer, Eater Eater)> eaters) =>
        eaters.Aggregate(ANight(), (night, row) => night.With(row.Answer, row.Eater)).Build();

    /// <summary>Everything of a plan that must stay, as text.</summary>
    private static string Kept(NightPlan plan) => PlanJson.Canonical(new
    {
        plan.Dough,
        plan.Yeast,
        plan.Water,
        plan.Timeline.AnswerBy,
        plan.Timeline.DoughCommitment,
        Steps = plan.Timeline.Steps
            .Where(step => step.Kind is StepKind.Shop or StepKind.Mix or StepKind.Knead or StepKind.Ball or StepKind.BulkRest)
            .Select(step => (step.Id, step.Start, step.End).ToString()),
    });
}
