using CsCheck;
using GameNight.Planning.Contract;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Safety;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class NightPlannerTests
{
    /// <summary>Masses of kilograms added up from a few dozen parts.</summary>
    private const double RoundOff = 1e-6;

    private static readonly NightPlanner Planner = new(SharedFolder.Tables);

    private static readonly Gen<NightSnapshot> Nights =
        from eaters in Gen.Select(
            Gen.Enum<AnswerState>(), Gen.Enum<PortionClass>(), Gen.Enum<Diet>().Array[0, 1], Gen.Enum<Allergen>().Array[0, 2],
            Gen.Enum<Allergen>().Array[0, 1], Gen.Bool, Gen.Enum<Liking>()).Array[0, 14]
        from runOut in Gen.Double[0.01, 0.5]
        from room in Gen.Double[16, 28]
        from hours in Gen.Int[0, 120]
        select eaters.Aggregate(ANight(), (night, row) => night.With(row.Item1, AnEater(
                $"e{eaters.ToList().IndexOf(row)}",
                row.Item2,
                needs: new DietaryNeeds(row.Item3, [.. row.Item4.Distinct()], row.Item6 ? row.Item5 : []),
                likes: new Dictionary<string, Liking> { ["mushrooms"] = row.Item7 })))
            .But(night => night with
            {
                RunOutChance = new Share(runOut),
                Kitchen = night.Kitchen with { Room = new Celsius(room) },
                ServeAt = Now + Duration.FromHours(hours),
            }).Build();

    [Fact]
    public void A_plan_is_whole_on_any_night() => Nights.Sample(night =>
    {
        var plan = Planner.Plan(night, Now, Effort.Quick);
        var pies = plan.Pies.Count.Value.Value;

        Assert.Equal(pies, plan.Dough.Batches.Sum(batch => batch.Balls));
        Assert.Equal(plan.Dough.Total.Value, plan.Dough.Batches.Sum(batch => batch.Total.Value), RoundOff);
        Assert.True(plan.Split.Pies.Count is 0 || plan.Split.Pies.Count == pies);
        Assert.Equal(plan.Yeast.Total.Expected.Value, plan.Dough.Batches.Sum(batch => batch.Yeast.Value), 0.02 * plan.Yeast.Total.Expected.Value + RoundOff);
        Assert.All(plan.Conflicts, conflict => Assert.Contains(conflict.GetType(), Discriminators.Conflicts.Keys));
    }, iter: 150);

    [Fact]
    public void No_must_not_reaches_its_guest_on_any_night() => Nights.Sample(night =>
    {
        var plan = Planner.Plan(night, Now, Effort.Quick);
        var items = night.Menu.Items.ToDictionary(item => item.Id);
        var combinations = plan.Split.Combinations.ToDictionary(combination => combination.Letter);
        var eaters = night.Guests.SelectMany(guest => guest.Eaters).ToDictionary(eater => eater.Id);
        foreach (var serving in plan.Split.Servings)
        {
            var needs = eaters[serving.EaterId].Needs;
            Assert.True(night.Menu.Dough.IsPermittedFor(needs));
            Assert.All(combinations[serving.Letter].ItemIds, id => Assert.True(items[id].Composition.IsPermittedFor(needs)));
            Assert.True(!needs.NeedsOwnPie || plan.Split.Pies.Single(pie => pie.Number == serving.PieNumber).IsOwnPie);
        }
    }, iter: 150);

    [Fact]
    public void The_cold_ferment_stays_in_its_window_on_any_night() => Nights.Sample(night =>
    {
        var timeline = Planner.Plan(night, Now, Effort.Quick).Timeline;
        foreach (var cold in timeline.Steps.Where(step => step.Kind == StepKind.ColdFerment))
        {
            Assert.InRange(cold.End - cold.Start, night.ColdFerment.Shortest, night.ColdFerment.Longest);
        }

        Assert.All(timeline.Steps.Where(step => step.NeedsHands), step => Assert.True(step.Start >= Now));
    }, iter: 100);

    [Fact]
    public void Every_night_that_passes_the_check_gets_a_plan() => Gen.Select(
        Gen.Select(Gen.Double[0, 180], Gen.Double[0, 180], Gen.Double[1, 60], Gen.Double[0, 60], Gen.Int[1, 6], Gen.Int[1, 8]),
        Gen.Select(Gen.Double[0, 168], Gen.Double[0, 168], Gen.Double[0, 168]),
        Gen.Select(Gen.Int[0, 40], Gen.Int[4, 16], Gen.Int[0, 5], Gen.Int[0, 13], Gen.Double[15, 50], Gen.Double[200, 5000]),
        Gen.Int[-10, 400]).Sample((oven, ferment, size, hoursAhead) =>
    {
        var hours = new[] { ferment.Item1, ferment.Item2, ferment.Item3 }.Order().Select(Duration.FromHours).ToArray();
        var night = ANight().WithGuests(4).But(night => night with
        {
            ServeAt = Now + Duration.FromHours(hoursAhead),
            Kitchen = night.Kitchen with
            {
                Preheat = Duration.FromMinutes(oven.Item1),
                Soak = Duration.FromMinutes(oven.Item2),
                Bake = Duration.FromMinutes(oven.Item3),
                Recovery = Duration.FromMinutes(oven.Item4),
                PiesPerBake = oven.Item5,
                Hands = oven.Item6,
                BatchCapacity = new Grams(size.Item6),
            },
            ColdFerment = new ColdFerment(hours[0], hours[1], hours[2]),
            ByHand = ByHand.Nothing with { Pies = new PieCount(size.Item1) },
            Shape = night.Shape with { SlicesPerPie = size.Item2, Diameter = new Centimetres(size.Item5) },
            Menu = night.Menu with { MostToppings = size.Item3, Items = [.. night.Menu.Items.Take(size.Item4)] },
        }).Build();
        Assert.Empty(new SnapshotCheck(SharedFolder.Tables).Problems(night));

        var plan = Planner.Plan(night, Now, Effort.Quick);

        Assert.Equal(PlanJson.Canonical(plan), PlanJson.Canonical(Planner.Plan(night, Now, Effort.Quick)));
    }, iter: 300);

    [Fact]
    public void The_same_night_and_effort_give_the_same_plan() => Nights.Sample(night =>
    {
        var effort = new Effort(1);
        Assert.Equal(
            PlanJson.Canonical(Planner.Plan(night, Now, effort)),
            PlanJson.Canonical(new NightPlanner(SharedFolder.Tables).Plan(night, Now, effort)));
    }, iter: 8);

    [Fact]
    public void The_order_of_answers_changes_no_number()
    {
        var few = ANight().WithGuests(3).With(AnswerState.Undecided, AnEater("z", PortionClass.Child)).Build();
        var turned = few with { Guests = [.. few.Guests.Reverse()] };

        var (plan, other) = (Planner.Plan(few, Now, Effort.Quick), Planner.Plan(turned, Now, Effort.Quick));

        Assert.Equal(plan.Slices.Slices.Expected, other.Slices.Slices.Expected, RoundOff);
        Assert.Equal(plan.Pies.Count.Value, other.Pies.Count.Value);
    }

    [Fact]
    public void The_quick_plan_is_reported_before_the_improved_one_comes()
    {
        var reported = new List<NightPlan>();
        var night = ANight().WithGuests(6).Build();

        var plan = Planner.Plan(night, Now, new Effort(2), new Collect(reported));

        Assert.Equal(PlanStage.Quick, Assert.Single(reported).Stage);
        Assert.Equal(PlanStage.Improved, plan.Stage);
        Assert.Equal(reported[0].Pies.Count.Value, plan.Pies.Count.Value);
        Assert.Equal(reported[0].Dough.Total, plan.Dough.Total);
    }

    [Fact]
    public void Numbers_set_by_hand_stand_and_are_marked()
    {
        var hand = new ByHand(new PieCount(7), new Grams(280), new Share(0.002), new Grams(70), new Grams(90), null);
        var plan = Planner.Plan(ANight().WithGuests(4).But(night => night with { ByHand = hand }).Build(), Now, Effort.Quick);

        Assert.Equal(7, plan.Split.Pies.Count);
        Assert.True(plan.Pies.Count.IsByHand && plan.Dough.Ball.IsByHand && plan.Yeast.ShareOfFlour.IsByHand);
        Assert.True(plan.Sauce.PerPie.IsByHand && plan.Cheese.PerPie.IsByHand);
        Assert.Equal(280, plan.Dough.Ball.Value.Value);
        Assert.Equal(70, plan.Sauce.PerPie.Value.Value);
        Assert.NotEqual(7, plan.Pies.Count.Proposed.Value);
    }

    [Fact]
    public void Sixty_guests_everybody_undecided_and_nobody_at_all_are_planned()
    {
        Assert.Equal(0, Planner.Plan(ANight().Build(), Now, Effort.Quick).Pies.Count.Value.Value);
        Assert.InRange(Planner.Plan(ANight().WithGuests(60).Build(), Now, Effort.Quick).Pies.Count.Value.Value, 40, 60);
        Assert.True(Planner.Plan(ANight().WithGuests(9, AnswerState.Undecided).Build(), Now, Effort.Quick).Pies.Count.Value.Value > 0);
    }

    [Fact]
    public void Vegans_and_one_who_lives_on_sausage_are_both_served()
    {
        var builder = ANight().With(AnswerState.Coming, AnEater("meat", likes: new Dictionary<string, Liking>
        {
            ["spicy-sausage"] = Liking.Favourite,
            ["mushrooms"] = Liking.Never,
            ["peppers"] = Liking.Never,
        }));
        for (var index = 0; index < 7; index++)
        {
            builder.With(AnswerState.Coming, AnEater($"vegan-{index}", needs: new DietaryNeeds([Diet.Vegan], [], [])));
        }

        var plan = Planner.Plan(builder.Build(), Now, new Effort(2));

        Assert.Equal(8, plan.Split.Servings.Select(serving => serving.EaterId).Distinct().Count());
        var combinations = plan.Split.Combinations.ToDictionary(combination => combination.Letter);
        Assert.Contains(plan.Split.Servings, serving =>
            serving.EaterId == "meat" && combinations[serving.Letter].ToppingIds.Contains("spicy-sausage"));
    }

    [Fact]
    public void Serving_in_twenty_hours_is_a_conflict_with_the_nearest_fix_and_never_a_silent_shift()
    {
        var night = ANight().WithGuests(5).But(night => night with { ServeAt = Now + Duration.FromHours(20) }).Build();

        var plan = Planner.Plan(night, Now, Effort.Quick);

        var conflict = Assert.Single(plan.Conflicts.OfType<TooLateForColdFerment>());
        Assert.True(conflict.NeededMixAt < Now);
        Assert.True(conflict.EarliestServeAt >= Now + Duration.FromHours(40));
        Assert.Empty(plan.Timeline.Steps);
    }

    [Fact]
    public void Pies_set_too_low_by_hand_are_said_to_be_too_few_and_still_shared_out()
    {
        var plan = Planner.Plan(
            ANight().WithGuests(10).But(night => night with { ByHand = ByHand.Nothing with { Pies = new PieCount(3) } }).Build(),
            Now,
            Effort.Quick);

        Assert.Equal(24, Assert.Single(plan.Conflicts.OfType<TooFewSlices>()).Slices);
        Assert.Equal(24, plan.Split.Servings.Sum(serving => serving.Slices));
    }

    [Fact]
    public void A_serving_time_that_has_passed_is_a_conflict() =>
        Assert.Contains(
            Planner.Plan(ANight().WithGuests(3).But(night => night with { ServeAt = Now - Duration.FromHours(1) }).Build(), Now, Effort.Quick).Conflicts,
            conflict => conflict is ServingTimeHasPassed);

    [Fact]
    public void A_fridge_with_places_for_fewer_balls_is_a_conflict_and_one_with_enough_is_none()
    {
        var pies = Planner.Plan(ANight().WithGuests(6).Build(), Now, Effort.Quick).Dough.Balls;

        Assert.Equal(new FridgeTooSmall(pies, pies - 1), Assert.Single(With(pies - 1).OfType<FridgeTooSmall>()));
        Assert.Empty(With(pies).OfType<FridgeTooSmall>());

        IReadOnlyList<Conflict> With(int places) => Planner.Plan(
            ANight().WithGuests(6).But(night => night with { Kitchen = night.Kitchen with { FridgeBalls = places } }).Build(), Now, Effort.Quick).Conflicts;
    }

    [Fact]
    public void Whoever_avoids_gluten_is_told_that_this_kitchen_is_not_fit_for_it()
    {
        var night = ANight().WithGuests(3)
            .With(AnswerState.Coming, AnEater("g", needs: new DietaryNeeds([], [Allergen.GlutenCereals], []))).Build();

        var plan = Planner.Plan(night, Now, Effort.Quick);

        Assert.Contains(plan.Cautions, caution => caution.Kind == CautionKind.KitchenUsesWheat);
        Assert.Contains(plan.Conflicts, conflict => conflict is NothingPermitted { EaterId: "g", Because: NothingPermittedBecause.Dough });
        Assert.DoesNotContain(plan.Split.Servings, serving => serving.EaterId == "g");
    }

    [Fact]
    public void A_snapshot_with_problems_is_the_callers_mistake() =>
        Assert.Throws<ArgumentException>(() => Planner.Plan(
            ANight().But(night => night with { RunOutChance = new Share(0.9) }).Build(), Now, Effort.Quick));

    private sealed class Collect(List<NightPlan> plans) : IProgress<NightPlan>
    {
        public void Report(NightPlan value) => plans.Add(value);
    }
}
