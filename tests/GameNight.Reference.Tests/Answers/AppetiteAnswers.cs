using GameNight.Planning.Appetite;
using GameNight.Planning.Quantities;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of appetite and counts.</summary>
internal static class AppetiteAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["1.3.pmf0"] = () => SliceDistribution.Poisson(1.25).Probabilities[0],
        ["1.3.pmf3"] = () => SliceDistribution.Poisson(1.25).Probabilities[3],
        ["1.3.cdf2"] = () => SliceDistribution.Poisson(1.25).AtMost(2),
        ["1.3.loss1"] = () => SliceDistribution.Poisson(1.25).ExpectedShortage(1),
        ["1.3.loss4"] = () => SliceDistribution.Poisson(1.25).ExpectedShortage(4),
        ["1.8.cdf2"] = () => FivePeople().AtMost(2),
        ["1.8.cdf3"] = () => FivePeople().AtMost(3),
        ["1.11.p0"] = () => SliceDistribution.GammaPoisson(20, 43).Probabilities[0],
        ["1.11.p2"] = () => SliceDistribution.GammaPoisson(20, 43).Probabilities[2],
        ["1.11.mean"] = () => SliceDistribution.GammaPoisson(20, 43).Mean,
        ["1.15.sd"] = () => Math.Sqrt(TenGuests().Variance),
        ["1.15.cdf32"] = () => TenGuests().AtMost(32),
        ["1.15.over40"] = () => TenGuests().MoreThan(40),
        ["1.15.q90"] = () => TenGuests().Quantile(0.9),
        ["1.17.mean"] = () => TwelveGuests().Mean,
        ["1.17.variance"] = () => TwelveGuests().Variance,
        ["1.17.enough4"] = () => TwelveGuests().AtMost(32),
        ["1.17.shortage4"] = () => TwelveGuests().ExpectedShortage(32),
        ["1.17.pies90"] = () => PiesFor(0.1),
        ["1.17.pies95"] = () => PiesFor(0.05),
    };

    private static SliceDistribution FivePeople() => Sum(
        new[] { .1, .2, .3, .4, .5 }.Select(chance => SliceDistribution.Certainly(1).WithChance(chance)));

    private static SliceDistribution TenGuests() =>
        Sum(Enumerable.Repeat(SliceDistribution.GammaPoisson(9, 3), 10));

    private static SliceDistribution TwelveGuests() => Sum(Enumerable.Range(0, 12).Select(guest => SliceDistribution
        .Poisson(guest < 8 ? 3 : 2)
        .WithChance(guest < 6 ? .95 : guest < 10 ? .6 : .2)));

    private static double PiesFor(double runOutChance) =>
        PieCountRule.For(TwelveGuests(), 8, new Share(runOutChance), null).Count.Value.Value;

    private static SliceDistribution Sum(IEnumerable<SliceDistribution> all) =>
        all.Aggregate(SliceDistribution.None, (sum, one) => sum + one);
}
