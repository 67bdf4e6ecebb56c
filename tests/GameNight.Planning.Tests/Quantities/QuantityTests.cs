using GameNight.Planning.Quantities;

namespace GameNight.Planning.Tests.Quantities;

public class QuantityTests
{
    [Theory]
    [InlineData(-0.001)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Grams_refuse_what_no_scale_can_show(double grams) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Grams(grams));

    [Theory]
    [InlineData(-41)]
    [InlineData(601)]
    [InlineData(double.NaN)]
    public void Celsius_refuse_what_no_kitchen_has(double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Celsius(celsius));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(10.1)]
    [InlineData(double.NaN)]
    public void Shares_refuse_what_is_no_part_of_anything(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Share(share));

    [Theory]
    [InlineData(-1)]
    [InlineData(201)]
    public void Pie_counts_refuse_what_no_night_bakes(int pies) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PieCount(pies));

    [Fact]
    public void An_estimate_refuses_a_band_in_the_wrong_order()
    {
        Assert.Throws<ArgumentException>(() => new Estimate<Grams>(new Grams(5), new Grams(6), new Grams(7)));
        Assert.Throws<ArgumentException>(() => new Estimate<Grams>(new Grams(8), new Grams(6), new Grams(7)));
    }

    [Fact]
    public void Adding_and_scaling_grams_is_plain_arithmetic()
    {
        Assert.Equal(new Grams(12), new Grams(5) + new Grams(7));
        Assert.Equal(new Grams(10), new Grams(5) * 2);
        Assert.Equal(2.5, new Grams(5) / new Grams(2));
        Assert.True(new Grams(1) < new Grams(2));
    }

    [Fact]
    public void A_value_set_by_hand_counts_and_what_was_proposed_is_kept()
    {
        var decided = Explained.Decide(new PieCount(7), new PieCount(5));

        Assert.Equal(7, decided.Value.Value);
        Assert.Equal(5, decided.Proposed.Value);
        Assert.True(decided.IsByHand);
        Assert.False(Explained.Decide(null, new PieCount(5)).IsByHand);
    }
}
