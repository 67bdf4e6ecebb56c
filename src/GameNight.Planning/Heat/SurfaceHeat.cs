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
    private const int Cells = 10;

    /// <summary>A plate of iron has one temperature through its thickness: its Biot number is below 0.01.</summary>
    private const int IronCells = 1;

    private const double StepSeconds = 5;

    private static readonly ValidRange Hours = new(0.1, 24, "an evening at the oven");

    /// <param name="length">From switching on, 0.1 to 24 hours; rounded up to whole minutes.</param>
    /// <param name="bakes">Pies on the place that is followed, or null.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="ArgumentException">Bakes overlap.</exception>
    public static SurfaceTemperatures Over(
        BakingSurface surface, Oven oven, Duration length, MaterialsTable table, Bakes? bakes = null) =>
        Over(surface, oven, length, table, bakes, Cells, StepSeconds);

    internal static SurfaceTemperatures Over(
        BakingSurface surface, Oven oven, Duration length, MaterialsTable table, Bakes? bakes, int cells, double stepSeconds)
    {
        surface.Demand(table);
        oven.Demand(surface, table);
        bakes?.Demand();
        Hours.Demand(length.TotalHours, nameof(length), "h");

        var faces = new OvenFaces(surface, oven, table);
        var slab = SlabOf(surface, oven, table, cells);
        var iron = oven.IronAbove is { } plate ? SlabOf(plate, oven, table, IronCells) : null;

        var samples = (int)Math.Ceiling(length.TotalMinutes - 1e-9);
        var (air, top, bottom) = (new double[samples + 1], new double[samples + 1], new double[samples + 1]);
        var above = new double[iron is null ? 0 : samples + 1];
        var heldAtStart = slab.HeldJPerM2;
        var perSample = (int)Math.Round(60 / stepSeconds);
        var (contact, boiling) = (bakes?.ContactWPerM2K(oven.SetPoint.Value) ?? 0, bakes?.Pie.BoilingCelsius ?? 0);

        Sample(0);
        for (var step = 1; step <= samples * perSample; step++)
        {
            var airCelsius = oven.AirCelsiusAfter(step * stepSeconds);
            var pieLies = bakes?.LieAt((step - 0.5) * stepSeconds) ?? false;
            var upper = pieLies ? Pie(slab.TopCelsius) : faces.Top(airCelsius, iron?.BottomCelsius);

            slab.Step(stepSeconds, upper, faces.Bottom(airCelsius));
            iron?.Step(
                stepSeconds, faces.IronTop(airCelsius), faces.IronBottom(airCelsius, pieLies ? boiling : slab.TopCelsius));
            if (step % perSample == 0)
            {
                Sample(step / perSample);
            }
        }

        var temperatures = new SurfaceTemperatures(
            Duration.FromMinutes(1),
            ImmutableCollectionsMarshal.AsImmutableArray(air),
            ImmutableCollectionsMarshal.AsImmutableArray(top),
            ImmutableCollectionsMarshal.AsImmutableArray(bottom),
            ImmutableCollectionsMarshal.AsImmutableArray(above),
            slab.HeldJPerM2 - heldAtStart,
            slab.ThroughFacesJPerM2,
            []);
        return bakes is null
            ? temperatures
            : temperatures with
            {
                Dips = [.. bakes.Dips(temperatures, readyCelsius: oven.SetPoint.Value - table.Ready.WithinKelvin)],
            };

        FaceHeat Pie(double topCelsius) =>
            new(ContactWPerM2K: topCelsius > boiling ? contact : 0, ContactCelsius: boiling);

        void Sample(int index)
        {
            air[index] = oven.AirCelsiusAfter(index * 60);
            (top[index], bottom[index]) = (slab.TopCelsius, slab.BottomCelsius);
            if (iron is not null)
            {
                above[index] = iron.MeanCelsius;
            }
        }
    }

    private static SlabConduction SlabOf(BakingSurface surface, Oven oven, MaterialsTable table, int cells)
    {
        var row = table.Of(surface.Kind);
        return new SlabConduction(row.At20, row.HeatCapacityJPerKgK2, surface.ThicknessMetres, oven.Room.Value, cells);
    }
}
