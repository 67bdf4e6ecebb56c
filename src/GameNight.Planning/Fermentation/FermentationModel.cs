namespace GameNight.Planning.Fermentation;

/// <summary>Yeast and gas at the end of a temperature profile.</summary>
/// <param name="YeastPercent">Living yeast, as fresh yeast in % of flour.</param>
/// <param name="GasMillilitresPer100GramsFlour">CO2 made so far, at 25 °C and 1 atm.</param>
public readonly record struct Fermented(double YeastPercent, double GasMillilitresPer100GramsFlour);

/// <summary>
/// Growth with a lag and a limit, and gas from what is alive, both with cardinal temperatures, over a temperature profile.
/// Temperature does not depend on the dose, so rates are sampled once and every dose is one pass over them.
/// </summary>
public sealed class FermentationModel
{
    private const double LongestStepMinutes = 1;

    private readonly FermentationTable _table;
    private readonly double[] _growthPerHour;
    private readonly double[] _gasPerHour;
    private readonly double _stepHours;

    public FermentationModel(TemperatureProfile profile, FermentationTable table, double longestStepMinutes = LongestStepMinutes)
    {
        _table = table;
        (var celsius, _stepHours) = profile.Sampled(longestStepMinutes);

        var growth = new CardinalTemperatures(
            table.Growth.LowestCelsius, table.Growth.OptimumCelsius, table.Growth.HighestCelsius);
        var gas = new CardinalTemperatures(
            table.Gas.LowestCelsius, table.Gas.OptimumCelsius, table.Gas.HighestCelsius);
        var gasAtReference = gas.RateAt(table.Gas.AtCelsius);

        _gasPerHour = Array.ConvertAll(
            celsius, t => table.Gas.MillilitresPerHourPerGramFresh * gas.RateAt(t) / gasAtReference);
        _growthPerHour = WithLag(Array.ConvertAll(celsius, growth.RateAt), growth.RateAt(table.Growth.LagCelsius));
    }

    /// <param name="yeastPercent">Fresh yeast in % of flour at the start.</param>
    public Fermented From(double yeastPercent)
    {
        var yeast = yeastPercent;
        var gas = 0.0;
        for (var i = 1; i < _gasPerHour.Length; i++)
        {
            // Midpoint rule: second order, and the rates are smooth between samples.
            var halfway = yeast + _stepHours / 2 * Growth(_growthPerHour[i - 1], yeast, yeastPercent);
            var rate = (_growthPerHour[i - 1] + _growthPerHour[i]) / 2;
            var next = yeast + _stepHours * Growth(rate, halfway, yeastPercent);

            gas += _stepHours / 2 * (_gasPerHour[i - 1] * yeast + _gasPerHour[i] * next);
            yeast = next;
        }

        return new Fermented(yeast, gas);
    }

    private double Growth(double ratePerHour, double yeast, double start) =>
        ratePerHour * yeast * Math.Max(0, 1 - (yeast - start) / _table.Growth.MostGrowthPercentOfFlour);

    /// <summary>Nothing grows until the lag, counted in hours at the lag's own temperature, has run out.</summary>
    private double[] WithLag(double[] relativeRate, double rateAtLagCelsius)
    {
        var lagLeft = _table.Growth.LagHours;
        var perHour = new double[relativeRate.Length];
        for (var i = 0; i < relativeRate.Length; i++)
        {
            perHour[i] = lagLeft > 0 ? 0 : _table.Growth.RatePerHourAtOptimum * relativeRate[i];
            lagLeft -= relativeRate[i] / rateAtLagCelsius * _stepHours;
        }

        return perHour;
    }
}
