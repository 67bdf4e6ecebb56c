using CsCheck;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using NodaTime;

namespace GameNight.Planning.Tests.Heat;

/// <summary>Doughs, places and ovens to test heat with.</summary>
internal static class AKitchen
{
    public static MaterialsTable Table => SharedFolder.Tables.Materials;

    public static ThermalProperties Dough { get; } = new(0.439, 1231, 2806);

    public static Gen<HeatPhase> Phases { get; } =
        from minutes in Gen.Double[0.3, 600]
        from grams in Gen.OneOf(Gen.Const(250.0), Gen.Const(325.0), Gen.Const(1300.0))
        from celsius in Gen.Double[-2, 32]
        from coefficient in Gen.Double[2, 60]
        select new HeatPhase(Duration.FromMinutes(minutes), new Grams(grams), celsius, coefficient);

    public static BakingSurface Surface(SurfaceKind kind = SurfaceKind.Cordierite, double millimetres = 15) =>
        new(kind, millimetres, new Centimetres(38), new Centimetres(38));

    public static Oven Oven(double celsius = 250, double preheatMinutes = 25, BakingSurface? iron = null) => new(
        new Celsius(21), new Celsius(celsius), Duration.FromMinutes(preheatMinutes), OvenAir.Static, SurfaceSupport.WireRack, iron);

    public static PieHeat Pie => PieHeat.Of(new Grams(325), new Grams(200), new Celsius(18), default, Dough, Table);

    public static Bakes Bakes(params double[] minutes) =>
        new([.. minutes.Select(Duration.FromMinutes)], Duration.FromMinutes(7), Pie, PieAreaM2: 0.0855);

    /// <summary>A surface in an oven that both are in their ranges, whatever it is made of.</summary>
    public static Gen<(BakingSurface Surface, Oven Oven)> Ovens { get; } =
        from kind in Gen.Enum<SurfaceKind>()
        from thickness in Gen.Double[0, 1]
        from celsius in Gen.Double[180, 345]
        from preheat in Gen.Double[0, 40]
        from air in Gen.Enum<OvenAir>()
        from support in Gen.Enum<SurfaceSupport>()
        from iron in Gen.Bool
        select (
            Surface(kind, Between(Table.Of(kind).ThicknessMillimetres, thickness)),
            Oven(celsius, preheat, iron ? Surface(SurfaceKind.CastIron, 6) : null) with { Air = air, Support = support });

    private static double Between(Reference.ValidRange range, double share) => range.Low + share * (range.High - range.Low);
}
