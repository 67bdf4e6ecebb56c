using CsCheck;
using GameNight.Planning.Cheese;
using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Planning.Tests.Cheese;

public class CheesePlanTests
{
    private const double RoundOff = 1e-9;

    private static readonly CheeseTable Table = SharedFolder.Tables.Cheese;
    private static readonly FoodTable Foods = SharedFolder.Tables.Foods;

    private static readonly Gen<CheeseBlend> Blends =
        from one in Gen.Double[0, 1]
        from two in Gen.Double[0, 1]
        from drained in Gen.Double[0, 0.3]
        select Blend(Math.Min(one, two), Math.Abs(one - two), 1 - Math.Max(one, two), drained);

    [Fact]
    public void All_parts_are_what_lies_on_the_pies_and_more_is_bought_than_that() =>
        Gen.Select(Blends, Gen.Double[1, 5000]).Sample((blend, grams) =>
        {
            var plan = For(blend, 0.1, grams);

            Assert.Equal(grams, plan.Parts.Sum(part => part.OnPies.Value), 1e-6);
            Assert.All(plan.Parts, part => Assert.True(part.ToBuy > part.OnPies));
            Assert.InRange(plan.WaterGramsPerCm2 + plan.FatGramsPerCm2 + plan.SaltGramsPerCm2, 0, 0.1);
        });

    [Fact]
    public void Water_fat_and_salt_go_with_the_load() =>
        Gen.Select(Blends, Gen.Double[0.01, 0.4]).Sample((blend, load) =>
        {
            var (once, twice) = (For(blend, load), For(blend, 2 * load));

            Assert.Equal(2 * once.WaterGramsPerCm2, twice.WaterGramsPerCm2, RoundOff);
            Assert.Equal(2 * once.FatGramsPerCm2, twice.FatGramsPerCm2, RoundOff);
            Assert.Equal(2 * once.SaltGramsPerCm2, twice.SaltGramsPerCm2, RoundOff);
        });

    [Fact]
    public void Draining_takes_water_off_the_pie_and_money_out_of_the_purse()
    {
        // By hand: fresh cheese of 60 % water that loses a tenth is (60 - 10)/90 = 55.6 % water.
        var (wet, drained) = (For(Blend(0, 0, 1, 0), 0.1, 90), For(Blend(0, 0, 1, 0.1), 0.1, 90));

        Assert.Equal(0.06, wet.WaterGramsPerCm2, RoundOff);
        Assert.Equal(0.1 * 50 / 90, drained.WaterGramsPerCm2, RoundOff);
        Assert.Equal(0.1 * 0.18 / 0.9, drained.FatGramsPerCm2, RoundOff);
        Assert.Equal(100 / 0.99, drained.Parts.Single().ToBuy.Value, 1e-6);
    }

    [Fact]
    public void More_cannot_drain_than_there_is_of_water()
    {
        Assert.Equal(0, Draining.WaterAfter(new Share(0.4), new Share(0.4)).Value, RoundOff);
        Assert.Throws<ArgumentOutOfRangeException>(() => Draining.WaterAfter(new Share(0.4), new Share(0.41)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Draining.WaterAfter(new Share(1), new Share(1)));
    }

    [Fact]
    public void Low_moisture_cheese_brings_what_its_row_says()
    {
        var plan = For(Blend(1, 0, 0, 0), 0.1);

        Assert.Equal(0.04646, plan.WaterGramsPerCm2, RoundOff);
        Assert.Equal(0.02003, plan.FatGramsPerCm2, RoundOff);
        Assert.Equal(0.1 * 0.00652 * 2.5, plan.SaltGramsPerCm2, RoundOff);
        Assert.Equal([CheeseCue.KeptCold, CheeseCue.ReadyGratedCarriesStarch], plan.Cues);
    }

    [Fact]
    public void Shares_that_do_not_add_up_and_pressed_cheese_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => For(Blend(0.5, 0.2, 0.2, 0), 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => For(Blend(0.6, 0.3, 0.2, 0), 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => For(Blend(0, 0, 1, 0.4), 0.1));
        Assert.Equal(1, For(Blend(1.0 / 3, 1.0 / 3, 0.3333, 0), 0.1, 1).Parts.Sum(part => part.OnPies.Value), RoundOff);
    }

    [Fact]
    public void Hard_cheese_is_vegetarian_only_by_its_label()
    {
        var blend = Blend(0.8, 0.2, 0, 0);

        Assert.Equal([Allergen.Milk], blend.Composition(Table, Foods).Contains);
        Assert.DoesNotContain(Diet.Vegetarian, blend.Composition(Table, Foods).Suits);
        Assert.Contains(Diet.Vegetarian, (blend with { HardIsVegetarian = true }).Composition(Table, Foods).Suits);
        Assert.Contains(Diet.Vegetarian, Blend(1, 0, 0, 0).Composition(Table, Foods).Suits);
        Assert.DoesNotContain(Diet.Vegan, Blend(1, 0, 0, 0).Composition(Table, Foods).Suits);
    }

    private static CheeseBlend Blend(double lowMoisture, double hard, double fresh, double drained) =>
        new(new Share(lowMoisture), new Share(hard), new Share(fresh), new Share(drained));

    private static CheesePlan For(CheeseBlend blend, double gramsPerCm2, double grams = 100) =>
        CheesePlan.For(blend, gramsPerCm2, new Grams(grams), Table, Foods);
}
