using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Tests.Dough;

public class DoughTests
{
    /// <summary>Room for rounding in double arithmetic on masses of a few kilograms; nothing a scale could show.</summary>
    private const double RoundOff = 1e-8;

    private static readonly PieShape Shape = new(
        new Centimetres(33), 0.38, new Centimetres(2), new Centimetres(0.5), default, 8);

    private static readonly Gen<DoughFormula> Formulas =
        from water in Gen.Double[0.45, 1]
        from salt in Gen.Double[0, 0.04]
        from oil in Gen.Double[0, 0.15]
        from sugar in Gen.Double[0, 0.1]
        from heldBack in Gen.Double[0, 0.5]
        from loss in Gen.Double[0, 0.1]
        select new DoughFormula(
            new Share(water), new Share(salt), new Share(oil), new Share(sugar), false, YeastForm.Instant, new Share(heldBack),
            new Share(loss));

    [Fact]
    public void A_batch_weighs_what_was_asked_for_and_keeps_its_percentages() =>
        Gen.Select(Formulas, Gen.Double[100, 5000], Gen.Double[0, 0.03]).Sample((formula, grams, yeast) =>
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
        Gen.Select(Formulas, Gen.Int[0, 60], Gen.Double[200, 5000]).Sample((formula, pies, capacity) =>
        {
            var plan = DoughPlan.For(pies, Shape, formula, new Grams(capacity), null);

            Assert.Equal(pies, plan.Batches.Sum(batch => batch.Balls));
            Assert.Equal(plan.Total.Value, plan.Batches.Sum(batch => batch.Total.Value), RoundOff);
            Assert.All(plan.Batches, batch => Assert.True(batch.Balls == 1 || batch.Total.Value <= capacity + RoundOff));
            Assert.True(plan.Batches.Count == 0 || plan.Batches.Max(b => b.Balls) - plan.Batches.Min(b => b.Balls) <= 1);
        });

    [Fact]
    public void Weighing_the_yeast_in_leaves_the_total_as_it_was() =>
        Gen.Select(Formulas, Gen.Int[1, 20], Gen.Double[0.0001, 0.02]).Sample((formula, pies, yeast) =>
        {
            var plan = DoughPlan.For(pies, Shape, formula, new Grams(1500), null);
            var with = plan.WithYeast(new Share(yeast));

            Assert.Equal(plan.Total.Value, with.Batches.Sum(batch => batch.Total.Value), RoundOff);
            Assert.All(with.Batches, batch => Assert.Equal(yeast, batch.Yeast / batch.Flour, RoundOff));
        });

    [Fact]
    public void Five_balls_of_a_33_cm_pie_are_two_batches_in_a_bowl_for_a_kilogram()
    {
        // By hand: pi/4 * 33^2 = 855.3 cm2 at 0.38 is 325.0 g; with 2 % loss 331.5 g, three to a kilogram.
        var plan = DoughPlan.For(5, Shape, AFormula(), new Grams(1000), null);

        Assert.Equal(325.0, plan.Ball.Value.Value, 0.05);
        Assert.Equal([3, 2], plan.Batches.Select(batch => batch.Balls));
        Assert.Equal(5 * 325.0 * 1.02, plan.Total.Value, 0.3);
    }

    [Fact]
    public void A_ball_larger_than_the_bowl_is_a_conflict_and_still_planned()
    {
        var plan = DoughPlan.For(2, Shape, AFormula(), new Grams(300), null);

        Assert.IsType<BallLargerThanBowl>(Assert.Single(plan.Conflicts));
        Assert.Equal(2, plan.Batches.Count);
    }

    [Fact]
    public void A_ball_set_by_hand_is_marked_and_the_computed_one_kept()
    {
        var plan = DoughPlan.For(2, Shape, AFormula(), new Grams(1500), new Grams(280));

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
    public void Warm_kitchens_want_colder_water()
    {
        var cool = Water(room: 18);
        var warm = Water(room: 26);

        Assert.True(warm.Water.Expected < cool.Water.Expected);
        Assert.Equal(3, (warm.Water.Expected.Value - warm.Water.Low.Value) + 1, 1e-9);
    }

    [Fact]
    public void Water_stays_below_what_harms_yeast_and_says_so()
    {
        var water = WaterTemperature.For(new Celsius(28), new Celsius(8), new Celsius(8), 6.7, new Celsius(10));

        Assert.Equal(WaterTemperature.HottestCelsius, water.Water.Expected.Value);
        Assert.Contains(water.Because, reason => reason is WaterLimited { NeededCelsius: > 60 });
    }

    [Fact]
    public void Ice_replaces_water_when_the_tap_is_not_cold_enough()
    {
        var water = WaterTemperature.For(new Celsius(22), new Celsius(28), new Celsius(28), 13.3, new Celsius(20));

        // Needed: 66 - 28 - 28 - 13.3 = -3.3, so 0 °C; share (20 - 0) / (20 + 79.7).
        Assert.Equal(20 / 99.7, water.IceShare.Value, 1e-9);
    }

    private static WaterTemperature Water(double room) =>
        WaterTemperature.For(new Celsius(24), new Celsius(room), new Celsius(room), 6.7, new Celsius(5));

    private static DoughFormula AFormula() => new(
        new Share(0.62), new Share(0.025), new Share(0.02), new Share(0), false, YeastForm.Instant, new Share(0.125), new Share(0.02));
}
