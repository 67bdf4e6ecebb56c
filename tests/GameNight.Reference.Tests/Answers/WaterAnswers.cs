using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of water and ice.</summary>
internal static class WaterAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["C1"] = () => WaterFahrenheit(75, 65, 65, 8),
        ["C2"] = () => WaterFahrenheit(80, 65, 75, 35),
        ["C4.70to50"] = () => Ice(70, 50),
        ["C4.60to50"] = () => Ice(60, 50),
        ["C4.80to40"] = () => Ice(80, 40),
        ["C5"] = () => 10 * Ice(70, 50),
    };

    private static Celsius FromFahrenheit(double fahrenheit) => new((fahrenheit - 32) / 1.8);

    private static double WaterFahrenheit(double dough, double flour, double room, double friction)
    {
        // The rule is a sum of temperatures: with three factors the offsets of 32 cancel.
        var water = WaterTemperature.For(
            FromFahrenheit(dough), FromFahrenheit(flour), FromFahrenheit(room), friction / 1.8, new Celsius(0));
        return water.Water.Expected.Value * 1.8 + 32;
    }

    private static double Ice(double tapFahrenheit, double neededFahrenheit) => WaterTemperature.IceFor(
        FromFahrenheit(tapFahrenheit).Value, FromFahrenheit(neededFahrenheit).Value);
}
