using GameNight.Planning.Appetite;
using GameNight.Planning.Quantities;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of appetite, attendance and counts.</summary>
internal static class AppetiteAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = Rows().ToDictionary(row => row.Id, row => row.Answer);

    private static readonly Lazy<Newsvendor> Boots = new(() => new Newsvendor());

    private static readonly Lazy<GammaPrior> Posters = new(() => GammaPrior.Fitted(Published.Posters, new GammaPrior(1, 1)));

    private static readonly Lazy<BetaPrior> Rats = new(() => BetaPrior.Fitted(Published.Rats, BetaPrior.ByMoments(Published.Rats)));

    private static IEnumerable<(string Id, Func<double> Answer)> Rows() =>
    [
        ("1.1.lost", () => Boots.Value.Lost),
        ("1.1.sales", () => Boots.Value.Sales),
        ("1.1.left", () => Boots.Value.Left),
        ("1.1.inStock", () => 100 * Boots.Value.InStock),
        ("1.1.stockOut", () => 100 * (1 - Boots.Value.InStock)),
        ("1.1.fill", () => 100 * Boots.Value.Sales / Newsvendor.Mean),
        ("1.1.profit", () => 70 * Boots.Value.Sales - 20 * Boots.Value.Left),
        ("1.1.loss", () => Boots.Value.Lost / Newsvendor.Deviation),
        .. Each("1.3.pmf", 0, 5, k => Poisson().Probabilities[k]),
        .. Each("1.3.cdf", 0, 5, k => Poisson().AtMost(k)),
        .. Each("1.3.loss", 0, 5, k => Poisson().ExpectedShortage(k)),
        ("1.4.excess", () => 300 * EvenChances.Shortage(over: 2)),
        ("1.6.best", () => PieCountRule.For(FifteenToEighteen(), 1, default, null, shortageWeight: 1).Count.Value.Value),
        .. Each("1.6.profit", 15, 18, Profit),
        .. Each("1.8.pmf", 0, 5, k => FivePeople().Probabilities[k]),
        .. Each("1.8.cdf", 0, 5, k => FivePeople().AtMost(k)),
        .. Each("1.11.p", 0, 3, k => SliceDistribution.GammaPoisson(20, 43).Probabilities[k]),
        ("1.11.mean", () => SliceDistribution.GammaPoisson(20, 43).Mean),
        .. Each("1.11.posterior", 0, 2, k => 1e5 * new GammaPrior(20, 430_000).After(new Eaten(k, 10_000)).Mean),
        ("1.13.shape", () => Posters.Value.Shape),
        ("1.13.rate", () => Posters.Value.Rate),
        ("1.13.logLik", () => Published.Posters.Sum(Posters.Value.LogMarginal)),
        ("1.13.mean", () => Posters.Value.Mean),
        ("1.15.mean", () => TenGuests().Mean),
        ("1.15.sd", () => Math.Sqrt(TenGuests().Variance)),
        ("1.15.cdf32", () => TenGuests().AtMost(32)),
        ("1.15.over40", () => TenGuests().MoreThan(40)),
        ("1.15.q80", () => TenGuests().Quantile(0.8)),
        ("1.15.q90", () => TenGuests().Quantile(0.9)),
        ("1.15.q95", () => TenGuests().Quantile(0.95)),
        ("1.17.mean", () => TwelveGuests().Mean),
        ("1.17.variance", () => TwelveGuests().Variance),
        .. Each("1.17.enough", 2, 5, pies => TwelveGuests().AtMost(8 * pies)),
        .. Each("1.17.shortage", 3, 5, pies => TwelveGuests().ExpectedShortage(8 * pies)),
        ("1.17.pies90", () => PiesFor(0.1)),
        ("1.17.pies95", () => PiesFor(0.05)),
        ("1.20.alpha", () => Rats.Value.Alpha),
        ("1.20.beta", () => Rats.Value.Beta),
        ("1.20.moments.alpha", () => BetaPrior.ByMoments(Published.Rats).Alpha),
        ("1.20.moments.beta", () => BetaPrior.ByMoments(Published.Rats).Beta),
        ("1.20.moments.mean", () => BetaPrior.ByMoments(Published.Rats).Mean),
        ("1.20.moments.sd", () => BetaPrior.ByMoments(Published.Rats).StandardDeviation),
        ("1.20.shrunk", () => BetaPrior.ByMoments(Published.Rats).After(new Attended(4, 14)).Mean),
    ];

    private static IEnumerable<(string Id, Func<double> Answer)> Each(string id, int from, int to, Func<int, double> answer) =>
        Enumerable.Range(from, to - from + 1).Select(k => ($"{id}{k}", (Func<double>)(() => answer(k))));

    private static SliceDistribution Poisson() => SliceDistribution.Poisson(1.25);

    private static SliceDistribution FivePeople() => Sum(
        new[] { .1, .2, .3, .4, .5 }.Select(chance => SliceDistribution.Certainly(1).WithChance(chance)));

    /// <summary>Chances .4, .2, .3 and .1, one after the other: whether it is more at all, then more than one, then more than two.</summary>
    private static SliceDistribution FifteenToEighteen()
    {
        var one = SliceDistribution.Certainly(1);
        return SliceDistribution.Certainly(15) + (one + (one + one.WithChance(.1 / .4)).WithChance(.4 / .6)).WithChance(.6);
    }

    private static double Profit(int count)
    {
        var demand = FifteenToEighteen();
        return demand.Mean - demand.ExpectedShortage(count) - demand.ExpectedLeftover(count);
    }

    private static SliceDistribution TenGuests() =>
        Sum(Enumerable.Repeat(SliceDistribution.GammaPoisson(9, 3), 10));

    private static SliceDistribution TwelveGuests() => Sum(Enumerable.Range(0, 12).Select(guest => SliceDistribution
        .Poisson(guest < 8 ? 3 : 2)
        .WithChance(guest < 6 ? .95 : guest < 10 ? .6 : .2)));

    private static double PiesFor(double runOutChance) =>
        PieCountRule.For(TwelveGuests(), 8, new Share(runOutChance), null).Count.Value.Value;

    private static SliceDistribution Sum(IEnumerable<SliceDistribution> all) =>
        all.Aggregate(SliceDistribution.None, (sum, one) => sum + one);

    /// <summary>A normal curve out of the engine's own convolution: ten thousand people who each come with an even chance.</summary>
    private static class EvenChances
    {
        private const int People = 10_000;
        private const double Deviation = 50;

        private static readonly Lazy<SliceDistribution> All = new(() => Doubled(People));

        /// <summary>Expected shortage in standard deviations.</summary>
        public static double Shortage(double over) => All.Value.ExpectedShortage(At(over)) / Deviation;

        /// <summary>Up to there, with half of the step that lies on it.</summary>
        public static double UpTo(double over) => (All.Value.AtMost(At(over)) + All.Value.AtMost(At(over) - 1)) / 2;

        private static int At(double over) => People / 2 + (int)Math.Round(over * Deviation);

        private static SliceDistribution Doubled(int people)
        {
            if (people == 1)
            {
                return SliceDistribution.Certainly(1).WithChance(0.5);
            }

            var half = Doubled(people / 2);
            return people % 2 == 0 ? half + half : half + half + Doubled(1);
        }
    }

    /// <summary>Mean 3192, standard deviation 1181, 3500 ordered; the table's 0.26 standard deviations.</summary>
    private sealed class Newsvendor
    {
        public const double Mean = 3192;
        public const double Deviation = 1181;
        private const double Ordered = 3500;
        private const double Over = 0.26;

        public double Lost { get; } = Deviation * EvenChances.Shortage(Over);
        public double InStock { get; } = EvenChances.UpTo(Over);
        public double Sales => Mean - Lost;
        public double Left => Ordered - Sales;
    }

    private static class Published
    {
        /// <summary>People by number of exposures, from none.</summary>
        public static IReadOnlyList<Eaten> Posters { get; } =
        [
            .. new[] { 48, 37, 30, 24, 20, 16, 13, 11, 9, 7, 6, 5, 5, 3, 3, 2, 2, 2, 1, 1, 2, 1, 1, 1 }
                .SelectMany((people, exposures) => Enumerable.Repeat(new Eaten(exposures, 1), people)),
        ];

        /// <summary>Rats with a tumour, of so many, in 70 groups.</summary>
        public static IReadOnlyList<Attended> Rats { get; } =
        [
            .. new[]
            {
                0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 1, 5, 2, 5,
                3, 2, 7, 7, 3, 3, 2, 9, 10, 4, 4, 4, 4, 4, 4, 4, 10, 4, 4, 4, 5, 11, 12, 5, 5, 6, 5, 6, 6, 6, 6, 16, 15, 15, 9,
            }.Zip(
            [
                20, 20, 20, 20, 20, 20, 20, 19, 19, 19, 19, 18, 18, 17, 20, 20, 20, 20, 19, 19, 18, 18, 25, 24, 23, 20, 20, 20, 20,
                20, 20, 10, 49, 19, 46, 27, 17, 49, 47, 20, 20, 13, 48, 50, 20, 20, 20, 20, 20, 20, 20, 48, 19, 19, 19, 22, 46, 49,
                20, 20, 23, 19, 22, 20, 20, 20, 52, 46, 47, 24,
            ],
            (tumours, rats) => new Attended(tumours, rats)),
        ];
    }
}
