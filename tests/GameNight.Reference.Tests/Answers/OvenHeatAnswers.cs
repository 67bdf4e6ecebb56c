using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using NodaTime;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of baking surfaces in an oven.</summary>
internal static class OvenHeatAnswers
{
    private static readonly (SurfaceKind Kind, int Millimetres, int Oven)[] Slabs =
    [
        (SurfaceKind.Cordierite, 12, 250), (SurfaceKind.Cordierite, 15, 250), (SurfaceKind.Cordierite, 15, 290),
        (SurfaceKind.Cordierite, 20, 250), (SurfaceKind.CarbonSteel, 6, 250), (SurfaceKind.CarbonSteel, 10, 250),
        (SurfaceKind.CastIron, 5, 250),
    ];

    private static MaterialsTable Table => SharedFolder.Tables.Materials;

    private static BakingSurface Stone => Of(SurfaceKind.Cordierite, 15);

    private static PieHeat Pie => PieHeat.Of(
        new Grams(250), new Grams(175), new Celsius(20), default, HeatAnswers.LeanDough(), Table);

    public static IEnumerable<(string Id, Func<double> Answer)> All =>
    [
        .. Slabs.SelectMany(slab => new[] { 20, 10, 5 }.Select(within => (
            $"F.slab.{Name(slab.Kind)}.{slab.Millimetres}.{slab.Oven}.{within}",
            (Func<double>)(() => Minutes(Of(slab.Kind, slab.Millimetres), AirThere(slab.Oven), within))))),
        ("F.slab.ramp", () =>
            Minutes(Stone, AirThere(250) with { Preheat = Duration.FromMinutes(15) }, 5) - Minutes(Stone, AirThere(250), 5)),
        ("F.slab.tray", () =>
            Minutes(Stone, AirThere(250) with { Support = SurfaceSupport.SolidTray }, 5) / Minutes(Stone, AirThere(250), 5)),
        ("F.pie.heat", () => Pie.TotalJoules / 1000),
        ("F.pie.drop", () => Pie.MeanDropKelvin(Stone, new Celsius(250), Table).Expected),
    ];

    private static Oven AirThere(double celsius) =>
        new(new Celsius(20), new Celsius(celsius), Duration.Zero, OvenAir.Static, SurfaceSupport.WireRack);

    private static BakingSurface Of(SurfaceKind kind, double millimetres) =>
        new(kind, millimetres, new Centimetres(38), new Centimetres(38));

    private static string Name(SurfaceKind kind) => char.ToLowerInvariant(kind.ToString()[0]) + kind.ToString()[1..];

    private static double Minutes(BakingSurface surface, Oven oven, double within) => SurfaceHeat
        .Over(surface, oven, Duration.FromHours(4), Table)
        .UntilTop(oven.SetPoint.Value - within)!.Value.TotalMinutes;
}
