using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;

namespace GameNight.Planning.Tests.Dough;

public class ScaleRoundingTests
{
    private const double RoundOff = 1e-6;

    private static readonly KitchenScale Usual = new(new Grams(1), new Grams(0.1));

    private static readonly Gen<KitchenScale> Scales =
        from coarse in Gen.OneOf(Gen.Const(0.1), Gen.Const(0.5), Gen.Const(1.0), Gen.Const(2.0), Gen.Const(5.0))
        from fine in Gen.OneOf(Gen.Const(0.01), Gen.Const(0.1), Gen.Const(coarse))
        select new KitchenScale(new Grams(coarse), new Grams(fine));

    [Fact]
    public void Nothing_is_off_by_more_than_half_a_step_and_all_that_is_weighed_stands_on_a_step() =>
        Gen.Select(Formulas.Whole, Gen.Double[100, 5000], Gen.Double[0.0001, 0.03], Scales).Sample((formula, grams, yeast, scale) =>
        {
            var batch = DoughBatch.Weighing(new Grams(grams), formula, new Share(yeast));
            var rounded = ScaleRounding.Of(batch, scale);
            var weighed = rounded.Batch;

            (Grams Before, Grams After, Grams Step)[] all =
            [
                (batch.HeldBackFlour, weighed.HeldBackFlour, scale.Coarse), (batch.Water, weighed.Water, scale.Coarse),
                (batch.Salt, weighed.Salt, scale.Fine), (batch.Oil, weighed.Oil, scale.Coarse),
                (batch.Sugar, weighed.Sugar, scale.Coarse),
                .. batch.Flours is null
                    ? [(batch.Flour, weighed.Flour, scale.Coarse)]
                    : batch.Flours.Zip(weighed.Flours!, (before, after) => (before.Mass, after.Mass, scale.Coarse)),
                .. batch.Extras!.Zip(weighed.Extras!, (before, after) => (before.Mass, after.Mass, scale.Coarse)),
                .. ScaleRounding.Dissolving(batch, scale) is null
                    ? [(batch.Yeast, weighed.Yeast, scale.Fine), (weighed.FinalYeast, weighed.FinalYeast, scale.Fine)]
                    : Array.Empty<(Grams, Grams, Grams)>(),
                (weighed.FinalFlour, weighed.FinalFlour, scale.Coarse), (weighed.FinalWater, weighed.FinalWater, scale.Coarse),
            ];
            Assert.All(all, row =>
            {
                Assert.InRange(Math.Abs(row.After.Value - row.Before.Value), 0, row.Step.Value / 2 + RoundOff);
                Assert.Equal(Math.Round(row.After / row.Step), row.After / row.Step, 1e-4);
            });
            Assert.Equal(weighed.Total.Value - batch.Total.Value, rounded.TotalOffGrams, RoundOff);
        });

    [Fact]
    public void What_rounding_makes_of_the_percentages_is_shown()
    {
        // 1000 g flour, 620 g water, 25 g salt, 20 g oil, 1.26 g yeast: the yeast becomes 1.3 g, all else stands on a step.
        var batch = DoughBatch.Weighing(new Grams(1666.26), Formulas.Plain, new Share(0.00126));
        var rounded = ScaleRounding.Of(batch, Usual);

        Assert.Equal(0.62, rounded.Hydration.Value, 1e-9);
        Assert.Equal(0.025, rounded.Salt.Value, 1e-9);
        Assert.Equal(0.0013, rounded.Yeast.Value, 1e-9);
        Assert.Equal(0.04, rounded.TotalOffGrams, 1e-6);
    }

    [Fact]
    public void Little_yeast_is_dissolved_and_a_part_used_and_the_batch_keeps_its_water()
    {
        var batch = DoughBatch.Weighing(new Grams(1000 * 1.665 + 0.3), Formulas.Plain, new Share(0.0003));
        var part = ScaleRounding.Dissolving(batch, Usual)!;

        Assert.Equal((1, 99), (part.Dissolve.Value, part.InWater.Value));
        Assert.Equal(30, part.Use.Value, 1e-6);
        Assert.Equal(0.3, part.Use.Value * part.Dissolve.Value / (part.Dissolve + part.InWater).Value, 1e-6);
        Assert.Equal(batch.Water.Value, part.WaterLeft.Value + part.Use.Value - part.Yeast.Value, 1e-6);
        Assert.Equal(batch.Yeast, ScaleRounding.Of(batch, Usual).Batch.Yeast);
    }

    [Fact]
    public void Yeast_that_the_scale_can_weigh_is_weighed()
    {
        var batch = DoughBatch.Weighing(new Grams(1665.3), Formulas.Plain, new Share(0.0003));

        Assert.Null(ScaleRounding.Dissolving(batch, Usual with { Fine = new Grams(0.01) }));
        Assert.Null(ScaleRounding.Dissolving(batch with { Yeast = new Grams(0.5) }, Usual));
        Assert.Null(ScaleRounding.Dissolving(batch with { Yeast = default }, Usual));
    }
}
