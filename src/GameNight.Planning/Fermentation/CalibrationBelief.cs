using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>
/// What is believed of a kitchen's two factors: normal in their logarithms. A look at the dough moves the factor of the
/// temperatures at which the gas was made, and little else (one step of a linear Gaussian filter).
/// </summary>
public sealed record CalibrationBelief(
    double LogCold, double LogWarm, double VarianceCold, double VarianceWarm, double Covariance)
{
    /// <summary>What an eye says of a dough is good to about a third of its gas (from memory).</summary>
    private static readonly double LookDeviation = Math.Log(1.35);

    public FermentationCalibration Expected => new(Within(LogCold), Within(LogWarm));

    public static CalibrationBelief Prior(FermentationCalibration expected, BandFactorRow band) => new(
        Math.Log(expected.Cold), Math.Log(expected.Warm), Square(Math.Log(band.ColdRate) / BandWidth.Deviations), Square(Math.Log(band.Room) / BandWidth.Deviations), 0);

    /// <param name="run">The dough with this belief's own factors.</param>
    /// <param name="fresh">Fresh yeast in % of flour.</param>
    internal CalibrationBelief After(DoughRun run, double fresh, Duration sinceMixing, DoughLook look)
    {
        var (cold, warm, celsius) = Made(run, fresh, sinceMixing);
        var made = cold + warm;
        if (made <= 0)
        {
            return this;
        }

        var (seen, isAtMost) = Seen(run, celsius, look);
        // A ball that has not risen may hold any gas that its water takes up: only a prediction above that is wrong.
        if (isAtMost && made <= seen)
        {
            return this;
        }

        var (a, b) = (cold / made, warm / made);
        var surprise = Math.Log(seen / made);
        var (throughCold, throughWarm) = (a * VarianceCold + b * Covariance, a * Covariance + b * VarianceWarm);
        var variance = a * throughCold + b * throughWarm + Square(LookDeviation);
        return new CalibrationBelief(
            LogCold + throughCold / variance * surprise,
            LogWarm + throughWarm / variance * surprise,
            VarianceCold - throughCold * throughCold / variance,
            VarianceWarm - throughWarm * throughWarm / variance,
            Covariance - throughCold * throughWarm / variance);
    }

    /// <summary>Standard deviation of the logarithm of the gas at the end of the journey.</summary>
    internal double SpreadOf(DoughRun run, double fresh)
    {
        var (cold, warm, _) = Made(run, fresh, run.Journey.AtRoom + run.Journey.InFridge + run.Journey.Tempering);
        var (a, b) = cold + warm > 0 ? (cold / (cold + warm), warm / (cold + warm)) : (0, 1);
        return Math.Sqrt(a * a * VarianceCold + 2 * a * b * Covariance + b * b * VarianceWarm);
    }

    /// <summary>Gas made on either side of the border until then, and the dough's temperature.</summary>
    private static (double Cold, double Warm, double Celsius) Made(DoughRun run, double fresh, Duration sinceMixing)
    {
        var celsius = run.Temperatures.Whole().Celsius;
        run.Over(run.Temperatures.Whole(), 0).From(fresh, out var gas);
        var last = Math.Clamp(JourneyTemperatures.Minutes(sinceMixing), 0, celsius.Length - 1);
        var (cold, warm) = (0.0, 0.0);
        for (var i = 1; i <= last; i++)
        {
            var made = gas[i] - gas[i - 1];
            (cold, warm) = celsius[i] < FermentationCalibration.BorderCelsius ? (cold + made, warm) : (cold, warm + made);
        }

        return (cold, warm, celsius[last]);
    }

    private static (double Gas, bool IsAtMost) Seen(DoughRun run, double celsius, DoughLook look)
    {
        var dissolved = run.Dissolvable(celsius);
        var volume = run.Table.Of(look).TypicalVolume;
        return (dissolved + CarbonDioxide.Free(volume, celsius, run.Formula.TotalPerFlour, run.Pressure), look == DoughLook.AsBalled);
    }

    private static double Within(double logarithm) =>
        Math.Clamp(Math.Exp(logarithm), FermentationCalibration.Least, FermentationCalibration.Most);

    private static double Square(double value) => value * value;
}
