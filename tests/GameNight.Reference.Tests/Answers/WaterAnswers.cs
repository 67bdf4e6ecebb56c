using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of water and ice.</summary>
internal static class WaterAnswers
{
    private static readonly DoughFormula Lean = new(
        new Share(0.62), new Share(0.025), default, default, false, YeastForm.Fresh, default, default);

    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new Dictionary<string, Func<double>>
    {
        ["C1"] = () => WaterFahrenheit(75, 65, 65, 8),
        ["C2"] = () => WaterFahrenheit(80, 65, 75, 35),
        ["C4.70to50"] = () => Ice(70, 50),
        ["C4.60to50"] = () => Ice(60, 50),
        ["C4.80to40"] = () => Ice(80, 40),
        ["C5"] = () => 10 * Ice(70, 50),
        ["C7"] = () => 1.8 * WaterTemperature.IceKelvin,
        ["C8"] = () => 11 * 3600 / FoodComposition.Of(Lean, SharedFolder.Tables.Materials).At(20, SharedFolder.Tables.Materials).HeatCapacityJPerKgK,
        ["C10.rule"] = () => WaterTemperature.Rule(WithoutFriction),
        ["C10.balance"] = () => WaterTemperature.HeatBalance(WithoutFriction, SharedFolder.Tables.Flour.Heat, riseKelvin: 0),
        ["C11.hand"] = () => Rise(SharedFolder.Tables.Dough.Of(KneadingWay.ByHand).KelvinOfTheSum),
        ["C11.mixer"] = () => Rise(SharedFolder.Tables.Dough.Of(KneadingWay.Mixer).KelvinOfTheSum),
        ["T3.replace"] = () => 40 * WaterTemperature.IceFor(20, 10),
        ["T10"] = () => 1.8 * Rise(8 / 1.8),
    };

    private static Celsius FromFahrenheit(double fahrenheit) => new((fahrenheit - 32) / 1.8);

    private static WaterRequest WithoutFriction => Request(new Celsius(24), new Celsius(22), new Celsius(22), 0);

    private static WaterRequest Request(Celsius dough, Celsius flour, Celsius room, double friction) =>
        new(dough, flour, room, friction, new Celsius(0), new Share(0.6));

    /// <summary>What the plan says of kneading: the rise that the balance of heat counts with.</summary>
    private static double Rise(double friction) => WaterTemperature
        .For(WithoutFriction with { FrictionKelvin = friction }, SharedFolder.Tables.Flour.Heat)
        .Because.OfType<WaterByHeatBalance>().Single().RiseKelvin;

    // The rule is a sum of temperatures: with three factors the offsets of 32 cancel.
    private static double WaterFahrenheit(double dough, double flour, double room, double friction) => 32 + 1.8 * WaterTemperature.Rule(
        Request(FromFahrenheit(dough), FromFahrenheit(flour), FromFahrenheit(room), friction / 1.8));

    private static double Ice(double tapFahrenheit, double neededFahrenheit) => WaterTemperature.IceFor(
        FromFahrenheit(tapFahrenheit).Value, FromFahrenheit(neededFahrenheit).Value);
}
