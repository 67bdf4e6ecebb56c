using System.Runtime.InteropServices;
using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>How a lump of dough warms and cools through the places it rests in: conduction in a sphere of the same mass.</summary>
public static class BallHeat
{
    /// <summary>
    /// So many that doubling them moves no temperature by more than a thousandth of the difference to the surroundings, and
    /// so few that three days take a millisecond.
    /// </summary>
    internal const int Shells = 30;

    /// <summary>Backward Euler slows a ball's warming by half a step over its time constant of an hour or two: 0.3 % here.</summary>
    private const double LongestStepSeconds = 30;

    private static readonly ValidRange StepMinutes = new(0.1, 60, "shorter steps say nothing new, longer ones skip a phase");

    /// <summary>Longer than any plan.</summary>
    private static readonly ValidRange TotalHours = new(0, 21 * 24, "no dough rests longer than three weeks");

    /// <param name="startCelsius">The whole dough at the start, -30 to 60 °C.</param>
    /// <param name="phases">In order, each in its range; see <see cref="HeatPhase"/>. Without any, the dough stays as it is.</param>
    /// <param name="dough">Without gas: what it gains in size it loses in conductivity, and its diffusivity stays.</param>
    /// <param name="longestStepMinutes">Of the answer, 0.1 to 60; shortened so that a whole number of steps fits.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static BallTemperatures Over(
        double startCelsius, IReadOnlyList<HeatPhase> phases, ThermalProperties dough, double longestStepMinutes = 1) =>
        Over(startCelsius, phases, dough, longestStepMinutes, Shells, LongestStepSeconds);

    internal static BallTemperatures Over(
        double startCelsius, IReadOnlyList<HeatPhase> phases, ThermalProperties dough, double longestStepMinutes, int shells,
        double longestStepSeconds)
    {
        HeatPhase.DemandStart(startCelsius);
        StepMinutes.Demand(longestStepMinutes, nameof(longestStepMinutes), "min");
        foreach (var phase in phases)
        {
            phase.Demand();
        }

        var seconds = phases.Sum(phase => phase.Length.TotalSeconds);
        TotalHours.Demand(seconds / 3600, nameof(phases), "h");
        var steps = (int)Math.Ceiling(seconds / 60 / longestStepMinutes - 1e-9);
        var samples = new Samples(steps, seconds / Math.Max(1, steps), startCelsius);

        var (now, mean, stored, throughSurface) = (0.0, startCelsius, 0.0, 0.0);
        SphereConduction? sphere = null;
        var lump = default(Grams);
        foreach (var phase in phases.Where(phase => phase.Length > Duration.Zero))
        {
            if (sphere is null || phase.Lump != lump || phase.MeasuredCelsius is not null)
            {
                lump = phase.Lump;
                sphere = new SphereConduction(new DoughSphere(lump, dough), phase.MeasuredCelsius ?? mean, shells);
            }

            sphere.Surround(phase.SurroundingCelsius, phase.WPerM2K);
            var (meanBefore, throughBefore) = (sphere.MeanCelsius, sphere.ThroughSurfaceJoules);
            var end = now + phase.Length.TotalSeconds;
            while (now < end)
            {
                now = Advance(sphere, now, Math.Min(end, samples.NextSeconds), longestStepSeconds);
                samples.TakeAt(now, sphere);
            }

            mean = sphere.MeanCelsius;
            stored += dough.HeatCapacityJPerKgK * (mean - meanBefore);
            throughSurface += (sphere.ThroughSurfaceJoules - throughBefore) / (lump.Value / 1000);
        }

        return samples.Done(stored, throughSurface);
    }

    private static double Advance(SphereConduction sphere, double from, double until, double longestStepSeconds)
    {
        var count = Math.Max(1, (int)Math.Ceiling((until - from) / longestStepSeconds - 1e-9));
        var step = (until - from) / count;
        for (var i = 0; i < count; i++)
        {
            sphere.Step(step);
        }

        return until;
    }

    /// <summary>Temperatures at equal times, filled in as the time passes.</summary>
    private sealed class Samples
    {
        private readonly double[] _core;
        private readonly double[] _surface;
        private readonly double[] _mean;
        private readonly double _stepSeconds;
        private int _taken = 1;

        public Samples(int steps, double stepSeconds, double startCelsius)
        {
            (_core, _surface, _mean) = (new double[steps + 1], new double[steps + 1], new double[steps + 1]);
            _stepSeconds = stepSeconds;
            (_core[0], _surface[0], _mean[0]) = (startCelsius, startCelsius, startCelsius);
        }

        /// <summary>When the next value is due; nothing more after the last.</summary>
        public double NextSeconds => _taken < _core.Length ? _taken * _stepSeconds : double.PositiveInfinity;

        public void TakeAt(double seconds, SphereConduction sphere)
        {
            // The last sample may miss the end of the last phase by rounding.
            if (seconds < NextSeconds - 1e-6)
            {
                return;
            }

            (_core[_taken], _surface[_taken], _mean[_taken]) = (sphere.CoreCelsius, sphere.SurfaceCelsius, sphere.MeanCelsius);
            _taken++;
        }

        public BallTemperatures Done(double storedJPerKg, double throughSurfaceJPerKg) => new(
            Duration.FromSeconds(_stepSeconds),
            ImmutableCollectionsMarshal.AsImmutableArray(_core),
            ImmutableCollectionsMarshal.AsImmutableArray(_surface),
            ImmutableCollectionsMarshal.AsImmutableArray(_mean),
            storedJPerKg,
            throughSurfaceJPerKg);
    }
}
