using GameNight.Planning.Appetite;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Tests.Toppings;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class SecondDoughTests
{
    private static readonly NightPlanner Planner = new(SharedFolder.Tables);

    /// <summary>160 g of mix, 125 of water, 2.5 of yeast, 8 of oil and 3 of salt for a pie: two pies are 597 g.</summary>
    [Fact]
    public void What_to_weigh_is_the_pack_times_the_pies_on_the_steps_of_the_scales()
    {
        var plan = SecondDoughPlan.For(AMenu.Maize.Recipe, pies: 2, new Celsius(220), scale: null)!;

        Assert.Equal((320, 250, 5, 16, 6), (plan.Mix.Value, plan.Water.Value, plan.Yeast.Value, plan.Oil.Value, plan.Salt.Value));
        Assert.Equal((597, 298.5), (plan.Total.Value, plan.Ball.Value));
        Assert.Empty(plan.Conflicts);

        var weighed = SecondDoughPlan.For(
            AMenu.Maize.Recipe with { Mix = new Grams(160.4), Yeast = new Grams(2.33) }, 3, new Celsius(220), new KitchenScale(new Grams(1), new Grams(0.1)))!;
        Assert.Equal((481, 7), (weighed.Mix.Value, weighed.Yeast.Value));
        Assert.Null(SecondDoughPlan.For(AMenu.Maize.Recipe, pies: 0, new Celsius(220), scale: null));
        Assert.Null(SecondDoughPlan.For(recipe: null, pies: 1, new Celsius(220), scale: null));
    }

    [Theory]
    [InlineData(230, SecondDoughOn.BakingPaper, false)]
    [InlineData(231, SecondDoughOn.BakingPaper, true)]
    [InlineData(300, SecondDoughOn.OwnPan, false)]
    public void Paper_in_an_oven_hotter_than_its_maker_allows_is_told_with_both_numbers(double oven, SecondDoughOn on, bool isTold)
    {
        var plan = SecondDoughPlan.For(AMenu.Maize.Recipe with { On = on }, 1, new Celsius(oven), scale: null)!;

        Assert.Equal(isTold ? [new PaperAboveItsLimit(new Celsius(oven), new Celsius(230))] : [], plan.Conflicts);
    }

    [Fact]
    public void The_main_dough_is_weighed_for_its_own_pies_only()
    {
        var without = Plan(Night(8, AMenu.Maize));
        var plan = Plan(Night(8, AMenu.Maize, ASplit.NoGluten));

        Assert.Null(without.SecondDough);
        Assert.Equal(without.Pies.Count.Value.Value, without.Dough.Balls);
        Assert.Equal(1, plan.SecondDough!.Pies);
        Assert.Equal(plan.Pies.Count.Value.Value - 1, plan.Dough.Balls);
        Assert.Equal(plan.Dough.Balls, plan.Dough.Batches.Sum(batch => batch.Balls));
        Assert.Equal(plan.Pies.Count.Value.Value, plan.Split.Pies.Count);
        Assert.Equal(1, plan.Split.Pies.Count(pie => pie.IsOnSecondDough));
        Assert.Contains(new PaperAboveItsLimit(new Celsius(250), new Celsius(230)), plan.Conflicts);
        Assert.DoesNotContain(plan.Conflicts, conflict => conflict is NothingPermitted);
        Assert.Contains(plan.Cautions, caution => caution.Kind == Safety.CautionKind.KitchenUsesWheat);
    }

    [Fact]
    public void It_is_mixed_before_any_ball_is_shaped_and_has_risen_when_its_pie_is_and_nothing_else_is_topped_before_that_is_baked()
    {
        var plan = Plan(Night(8, AMenu.Maize, ASplit.NoGluten));
        var steps = plan.Timeline.Steps;
        TimelineStep Step(StepKind kind, int number = 0) => steps.Single(step => step.Kind == kind && step.Number == number);

        var (mix, rise) = (Step(StepKind.SecondMix), Step(StepKind.SecondRise));
        Assert.True(mix.NeedsHands && !rise.NeedsHands);
        Assert.True(mix.Start >= Step(StepKind.Shop).End);
        Assert.Equal((mix.End, Duration.FromMinutes(60)), (rise.Start, rise.End - rise.Start));
        Assert.InRange((Step(StepKind.Shape, 1).Start - rise.End).TotalMinutes, 0, TimelineLimits.RisenBeforeShaped.TotalMinutes);
        Assert.True(plan.Split.Pies[0].IsOnSecondDough);
        Assert.All(steps.Where(step => step.Kind == StepKind.Top && step.Number > 1), top => Assert.True(top.Start >= Step(StepKind.Bake, 1).End));
        Assert.DoesNotContain(Plan(Night(8, AMenu.Maize)).Timeline.Steps, step => step.Kind is StepKind.SecondMix or StepKind.SecondRise);
    }

    [Fact]
    public void A_dough_that_does_not_rise_has_no_step_for_it()
    {
        var plan = Plan(Night(8, AMenu.Maize with { Recipe = AMenu.Maize.Recipe with { Rise = Duration.Zero } }, ASplit.NoGluten));

        Assert.Contains(plan.Timeline.Steps, step => step.Kind == StepKind.SecondMix);
        Assert.DoesNotContain(plan.Timeline.Steps, step => step.Kind == StepKind.SecondRise);
        Assert.NotNull(plan.Timeline.OnTime);
    }

    [Fact]
    public void It_is_still_to_be_mixed_when_the_main_dough_is_begun()
    {
        var night = Night(8, AMenu.Maize, ASplit.NoGluten);
        var begun = Plan(night with { Begun = BegunDough.Of(night, Plan(night)) });

        Assert.Single(begun.Timeline.Steps, step => step.Kind == StepKind.SecondMix);
        Assert.NotNull(begun.Timeline.FirstPieAt);
    }

    [Fact]
    public void A_begun_dough_keeps_its_balls_and_the_other_one_still_follows_the_answers()
    {
        var night = Night(8, AMenu.Maize, ASplit.NoGluten);
        var plan = Plan(night);
        var begun = BegunDough.Of(night, plan)!;

        var same = Plan(night with { Begun = begun });
        var none = Plan(Night(8, AMenu.Maize) with { Begun = begun });
        var more = Plan(Night(8, AMenu.Maize, [.. Enumerable.Repeat(ASplit.NoGluten, 5)]) with { Begun = begun });

        Assert.Equal((plan.Dough.Balls, 1), (same.Dough.Balls, same.SecondDough!.Pies));
        Assert.Equal(plan.Pies.Count.Value, same.Pies.Count.Value);
        Assert.Equal((plan.Dough.Balls, null), (none.Dough.Balls, none.SecondDough));
        Assert.Equal(plan.Dough.Balls, none.Pies.Count.Value.Value);
        Assert.Equal(plan.Dough.Balls, more.Dough.Balls);
        Assert.True(more.SecondDough!.Pies > 1);
        Assert.Equal(plan.Dough.Balls + more.SecondDough.Pies, more.Split.Pies.Count);
        Assert.Contains(new DoughIsBegun(new(plan.Dough.Balls), new(more.SecondDough.Pies)), more.Pies.Count.Because);
        Assert.Contains(new DoughIsBegun(new(plan.Dough.Balls)), none.Pies.Count.Because);
    }

    [Fact]
    public void A_night_all_on_the_other_dough_has_its_amounts_and_none_of_the_main_one()
    {
        var plan = Plan(Night(0, AMenu.Maize, [.. Enumerable.Repeat(ASplit.NoGluten, 4)]));

        Assert.Equal((0, plan.Pies.Count.Value.Value), (plan.Dough.Balls, plan.SecondDough!.Pies));
        Assert.Empty(plan.Dough.Batches);
        Assert.Contains(new EveryPieOnSecondDough(plan.SecondDough.Pies), plan.Conflicts);
        Assert.Empty(plan.Timeline.Steps);
        Assert.Equal(plan.Pies.Count.Value.Value, plan.Split.Pies.Count);
    }

    private static NightPlan Plan(NightSnapshot night) => Planner.Plan(night, Now, Effort.Usual);

    /// <summary>Eight plain guests and one for each of the needs.</summary>
    private static NightSnapshot Night(int guests, SecondDough second, params DietaryNeeds[] needs)
    {
        var night = ANight().WithGuests(guests).But(night => night with { Menu = night.Menu with { SecondDough = second } });
        foreach (var (index, one) in needs.Index())
        {
            night.With(AnswerState.Coming, AnEater($"apart-{index}", needs: one));
        }

        return night.Build();
    }
}
