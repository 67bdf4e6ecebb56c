using GameNight.Planning.Fermentation;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of heat and altitude.</summary>
internal static class HeatAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["E16"] = () => TemperatureProfile.LumpTimeConstant(0.25, 1200, 2800, 8).TotalMinutes,
        ["F10.1000"] = () => 101.325 * YeastDoseModel.PressureFactor(1000),
        ["F10.2000"] = () => 101.325 * YeastDoseModel.PressureFactor(2000),
        ["F10.3000"] = () => 101.325 * YeastDoseModel.PressureFactor(3000),
    };
}
