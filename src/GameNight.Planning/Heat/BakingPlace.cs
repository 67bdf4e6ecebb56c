using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>What pies are baked on in the kitchen's oven, and what an infra-red thermometer said of it.</summary>
/// <param name="IronAbove">A plate close above the surface, or null.</param>
/// <param name="Lead">What the soak follows.</param>
/// <param name="Readings">Of this surface in this oven, up to 200.</param>
public sealed record BakingPlace(
    BakingSurface Surface,
    OvenAir Air,
    SurfaceSupport Support,
    SoakLead Lead,
    BakingSurface? IronAbove = null,
    IReadOnlyList<SurfaceReading>? Readings = null)
{
    private static readonly ValidRange ReadingCelsius = new(0, 600, "what a hand-held infra-red thermometer shows in an oven");

    /// <summary>What most have, until a host says otherwise (from memory).</summary>
    public static BakingPlace Assumed { get; } = new(
        new BakingSurface(SurfaceKind.Cordierite, 15, new Centimetres(38), new Centimetres(38)),
        OvenAir.Static,
        SurfaceSupport.WireRack,
        SoakLead.RuleOfThumb);

    /// <param name="preheat">Until the air is at the set-point.</param>
    public Oven In(Celsius room, Celsius setPoint, Duration preheat) =>
        new(room, setPoint, preheat, Air, Support, IronAbove);

    /// <summary>What is wrong with it in that oven, for screens and API.</summary>
    public IReadOnlyList<SnapshotProblem> Problems(string path, Oven oven, MaterialsTable table) =>
    [
        .. Surface.Problems($"{path}.surface", table),
        .. oven.Problems(path, Surface, table),
        .. Readings?.Count > LearnedHeat.MostReadings
            ? [new SnapshotProblem($"{path}.readings", SnapshotFault.WrongCount, Readings.Count, 0, LearnedHeat.MostReadings)]
            : Array.Empty<SnapshotProblem>(),
        .. (Readings ?? []).SelectMany(reading => Problems($"{path}.readings", reading)),
    ];

    /// <summary>What is wrong with one reading.</summary>
    public static IEnumerable<SnapshotProblem> Problems(string path, SurfaceReading reading)
    {
        var (hours, top) = (LearnedHeat.Hours, ReadingCelsius);
        if (!hours.Holds(reading.AfterSwitchOn.TotalHours))
        {
            yield return new($"{path}.afterSwitchOnMinutes", SnapshotFault.OutOfRange, reading.AfterSwitchOn.TotalMinutes, hours.Low * 60, hours.High * 60);
        }

        if (!top.Holds(reading.Top.Value))
        {
            yield return new($"{path}.topCelsius", SnapshotFault.OutOfRange, reading.Top.Value, top.Low, top.High);
        }
    }
}
