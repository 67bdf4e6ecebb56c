using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>A time the dough spends in one place, warming or cooling towards it.</summary>
/// <param name="SurroundingCelsius">Temperature of the place.</param>
/// <param name="TimeConstant">Time in which the difference to the place falls to 37 %.</param>
public sealed record DoughPhase(Duration Length, double SurroundingCelsius, Duration TimeConstant);

/// <summary>Mean temperature of the dough over time: an exponential approach in each phase, continuous in between.</summary>
public sealed class TemperatureProfile(double startCelsius, IReadOnlyList<DoughPhase> phases)
{
    public double TotalMinutes => phases.Sum(phase => phase.Length.TotalMinutes);

    /// <summary>Temperatures in °C at equal steps from start to end, both included; steps of at most the given length.</summary>
    public TemperatureSeries Sampled(double longestStepMinutes)
    {
        var total = TotalMinutes;
        var steps = Math.Max(1, (int)Math.Ceiling(total / longestStepMinutes));
        var step = total / steps;
        var celsius = new double[steps + 1];

        var phase = 0;
        var (phaseStart, phaseStartCelsius) = (0.0, startCelsius);
        for (var i = 0; i <= steps; i++)
        {
            var minute = i * step;
            while (phase < phases.Count - 1 && minute > phaseStart + phases[phase].Length.TotalMinutes)
            {
                phaseStartCelsius = After(phases[phase], phaseStartCelsius, phases[phase].Length.TotalMinutes);
                phaseStart += phases[phase].Length.TotalMinutes;
                phase++;
            }

            celsius[i] = phases.Count == 0
                ? startCelsius
                : After(phases[phase], phaseStartCelsius, minute - phaseStart);
        }

        return new TemperatureSeries(celsius, step / 60);
    }

    /// <summary>Time constant of a lump of dough in still air: density · heat capacity · radius / (3 · coefficient).</summary>
    public static Duration LumpTimeConstant(double massKg, double densityKgPerM3, double heatCapacityJPerKgK, double wPerM2K)
    {
        var radiusMetres = Math.Cbrt(3 * massKg / (4 * Math.PI * densityKgPerM3));
        return Duration.FromSeconds(densityKgPerM3 * heatCapacityJPerKgK * radiusMetres / (3 * wPerM2K));
    }

    private static double After(DoughPhase phase, double fromCelsius, double minutes) =>
        phase.SurroundingCelsius
        + (fromCelsius - phase.SurroundingCelsius) * Math.Exp(-minutes / phase.TimeConstant.TotalMinutes);
}
