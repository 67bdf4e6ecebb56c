using CsCheck;
using GameNight.Planning.Appetite;

namespace GameNight.Planning.Tests.Appetite;

public class SliceDistributionTests
{
    /// <summary>Sums of up to a few hundred probabilities, each rounded once.</summary>
    private const double RoundOff = 1e-12;

    [Fact]
    public void Nobody_eats_nothing_for_certain()
    {
        Assert.Equal(1, SliceDistribution.None.AtMost(0));
        Assert.Equal(0, SliceDistribution.None.Mean);
    }

    [Fact]
    public void Probabilities_add_up_to_one() =>
        Gen.Select(Gen.Double[0.5, 30], Gen.Double[0.1, 5], Gen.Double[0, 1]).Sample((shape, rate, chance) =>
        {
            var distribution = SliceDistribution.GammaPoisson(shape, rate).WithChance(chance);
            Assert.Equal(1, distribution.Probabilities.Sum(), RoundOff);
        });

    [Fact]
    public void Sums_have_the_sum_of_means_and_variances() =>
        Gen.Select(Gen.Double[1, 20], Gen.Double[0.5, 5], Gen.Double[0, 1]).Array[1, 8].Sample(rows =>
        {
            var parts = rows.Select(row => SliceDistribution.GammaPoisson(row.Item1, row.Item2).WithChance(row.Item3)).ToList();
            var sum = parts.Aggregate(SliceDistribution.None, (all, part) => all + part);

            Assert.Equal(parts.Sum(part => part.Mean), sum.Mean, 1e-9);
            Assert.Equal(parts.Sum(part => part.Variance), sum.Variance, 1e-7);
        }, iter: 50);

    [Fact]
    public void Equal_gamma_poissons_add_up_to_the_closed_form() =>
        Gen.Select(Gen.Double[1, 12], Gen.Double[0.5, 4], Gen.Int[1, 12]).Sample((shape, rate, guests) =>
        {
            var one = SliceDistribution.GammaPoisson(shape, rate);
            var convolved = Enumerable.Repeat(one, guests).Aggregate(SliceDistribution.None, (all, part) => all + part);
            var closed = SliceDistribution.GammaPoisson(shape * guests, rate);

            for (var slices = 0; slices < 60; slices++)
            {
                Assert.Equal(closed.AtMost(slices), convolved.AtMost(slices), RoundOff);
            }
        }, iter: 60);

    [Fact]
    public void Shortage_less_leftover_is_the_mean_less_the_slices()
    {
        var demand = SliceDistribution.GammaPoisson(9, 0.3);

        Assert.Equal(demand.Mean - 32, demand.ExpectedShortage(32) - demand.ExpectedLeftover(32), 1e-9);
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void A_chance_outside_nought_to_one_is_refused(double chance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SliceDistribution.None.WithChance(chance));

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    [InlineData(double.NaN, 1)]
    public void A_gamma_without_shape_or_rate_is_refused(double shape, double rate) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SliceDistribution.GammaPoisson(shape, rate));
}
