using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>
/// A time the dough spends in one place as one lump. A phase whose lump has another mass than the one before starts evenly
/// at the mean temperature of that one: dividing and balling mix the dough.
/// </summary>
/// <param name="Length">Not negative.</param>
/// <param name="Lump">Mass of one lump: the batch while it rests in the bowl, then a ball.</param>
/// <param name="SurroundingCelsius">-30 to 60.</param>
/// <param name="WPerM2K">Convection and radiation together, 0.1 to 1000.</param>
/// <param name="MeasuredCelsius">The dough, measured as the phase starts, or null: what was reckoned until then does not count.</param>
public sealed record HeatPhase(
    Duration Length, Grams Lump, double SurroundingCelsius, double WPerM2K, double? MeasuredCelsius = null)
{
    private static readonly ValidRange DoughCelsius =
        new(-30, 60, "from a freezer to where yeast dies and dough begins to bake");

    private static readonly ValidRange Coefficient =
        new(0.1, 1000, "from a well wrapped dough to running water");

    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    internal void Demand()
    {
        DoughCelsius.Demand(SurroundingCelsius, nameof(SurroundingCelsius), "°C");
        Coefficient.Demand(WPerM2K, nameof(WPerM2K), "W/m²K");
        DoughCelsius.Demand(MeasuredCelsius ?? SurroundingCelsius, nameof(MeasuredCelsius), "°C");
        DoughSphere.MassGrams.Demand(Lump.Value, nameof(Lump), "g");
        if (Length < Duration.Zero)
        {
            throw new ArgumentOutOfRangeException(nameof(Length), Length, "A phase does not end before it starts.");
        }
    }

    /// <exception cref="ArgumentOutOfRangeException">The dough does not start between -30 and 60 °C.</exception>
    internal static void DemandStart(double celsius) => DoughCelsius.Demand(celsius, nameof(celsius), "°C");
}
