using GameNight.Planning.Fermentation;
using GameNight.Planning.Heat;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of heat and altitude.</summary>
internal static class HeatAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["E16"] = () => TemperatureProfile.LumpTimeConstant(0.25, 1200, 2800, 8).TotalMinutes,
        ["F10.1000"] = () => 101.325 * new Altitude(1000).PressureFactor,
        ["F10.2000"] = () => 101.325 * new Altitude(2000).PressureFactor,
        ["F10.3000"] = () => 101.325 * new Altitude(3000).PressureFactor,
    };
}
