namespace GameNight.Planning.Fermentation;

/// <summary>Yeast and gas at the end of a temperature series.</summary>
/// <param name="YeastPercent">Living yeast, as fresh yeast in % of flour.</param>
/// <param name="GasMillilitresPer100GramsFlour">CO2 made so far, at 25 °C and 1 atm.</param>
public readonly record struct Fermented(double YeastPercent, double GasMillilitresPer100GramsFlour);

/// <summary>
/// Growth with a lag and a limit, and gas from what is alive, both with cardinal temperatures. Temperature does not depend on
/// the dose, so rates are sampled once and every dose is one pass over them. Growth is solved exactly in its own time (the
/// growth that temperature allowed so far); gas is summed by trapezoids.
/// </summary>
public sealed class FermentationModel
{
    private readonly double _mostGrowth;
    private readonly double _growthPerHour;
    private readonly double _lag;
    private readonly double[] _ripenedHours;
    private readonly double[] _gasPerHour;
    private readonly double _stepHours;

    /// <param name="gasFactor">On the gas of all temperatures, for what slows yeast as a whole: salt.</param>
    /// <param name="ripenedHours">What <see cref="RipenedHours"/> said at the end of the series before this one; 0 for a dough just mixed.</param>
    public FermentationModel(
        TemperatureSeries series, FermentationTable table, FermentationCalibration calibration, double gasFactor = 1, double ripenedHours = 0)
    {
        var (celsius, growthRow, gasRow) = (series.Celsius, table.Growth, table.Gas);
        var growth = growthRow.Cardinal;
        var gas = gasRow.Cardinal;
        var perHour = gasFactor * gasRow.MillilitresPerHourPerGramFresh / gas.RateAt(gasRow.AtCelsius);

        _mostGrowth = growthRow.MostGrowthPercentOfFlour;
        _growthPerHour = growthRow.RatePerHourAtOptimum;
        _lag = growthRow.LagHours * growth.RateAt(growthRow.LagCelsius);
        _stepHours = series.StepHours;
        _ripenedHours = new double[celsius.Length];
        _gasPerHour = new double[celsius.Length];
        var before = 0.0;
        for (var i = 0; i < celsius.Length; i++)
        {
            var rate = growth.RateAt(celsius[i]);
            ripenedHours += i > 0 ? _stepHours / 2 * (before + rate) : 0;
            before = rate;
            _ripenedHours[i] = ripenedHours;
            _gasPerHour[i] = perHour * calibration.At(celsius[i]) * gas.RateAt(celsius[i]);
        }
    }

    /// <summary>Hours at the optimum of growth that the series comes to until each sample, lag included.</summary>
    public IReadOnlyList<double> RipenedHours => _ripenedHours;

    /// <param name="yeastPercent">Fresh yeast in % of flour when the dough was mixed.</param>
    public Fermented From(double yeastPercent) => Follow(yeastPercent, []);

    /// <summary>The same, with the gas made until each sample.</summary>
    public Fermented From(double yeastPercent, out double[] gas)
    {
        gas = new double[_ripenedHours.Length];
        return Follow(yeastPercent, gas);
    }

    private Fermented Follow(double yeastPercent, double[] course)
    {
        // The logistic law with this limit, in closed form over the growth that temperature allowed.
        var limit = yeastPercent + _mostGrowth;
        var (headroom, pace) = (limit / yeastPercent - 1, limit / _mostGrowth);
        var (grown, yeast, gas) = (double.NaN, yeastPercent, 0.0);
        var made = 0.0;
        for (var i = 0; i < _ripenedHours.Length; i++)
        {
            // No growth in the lag, nor below the lowest temperature: most of a cold dough's hours.
            var growth = _growthPerHour * Math.Max(0, _ripenedHours[i] - _lag);
            if (growth != grown)
            {
                grown = growth;
                yeast = limit / (1 + headroom * Math.Exp(-pace * grown));
            }

            var rate = _gasPerHour[i] * yeast;
            gas += i > 0 ? _stepHours / 2 * (made + rate) : 0;
            made = rate;
            if (course.Length > 0)
            {
                course[i] = gas;
            }
        }

        return new Fermented(yeast, gas);
    }
}
