namespace GameNight.Planning.Fermentation;

/// <summary>Growth of yeast in dough: cardinal temperatures in °C, a lag and a limit in % of flour as fresh yeast.</summary>
public sealed record GrowthRow(
    double LowestCelsius,
    double OptimumCelsius,
    double HighestCelsius,
    double RatePerHourAtOptimum,
    double LagHours,
    double LagCelsius,
    double MostGrowthPercentOfFlour,
    string Source,
    IReadOnlyList<double> ValidCelsius);

/// <summary>Gas production per gram of fresh yeast, mL of CO2 at 25 °C and 1 atm.</summary>
public sealed record GasRow(
    double LowestCelsius,
    double OptimumCelsius,
    double HighestCelsius,
    double MillilitresPerHourPerGramFresh,
    double AtCelsius,
    string Source,
    IReadOnlyList<double> ValidCelsius);

public sealed record GasTargetRow(double MillilitresPer100GramsFlour, string Source);

public sealed record BandFactorRow(double Cold, double Room, string Source);

public sealed record SaltRow(double Factor, double ReferencePercent, double Lowest, double Highest, string Source);

public sealed record BallRow(
    double DensityKgPerM3,
    double HeatCapacityJPerKgK,
    double BoxedCoefficientWPerM2K,
    double OpenCoefficientWPerM2K,
    string Source);

public sealed record FridgeRow(double AssumedCelsius, double WarmCelsius, double ColdCelsius, string Source);

/// <summary>Constants of the fermentation model, with the range they were fitted on.</summary>
public sealed record FermentationTable(
    GrowthRow Growth,
    GasRow Gas,
    GasTargetRow Target,
    BandFactorRow BandFactor,
    SaltRow SaltPerPoint,
    BallRow Ball,
    FridgeRow Fridge)
{
    internal const string File = "fermentation.json";
}
