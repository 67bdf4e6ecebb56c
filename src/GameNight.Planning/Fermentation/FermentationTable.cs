using GameNight.Planning.Reference;

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
    IReadOnlyList<double> ValidCelsius)
{
    internal CardinalTemperatures Cardinal => new(LowestCelsius, OptimumCelsius, HighestCelsius);
}

/// <summary>Gas production per gram of fresh yeast, mL of CO2 at 25 °C and 1 atm.</summary>
public sealed record GasRow(
    double LowestCelsius,
    double OptimumCelsius,
    double HighestCelsius,
    double MillilitresPerHourPerGramFresh,
    double AtCelsius,
    string Source,
    IReadOnlyList<double> ValidCelsius)
{
    internal CardinalTemperatures Cardinal => new(LowestCelsius, OptimumCelsius, HighestCelsius);
}

public sealed record GasTargetRow(double MillilitresPer100GramsFlour, string Source);

/// <summary>The truth lies within these factors four times in five.</summary>
/// <param name="Room">Of the dose of a dough that is not.</param>
/// <param name="ColdRate">Of the gas made in the cold alone.</param>
/// <param name="ColdDose">Of a cold dose: its band is never narrower until the dough was looked at.</param>
public sealed record BandFactorRow(double Room, double ColdRate, double ColdDose, string Source);

public sealed record SaltRow(double Factor, double ReferencePercent, double Lowest, double Highest, string Source);

/// <summary>Gas in water under its own pressure of 1 atm, in mL at 0 °C and 1 atm per mL of water (Bunsen).</summary>
public sealed record SolubilityRow(double Celsius, double Bunsen, string Source);

/// <summary>
/// When a dough counts as ready: by the gas a regulated dough has made after so many hours at its own temperature and dose.
/// </summary>
public sealed record ReadyRow(
    double FreshYeastPercent, double Celsius, double FromHours, double BestHours, double UntilHours, string Source);

/// <summary>A dough that has grown to this volume (1 is as balled) and not to the next row's looks so.</summary>
public sealed record LookRow(DoughLook Look, double FromVolume, double TypicalVolume, string Source);

public sealed record EthanolRow(double MostPercentByVolume, string Source);

public sealed record FridgeRow(double AssumedCelsius, double WarmCelsius, double ColdCelsius, string Source);

/// <summary>Constants of the fermentation model, with the range they were fitted on.</summary>
public sealed record FermentationTable(
    GrowthRow Growth,
    GasRow Gas,
    GasTargetRow Target,
    BandFactorRow BandFactor,
    SaltRow SaltPerPoint,
    FridgeRow Fridge,
    IReadOnlyList<SolubilityRow> Solubility,
    ReadyRow Ready,
    IReadOnlyList<LookRow> Looks,
    EthanolRow Ethanol)
{
    internal const string File = "fermentation.json";

    private readonly IReadOnlyDictionary<DoughLook, LookRow> _looks = ReferenceText.OneRowEach(File, Looks, row => row.Look);

    public LookRow Of(DoughLook look) => _looks[look];
}
