using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>What an infra-red thermometer showed of the surface's top, with nothing on it.</summary>
/// <param name="AfterSwitchOn">Up to 6 hours.</param>
public sealed record SurfaceReading(Duration AfterSwitchOn, Celsius Top);

/// <summary>
/// How much faster or slower heat reaches this surface in this oven than the table says, learned from readings.
/// </summary>
/// <param name="Multiplier">On all heat transfer. Its band narrows with readings, and only with those that tell something:
/// one taken when everything is at its set-point does not.</param>
/// <param name="ResidualKelvin">By how much the readings still differ from the model, root mean square.</param>
public sealed record LearnedHeat(Estimate<double> Multiplier, int Readings, double ResidualKelvin)
{
    public const int FewestReadings = 2;
    public const int MostReadings = 200;

    /// <summary>Half of a band that holds four times out of five, in standard deviations.</summary>
    private const double FourOfFive = 1.2816;

    private const int CoarseSteps = 16;
    private const int Narrowings = 20;
    private const double Golden = 0.6180339887498949;
    private const double Nudge = 0.02;

    internal static ValidRange Hours { get; } = new(0, 6, "later the surface has long been at its set-point");

    /// <summary>
    /// Least squares over the logarithm of the multiplier, with what the table says as one more reading, as sure as the
    /// table's spread: two poor readings then move little, ten good ones decide.
    /// </summary>
    /// <param name="readings">2 to 200, in any order.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many readings, or a value is outside its range.</exception>
    public static LearnedHeat From(
        BakingSurface surface, Oven oven, IReadOnlyList<SurfaceReading> readings, MaterialsTable table)
    {
        if (readings.Count is < FewestReadings or > MostReadings)
        {
            throw new ArgumentOutOfRangeException(
                nameof(readings), readings.Count, "It takes 2 to 200 readings: one may be a slip of the hand.");
        }

        foreach (var reading in readings)
        {
            Hours.Demand(reading.AfterSwitchOn.TotalHours, nameof(readings), "h");
        }

        var length = readings.Max(reading => reading.AfterSwitchOn) + Duration.FromMinutes(10);
        var (prior, kelvin) = (Math.Log(table.Ready.SpreadFactor) / FourOfFive, table.Ready.ReadingKelvin);

        var best = Smallest(Misfit, Math.Log(Oven.Multiplier.Low), Math.Log(Oven.Multiplier.High));
        var residual = Math.Sqrt(Residuals(best).Average(difference => difference * difference));

        // Readings that scatter more than the instrument does are worth less.
        var noise = Math.Max(kelvin, residual);
        var tells = Residuals(best + Nudge).Zip(Residuals(best - Nudge))
            .Sum(two => Math.Pow((two.First - two.Second) / (2 * Nudge) / noise, 2));
        var half = FourOfFive / Math.Sqrt(tells + 1 / (prior * prior));
        return new LearnedHeat(Around(best, half), readings.Count, residual);

        double Misfit(double logarithm) =>
            Residuals(logarithm).Sum(difference => difference * difference) / (kelvin * kelvin)
            + logarithm * logarithm / (prior * prior);

        List<double> Residuals(double logarithm)
        {
            var model = SurfaceHeat.Over(surface, oven with { HeatMultiplier = Within(Math.Exp(logarithm)) }, length, table);
            return [.. readings.Select(reading => model.TopAt(reading.AfterSwitchOn) - reading.Top.Value)];
        }
    }

    /// <summary>The band before any reading.</summary>
    internal static Estimate<double> Unlearned(double multiplier, MaterialsTable table) =>
        Around(Math.Log(multiplier), Math.Log(table.Ready.SpreadFactor));

    private static Estimate<double> Around(double logarithm, double half) => new(
        Within(Math.Exp(logarithm)), Within(Math.Exp(logarithm - half)), Within(Math.Exp(logarithm + half)));

    private static double Within(double multiplier) => Math.Clamp(multiplier, Oven.Multiplier.Low, Oven.Multiplier.High);

    /// <summary>Where a function is smallest: a coarse look over the whole range, then golden section around the best.</summary>
    private static double Smallest(Func<double, double> of, double low, double high)
    {
        var step = (high - low) / CoarseSteps;
        var best = Enumerable.Range(0, CoarseSteps + 1).Select(i => low + i * step).MinBy(of);
        (low, high) = (Math.Max(low, best - step), Math.Min(high, best + step));
        for (var i = 0; i < Narrowings; i++)
        {
            var (left, right) = (high - Golden * (high - low), low + Golden * (high - low));
            (low, high) = of(left) < of(right) ? (low, right) : (left, high);
        }

        return (low + high) / 2;
    }
}
