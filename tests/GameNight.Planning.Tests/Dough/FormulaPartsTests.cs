using CsCheck;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using NodaTime;

namespace GameNight.Planning.Tests.Dough;

public class FormulaPartsTests
{
    /// <summary>Rounding of doubles on masses of a few kilograms.</summary>
    private const double RoundOff = 1e-8;

    [Fact]
    public void Every_gram_of_a_batch_is_in_one_part_of_it() =>
        Gen.Select(Formulas.Whole, Gen.Double[100, 20_000], Gen.Double[0, 0.03]).Sample((formula, grams, yeast) =>
        {
            var batch = DoughBatch.Weighing(new Grams(grams), formula, new Share(yeast));
            var ahead = (batch.Preferment?.Total.Value ?? 0) + (batch.Soaker?.Total.Value ?? 0);
            var onTheDay = batch.FinalFlour.Value + batch.FinalWater.Value + batch.FinalYeast.Value + batch.Salt.Value
                + batch.Oil.Value + batch.Sugar.Value + batch.Extras!.Sum(extra => extra.Mass.Value);

            Assert.Equal(grams, batch.Total.Value, RoundOff);
            Assert.Equal(grams, ahead + onTheDay, RoundOff);
            Assert.True(batch.Flours is null || Math.Abs(batch.Flours.Sum(part => part.Mass.Value) - (batch.Flour.Value - (batch.Soaker?.Flour.Value ?? 0))) < RoundOff);
            Assert.Equal(formula.Water.Value, batch.Water / batch.Flour, RoundOff);
        });

    [Fact]
    public void A_batter_with_a_third_of_the_flour_takes_its_water_out_of_the_doughs()
    {
        // 1000 g flour, 620 g water, 20 g salt; 300 g of each go ahead with half of the 2 g yeast.
        var formula = Formulas.Plain with
        {
            Salt = new Share(0.02),
            Oil = default,
            Preferment = new Preferment("batter", new Share(0.3), new Share(1), Duration.FromHours(12), new Share(0.5)),
        };
        var batch = DoughBatch.Weighing(new Grams(1642), formula, new Share(0.002));

        Assert.Equal((1000, 620), (Whole(batch.Flour), Whole(batch.Water)));
        Assert.Equal((300, 300), (Whole(batch.Preferment!.Flour), Whole(batch.Preferment.Water)));
        Assert.Equal((700, 320), (Whole(batch.FinalFlour), Whole(batch.FinalWater)));
        Assert.Equal((1, 1), (Whole(batch.Preferment.Yeast), Whole(batch.FinalYeast)));
    }

    [Fact]
    public void A_preferment_that_takes_more_water_than_there_is_is_refused()
    {
        var formula = Formulas.Plain with
        {
            Preferment = new Preferment("batter", new Share(0.7), new Share(1), Duration.FromHours(12), default),
        };

        Assert.Throws<ArgumentOutOfRangeException>(() => DoughBatch.Weighing(new Grams(1000), formula, default));
    }

    [Fact]
    public void Effective_hydration_counts_milk_and_honey_and_not_oil()
    {
        var formula = Formulas.Plain with
        {
            Water = new Share(0.3),
            Sugar = new Share(0.1),
            SugarIsHoney = true,
            Extras = [new ExtraIngredient("milk", new Share(0.35), new Share(0.88)), new ExtraIngredient("egg", new Share(0.1), new Share(0.75))],
        };

        Assert.Equal(0.3 + 0.35 * 0.88 + 0.1 * 0.75 + 0.1 * 0.17, formula.EffectiveHydration.Value, 1e-12);
        Assert.Equal(0.62, (Formulas.Plain with { Oil = new Share(0.15) }).EffectiveHydration.Value);
    }

    [Fact]
    public void A_blend_lies_between_its_flours_weighted_by_their_shares() => Formulas.Whole
        .Where(formula => formula.Flours!.Count > 0)
        .Sample(formula =>
        {
            var (blend, flours) = (formula.Blend!, formula.Flours!);

            Assert.Equal(flours.Sum(part => part.OfFlour.Value * part.Protein.Value), blend.Protein.Value, 1e-12);
            Assert.InRange(
                blend.Absorption.Value, flours.Min(part => part.Absorption.Value) - 1e-12, flours.Max(part => part.Absorption.Value) + 1e-12);
        });

    [Fact]
    public void Parts_that_the_plan_has_no_label_for_are_named()
    {
        var formula = Formulas.Plain with { Extras = [new ExtraIngredient("milk", new Share(0.1), new Share(0.88))] };
        var plan = DoughPlan.For(
            3, new PieShape(new Centimetres(33), 0.38, new Centimetres(2), default, default, 8), formula, new Grams(1500), null,
            Hydration.For(formula, null, new Celsius(21), SharedFolder.Tables.Flour), SharedFolder.Tables.Dough);

        Assert.Equal(["milk"], Assert.IsType<PartsWithoutLabel>(Assert.Single(plan.Conflicts)).Names);
    }

    private static int Whole(Grams mass) => (int)Math.Round(mass.Value);
}
