using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Planning.Tests.Dough;

public class DoughTests
{
    /// <summary>Room for rounding in double arithmetic on masses of a few kilograms; nothing a scale could show.</summary>
    private const double RoundOff = 1e-8;

    private static readonly PieShape Shape = new(
        new Centimetres(33), 0.38, new Centimetres(2), new Centimetres(0.5), default, 8);

    [Fact]
    public void A_batch_weighs_what_was_asked_for_and_keeps_its_percentages() =>
        Gen.Select(Formulas.Whole, Gen.Double[100, 5000], Gen.Double[0, 0.03]).Sample((formula, grams, yeast) =>
        {
            var batch = DoughBatch.Weighing(new Grams(grams), formula, new Share(yeast));

            Assert.Equal(grams, batch.Total.Value, RoundOff);
            Assert.Equal(formula.Water.Value, batch.Water / batch.Flour, RoundOff);
            Assert.Equal(formula.Salt.Value, batch.Salt / batch.Flour, RoundOff);
            Assert.Equal(yeast, batch.Yeast / batch.Flour, RoundOff);
            Assert.True(batch.HeldBackFlour <= batch.Flour);
        });

    [Fact]
    public void All_batches_together_hold_every_ball_and_no_batch_is_too_large() =>
        Gen.Select(Formulas.Whole, Gen.Int[0, 60], Gen.Double[200, 5000]).Sample((formula, pies, capacity) =>
        {
            var plan = Plan(pies, formula, capacity);

            Assert.Equal(pies, plan.Batches.Sum(batch => batch.Balls));
            Assert.Equal(plan.Total.Value, plan.Batches.Sum(batch => batch.Total.Value), RoundOff);
            Assert.All(plan.Batches, batch => Assert.True(batch.Balls == 1 || batch.Total.Value <= capacity + RoundOff));
            Assert.True(plan.Batches.Count == 0 || plan.Batches.Max(b => b.Balls) - plan.Batches.Min(b => b.Balls) <= 1);
        });

    [Fact]
    public void Weighing_the_yeast_in_leaves_the_total_as_it_was() =>
        Gen.Select(Formulas.Whole, Gen.Int[1, 20], Gen.Double[0.0001, 0.02]).Sample((formula, pies, yeast) =>
        {
            var plan = Plan(pies, formula, 1500);
            var with = plan.WithYeast(new Share(yeast));

            Assert.Equal(plan.Total.Value, with.Batches.Sum(batch => batch.Total.Value), RoundOff);
            Assert.All(with.Batches, batch => Assert.Equal(yeast, batch.Yeast / batch.Flour, RoundOff));
        });

    [Fact]
    public void Five_balls_of_a_33_cm_pie_are_two_batches_in_a_bowl_for_a_kilogram()
    {
        // By hand: pi/4 * 33^2 = 855.3 cm2 at 0.38 is 325.0 g; with 2 % loss 331.5 g, three to a kilogram.
        var plan = Plan(5, Formulas.Plain, 1000);

        Assert.Equal(325.0, plan.Ball.Value.Value, 0.05);
        Assert.Equal([3, 2], plan.Batches.Select(batch => batch.Balls));
        Assert.Equal(5 * 325.0 * 1.02, plan.Total.Value, 0.3);
    }

    [Fact]
    public void A_ball_larger_than_the_bowl_is_a_conflict_and_still_planned()
    {
        var plan = Plan(2, Formulas.Plain, 300);

        Assert.IsType<BallLargerThanBowl>(Assert.Single(plan.Conflicts));
        Assert.Equal(2, plan.Batches.Count);
    }

    [Fact]
    public void A_ball_set_by_hand_is_marked_and_the_computed_one_kept()
    {
        var plan = Plan(2, Formulas.Plain, 1500, new Grams(280));

        Assert.True(plan.Ball.IsByHand);
        Assert.Equal(280, plan.Ball.Value.Value);
        Assert.Equal(325.0, plan.Ball.Proposed.Value, 0.05);
    }

    [Fact]
    public void Sauce_reaches_less_far_than_cheese_and_both_stay_inside_the_rim()
    {
        Assert.True(Shape.SauceAreaCm2 < Shape.CheeseAreaCm2);
        Assert.True(Shape.CheeseAreaCm2 <= Shape.ToppedAreaCm2);
        Assert.True(Shape.ToppedAreaCm2 < Shape.AreaCm2);
    }

    [Fact]
    public void Oil_goes_over_the_whole_base_unless_the_shape_says_otherwise()
    {
        Assert.Equal(Shape.AreaCm2, Shape.OilAreaCm2);
        Assert.Equal(Shape.ToppedAreaCm2, (Shape with { OilInset = default(Centimetres) }).OilAreaCm2);
    }

    [Fact]
    public void Dough_without_salt_and_dough_with_much_oil_get_a_word_of_warning()
    {
        Assert.DoesNotContain(Plan(2, Formulas.Plain, 1500).Because, reason => reason is LittleSalt or MuchOil);
        Assert.Contains(new LittleSalt(default, new Share(0.01)), Plan(2, Formulas.Plain with { Salt = default }, 1500).Because);
        Assert.Contains(
            new MuchOil(new Share(0.09), new Share(0.08)), Plan(2, Formulas.Plain with { Oil = new Share(0.09) }, 1500).Because);
    }

    [Fact]
    public void A_ball_outside_the_usual_is_planned_and_named() => Assert.Contains(
        new UnusualBall(new Grams(40), new Grams(80), new Grams(1500)), Plan(2, Formulas.Plain, 1500, new Grams(40)).Conflicts);

    private static DoughPlan Plan(int pies, DoughFormula formula, double capacity, Grams? ball = null) => DoughPlan.For(
        pies, Shape, formula, new Grams(capacity), ball,
        Hydration.For(formula, null, new Celsius(21), SharedFolder.Tables.Flour), SharedFolder.Tables.Dough);
}
