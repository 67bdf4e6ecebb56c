using GameNight.Planning.Fermentation;
using GameNight.TestKit;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of yeast and gas.</summary>
internal static class FermentationAnswers
{
    private static readonly CardinalTemperatures Growth = new(2.8, 32.3, 45.4);

    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["D1.optimum"] = () => SharedFolder.Tables.Fermentation.Growth.OptimumCelsius,
        ["D1.highest"] = () => SharedFolder.Tables.Fermentation.Growth.HighestCelsius,
        ["D2"] = () => new CardinalTemperatures(5.04, 30, 45.48).RateAt(20),
        ["D3.8"] = () => Growth.RateAt(8),
        ["D3.15"] = () => Growth.RateAt(15),
        ["D3.25"] = () => Growth.RateAt(25),
        ["D3.40"] = () => Growth.RateAt(40),
        ["D5.2h"] = () => GrowthPercent(1.67, 2),
        ["D5.4h"] = () => GrowthPercent(1.67, 4),
        ["D5.6h"] = () => GrowthPercent(1.67, 6),
        ["D5.half"] = () => GrowthPercent(0.5, 6),
        ["D5.two"] = () => GrowthPercent(2, 6),
        ["D.regulated6h"] = () => GasLikeGrowth(25, 6).From(0.167).GasMillilitresPer100GramsFlour,
        ["D.regulated8h"] = () => GasLikeGrowth(25, 8).From(0.167).GasMillilitresPer100GramsFlour,
        ["D.association8h"] = () => GasLikeGrowth(23, 8).From(0.088).GasMillilitresPer100GramsFlour,
        ["D.cold3"] = () => ColdDose(3),
        ["D.cold5"] = () => ColdDose(5),
        ["D.cold7"] = () => ColdDose(7),
    };

    private static FermentationModel At(double celsius, double hours, FermentationTable? table = null) => new(
        new TemperatureSeries([.. Enumerable.Repeat(celsius, (int)(60 * hours) + 1)], 1.0 / 60),
        table ?? SharedFolder.Tables.Fermentation, FermentationCalibration.None);

    /// <summary>The published figures were derived with one set of cardinal temperatures for both growth and gas.</summary>
    private static FermentationModel GasLikeGrowth(double celsius, double hours)
    {
        var table = SharedFolder.Tables.Fermentation;
        return At(celsius, hours, table with
        {
            Gas = table.Gas with
            {
                LowestCelsius = table.Growth.LowestCelsius,
                OptimumCelsius = table.Growth.OptimumCelsius,
                HighestCelsius = table.Growth.HighestCelsius,
            },
        });
    }

    private static double GrowthPercent(double yeastPercent, double hours) =>
        (At(27, hours).From(yeastPercent).YeastPercent / yeastPercent - 1) * 100;

    /// <summary>The published doses were derived with a lump that follows its place with one time constant.</summary>
    private static double ColdDose(double fridgeCelsius)
    {
        const double tauHours = 1.57;
        List<double> celsius = [24];
        foreach (var (hours, place) in new[] { (2, 24.0), (60, fridgeCelsius), (3, 22.0) })
        {
            var start = celsius[^1];
            celsius.AddRange(Enumerable.Range(1, 60 * hours).Select(minute => place + (start - place) * Math.Exp(-minute / 60.0 / tauHours)));
        }

        var table = SharedFolder.Tables.Fermentation;
        return YeastDoseModel.Solve(
            new FermentationModel(new TemperatureSeries([.. celsius], 1.0 / 60), table, FermentationCalibration.None),
            table.Target.MillilitresPer100GramsFlour);
    }
}
