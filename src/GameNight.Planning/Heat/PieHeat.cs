using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;

namespace GameNight.Planning.Heat;

/// <summary>Heat one pie takes while it bakes, in joules, and how much of it comes out of the surface below.</summary>
/// <param name="DoughJoules">From its start to where water boils.</param>
/// <param name="WaterJoules">For what evaporates.</param>
/// <param name="ToppingsJoules">Toppings stay below boiling.</param>
/// <param name="BoilingCelsius">The wet layer on the surface stays there.</param>
public sealed record PieHeat(
    double DoughJoules,
    double WaterJoules,
    double ToppingsJoules,
    double BoilingCelsius,
    Estimate<double> ThroughSurfaceJoules)
{
    internal const double MostToppingsGrams = 3000;

    private static readonly ValidRange ToppingsGrams = new(0, MostToppingsGrams, "more than that is no pie");

    public double TotalJoules => DoughJoules + WaterJoules + ToppingsJoules;

    /// <param name="ball">20 g to 50 kg.</param>
    /// <param name="toppings">Sauce, cheese and the rest, up to 3 kg.</param>
    /// <exception cref="ArgumentOutOfRangeException">A mass is outside its range, or the dough is hotter than boiling water.</exception>
    public static PieHeat Of(
        Grams ball, Grams toppings, Celsius dough, Altitude altitude, ThermalProperties properties, MaterialsTable table)
    {
        DoughSphere.MassGrams.Demand(ball.Value, nameof(ball), "g");
        ToppingsGrams.Demand(toppings.Value, nameof(toppings), "g");
        var boiling = altitude.BoilingCelsius;
        if (dough.Value >= boiling)
        {
            throw new ArgumentOutOfRangeException(nameof(dough), dough, "Raw dough is colder than boiling water.");
        }

        var row = table.Pie;
        var doughJoules = ball.Value / 1000 * properties.HeatCapacityJPerKgK * (boiling - dough.Value);
        var water = ball.Value * row.EvaporatedShareOfDough * row.LatentJPerGram;
        var above = toppings.Value * row.ToppingsJPerGramK * row.ToppingsRiseKelvin;
        var total = doughJoules + water + above;
        return new PieHeat(doughJoules, water, above, boiling, new Estimate<double>(
            total * row.ThroughSurface, total * row.ThroughSurfaceLow, total * row.ThroughSurfaceHigh));
    }

    /// <summary>By how much the whole surface would cool if nothing heated it meanwhile; under the pie it is more.</summary>
    public Estimate<double> MeanDropKelvin(BakingSurface surface, Celsius surfaceAt, MaterialsTable table)
    {
        var capacity = surface.JoulesPerKelvinAt(surfaceAt.Value, table);
        return new Estimate<double>(
            ThroughSurfaceJoules.Expected / capacity, ThroughSurfaceJoules.Low / capacity, ThroughSurfaceJoules.High / capacity);
    }
}
