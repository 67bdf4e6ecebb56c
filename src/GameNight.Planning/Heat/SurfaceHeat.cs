using System.Runtime.InteropServices;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>
/// How a baking surface warms in an oven and what pies do to it: conduction through its thickness, convection and radiation
/// on both faces, with walls as hot as the air. An iron plate above is one more such slab that radiates to it.
/// </summary>
public static class SurfaceHeat
{
    private const double SampleSeconds = 60;

    private static readonly ValidRange Hours = new(0.1, 24, "an evening at the oven");

    /// <param name="length">From switching on, 0.1 to 24 hours; rounded up to whole minutes.</param>
    /// <param name="bakes">Pies on the place that is followed, or null.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="ArgumentException">Bakes overlap.</exception>
    public static SurfaceTemperatures Over(
        BakingSurface surface, Oven oven, Duration length, MaterialsTable table, Bakes? bakes = null) =>
        Over(surface, oven, length, table, bakes, OvenRun.Cells, OvenRun.StepSeconds);

    internal static SurfaceTemperatures Over(
        BakingSurface surface, Oven oven, Duration length, MaterialsTable table, Bakes? bakes, int cells, double stepSeconds)
    {
        bakes?.Demand();
        Hours.Demand(length.TotalHours, nameof(length), "h");
        var run = new OvenRun(surface, oven, table, oven.Room.Value, cells, stepSeconds);
        var contact = bakes?.Contact(oven.SetPoint.Value);

        var samples = (int)Math.Ceiling(length.TotalMinutes - 1e-9);
        var (air, top, bottom) = (new double[samples + 1], new double[samples + 1], new double[samples + 1]);
        var iron = new double[oven.IronAbove is null ? 0 : samples + 1];
        for (var sample = 0; sample <= samples; sample++)
        {
            while (run.Seconds < sample * SampleSeconds)
            {
                run.Step(bakes is not null && bakes.LieAt(run.Seconds + stepSeconds / 2) ? contact : null);
            }

            (air[sample], top[sample], bottom[sample]) = (run.AirCelsius, run.TopCelsius, run.BottomCelsius);
            if (run.IronCelsius is { } celsius)
            {
                iron[sample] = celsius;
            }
        }

        var temperatures = new SurfaceTemperatures(
            Duration.FromSeconds(SampleSeconds),
            ImmutableCollectionsMarshal.AsImmutableArray(air),
            ImmutableCollectionsMarshal.AsImmutableArray(top),
            ImmutableCollectionsMarshal.AsImmutableArray(bottom),
            ImmutableCollectionsMarshal.AsImmutableArray(iron),
            run.StoredJPerM2,
            run.ThroughFacesJPerM2,
            []);
        var ready = oven.SetPoint.Value - table.Ready.WithinKelvin;
        return bakes is null ? temperatures : temperatures with { Dips = [.. bakes.Dips(temperatures, ready)] };
    }
}
