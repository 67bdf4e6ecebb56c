using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>An oven with what lies in it, from the moment it is switched on. Air and walls warm in a straight line.</summary>
/// <param name="Room">What everything starts at, 0 to 45 °C.</param>
/// <param name="Preheat">Until the air is at the set-point, up to 3 hours.</param>
/// <param name="Support">What carries the baking surface.</param>
/// <param name="IronAbove">A plate close above the baking surface, as large as it, or null.</param>
/// <param name="HeatMultiplier">On all heat between oven and surface, 0.2 to 5: 1 until readings teach it.</param>
public sealed record Oven(
    Celsius Room,
    Celsius SetPoint,
    Duration Preheat,
    OvenAir Air,
    SurfaceSupport Support,
    BakingSurface? IronAbove = null,
    double HeatMultiplier = 1)
{
    private static readonly ValidRange RoomCelsius = new(0, 45, "a kitchen");
    private static readonly ValidRange PreheatMinutes = new(0, 180, "an oven that takes longer is not heating");

    internal static ValidRange Multiplier { get; } =
        new(0.2, 5, "beyond that the reading, the thickness or the material is wrong");

    /// <summary>Temperature of air and walls.</summary>
    public double AirCelsiusAfter(double seconds) => seconds >= Preheat.TotalSeconds
        ? SetPoint.Value
        : Room.Value + (SetPoint.Value - Room.Value) * seconds / Preheat.TotalSeconds;

    /// <summary>What is wrong with the set-point for the surface and the plate above, and with that plate, for screens and API.</summary>
    public IReadOnlyList<SnapshotProblem> Problems(string path, BakingSurface surface, MaterialsTable table)
    {
        return [.. SetPointFor(surface), .. IronAbove is { } iron ? [.. SetPointFor(iron), .. iron.Problems($"{path}.ironAbove", table)] : Array.Empty<SnapshotProblem>()];

        IReadOnlyList<SnapshotProblem> SetPointFor(BakingSurface body)
        {
            var range = table.Of(body.Kind).OvenCelsius;
            return range.Holds(SetPoint.Value)
                ? []
                : [new SnapshotProblem($"{path}.setPointCelsius", SnapshotFault.OutOfRange, SetPoint.Value, range.Low, range.High)];
        }
    }

    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, which the message names.</exception>
    internal void Demand(BakingSurface surface, MaterialsTable table)
    {
        RoomCelsius.Demand(Room.Value, nameof(Room), "°C");
        PreheatMinutes.Demand(Preheat.TotalMinutes, nameof(Preheat), "min");
        Multiplier.Demand(HeatMultiplier, nameof(HeatMultiplier), "times");
        table.Of(surface.Kind).OvenCelsius.Demand(SetPoint.Value, nameof(SetPoint), "°C");
        if (IronAbove is { } iron)
        {
            iron.Demand(table);
            table.Of(iron.Kind).OvenCelsius.Demand(SetPoint.Value, nameof(SetPoint), "°C");
        }
    }
}
