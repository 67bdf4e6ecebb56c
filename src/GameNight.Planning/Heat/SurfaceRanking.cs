using GameNight.Planning.Quantities;

namespace GameNight.Planning.Heat;

/// <summary>A surface among others of the same temperature.</summary>
/// <param name="Rank">1 browns fastest.</param>
/// <param name="DryContactCelsius">
/// Where dry dough of the same properties would touch it. It orders surfaces and is no temperature of a pie: see
/// <see cref="WetLayerCelsius"/>.
/// </param>
/// <param name="WetLayerCelsius">While there is water in the layer that touches, it stays at most where water boils.</param>
public sealed record RankedSurface(SurfaceKind Kind, int Rank, double DryContactCelsius, double WetLayerCelsius);

/// <summary>
/// Which surface bakes a base fastest at the same temperature, by the temperature where two half-spaces touch (Varlamov,
/// Glatz and Grasso 2018). For ranking only: measured bases stay near 100 °C on floors of 440 °C (Falciano et al. 2023).
/// </summary>
public static class SurfaceRanking
{
    /// <summary>All surfaces of the table that stand the temperature, fastest first.</summary>
    public static IReadOnlyList<RankedSurface> At(
        Celsius surface, Celsius dough, ThermalProperties properties, Altitude altitude, MaterialsTable table) =>
    [
        .. table.Surfaces
            .Where(row => row.OvenCelsius.Holds(surface.Value))
            .Select(row => (row.Kind, Touch: ContactCelsius(
                surface.Value, row.At20.EffusivityJPerM2KRootS, dough.Value, properties.EffusivityJPerM2KRootS)))
            .OrderByDescending(row => row.Touch)
            .Select((row, index) =>
                new RankedSurface(row.Kind, index + 1, row.Touch, Math.Min(row.Touch, altitude.BoilingCelsius))),
    ];

    /// <summary>Where two half-spaces that touch meet: the mean of both, weighted with their effusivities.</summary>
    public static double ContactCelsius(
        double oneCelsius, double oneEffusivity, double otherCelsius, double otherEffusivity) =>
        (oneEffusivity * oneCelsius + otherEffusivity * otherCelsius) / (oneEffusivity + otherEffusivity);
}
