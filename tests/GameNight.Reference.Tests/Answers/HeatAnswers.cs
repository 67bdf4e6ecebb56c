using GameNight.Planning.Dough;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of thermal properties, altitude and contact; bodies, balls and ovens have classes of their own.</summary>
internal static class HeatAnswers
{
    private static MaterialsTable Table => SharedFolder.Tables.Materials;

    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = new[]
    {
        Enum.GetValues<FoodComponent>().SelectMany(Component), new[] { 55, 60, 62, 65, 70 }.SelectMany(Dough), Foods(), Contact(),
        AtAltitude(), Radiation(), BodyHeatAnswers.All, BallHeatAnswers.All, OvenHeatAnswers.All,
    }.SelectMany(part => part).ToDictionary(answer => answer.Id, answer => answer.Answer);

    public static ThermalProperties LeanDough(double water = 0.62) => FoodComposition.Of(
        new DoughFormula(
            new Share(water), new Share(0.025), default, default, false, YeastForm.Instant, default, default),
        Table).At(20, Table);

    private static IEnumerable<(string Id, Func<double> Answer)> Component(FoodComponent component)
    {
        var id = $"E1.{component.ToString().ToLowerInvariant()}";
        yield return ($"{id}.conductivity", () => Table.Of(component).At(20).ConductivityWPerMK);
        yield return ($"{id}.density", () => Table.Of(component).At(20).DensityKgPerM3);
        yield return ($"{id}.heatCapacity", () => Table.Of(component).At(20).HeatCapacityJPerKgK / 1000);
    }

    private static IEnumerable<(string Id, Func<double> Answer)> Dough(int waterPercent)
    {
        var dough = () => LeanDough(waterPercent / 100.0);
        yield return ($"E2.{waterPercent}.heatCapacity", () => dough().HeatCapacityJPerKgK / 1000);
        yield return ($"E2.{waterPercent}.density", () => dough().DensityKgPerM3);
        yield return ($"E2.{waterPercent}.conductivity", () => dough().ConductivityWPerMK);
        yield return ($"E2.{waterPercent}.diffusivity", () => dough().DiffusivityM2PerS * 1e6);
    }

    private static IEnumerable<(string Id, Func<double> Answer)> Foods()
    {
        yield return ("E3.water", () => KilojoulesPerKgK(new FoodComposition(1, 0, 0, 0, 0, 0)));
        yield return ("E3.oil", () => KilojoulesPerKgK(new FoodComposition(0, 0, 1, 0, 0, 0)));
        // Beside their water: about 1 % each of protein and fibre, the rest sugars.
        yield return ("E3.tomato", () => KilojoulesPerKgK(new FoodComposition(0.95, 0.01, 0, 0.025, 0.01, 0.005)));
        // Bread flour's own solids with 2 % of salt, at 44.5 % water.
        yield return ("E3.bread", () => KilojoulesPerKgK(new FoodComposition(0.445, 0.075, 0.0105, 0.439, 0.015, 0.0155)));
    }

    private static double KilojoulesPerKgK(FoodComposition food) => food.At(20, Table).HeatCapacityJPerKgK / 1000;

    private static IEnumerable<(string Id, Func<double> Answer)> Contact()
    {
        yield return ("E14.brick", () => SurfaceRanking.ContactCelsius(330, 1, 20, 0.65));
        yield return ("E14.steel", () => SurfaceRanking.ContactCelsius(330, 1, 20, 0.10));
        yield return ("E14.steel230", () => SurfaceRanking.ContactCelsius(230, 1, 20, 0.10));
        yield return ("F1.bottom", () => SurfaceRanking
            .At(new Celsius(439), new Celsius(20), LeanDough(), default, Table).Max(surface => surface.WetLayerCelsius));
        yield return ("E.effusivity.cordierite", () => Table.Of(SurfaceKind.Cordierite).At20.EffusivityJPerM2KRootS);
        yield return ("E.effusivity.fireBrick", () => Table.Of(SurfaceKind.FireBrick).At20.EffusivityJPerM2KRootS);
        yield return ("E.effusivity.carbonSteel", () => Table.Of(SurfaceKind.CarbonSteel).At20.EffusivityJPerM2KRootS);
        yield return ("E.effusivity.castIron", () => Table.Of(SurfaceKind.CastIron).At20.EffusivityJPerM2KRootS);
        yield return ("E.effusivity.dough", () => LeanDough().EffusivityJPerM2KRootS);
    }

    private static IEnumerable<(string Id, Func<double> Answer)> AtAltitude()
    {
        yield return ("F5.01", () => WaterBoiling.CelsiusAt(0.1e6) + 273.15);
        yield return ("F5.1", () => WaterBoiling.CelsiusAt(1e6) + 273.15);
        yield return ("F5.10", () => WaterBoiling.CelsiusAt(10e6) + 273.15);
        foreach (var metres in new[] { 1000, 2000, 3000 })
        {
            yield return ($"F10.{metres}", () => new Altitude(metres).PressurePascals / 1000);
        }

        foreach (var metres in new[] { 0, 500, 1000, 1500, 1609, 2000, 2500, 3000 })
        {
            yield return ($"F.boiling.{metres}", () => new Altitude(metres).BoilingCelsius);
        }

        yield return ("F.gas.1609", () => new Altitude(1609).GasVolumeFactor);
        yield return ("F.gas.2000", () => new Altitude(2000).GasVolumeFactor);
    }

    private static IEnumerable<(string Id, Func<double> Answer)> Radiation()
    {
        // Over a difference of a thousandth of a kelvin the fourth power is its own tangent.
        yield return ("F.radiation.cold", () => FaceHeat.Radiation(0.9, 250, 20) / 230);
        yield return ("F.radiation.near250", () => FaceHeat.Radiation(0.9, 250, 249.999) * 1000);
        yield return ("F.radiation.near290", () => FaceHeat.Radiation(0.9, 290, 289.999) * 1000);
        yield return ("F4", () =>
            new FaceHeat(Table.Of(OvenAir.Static).WPerM2K, 205, Table.Of(SurfaceKind.Cordierite).Emissivity, 205).WPerM2(100) / 105);
    }
}
