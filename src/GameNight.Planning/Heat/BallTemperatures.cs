using System.Collections.Immutable;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>Temperatures of a lump of dough in °C at equal steps, start and end included.</summary>
/// <param name="Step">Time from one value to the next.</param>
/// <param name="MeanCelsius">Over the volume: what the yeast lives at.</param>
/// <param name="StoredJPerKg">Heat the dough gained from start to end.</param>
/// <param name="ThroughSurfaceJPerKg">Heat that came in through the surface; the same, up to rounding.</param>
public sealed record BallTemperatures(
    Duration Step,
    ImmutableArray<double> CoreCelsius,
    ImmutableArray<double> SurfaceCelsius,
    ImmutableArray<double> MeanCelsius,
    double StoredJPerKg,
    double ThroughSurfaceJPerKg)
{
    /// <summary>
    /// When the core first passes a temperature, from the side on which it is at <paramref name="from"/>, counted from
    /// <paramref name="from"/>. Null when it does not until the end.
    /// </summary>
    /// <param name="from">A time from the start on, for example of the phase in question.</param>
    public Duration? UntilCore(double celsius, Duration from = default)
    {
        var first = Step == Duration.Zero ? 0 : (int)Math.Ceiling(from / Step);
        if (first >= CoreCelsius.Length)
        {
            return null;
        }

        var side = Math.Sign(CoreCelsius[first] - celsius);
        if (side == 0)
        {
            return Duration.Zero;
        }

        for (var i = first + 1; i < CoreCelsius.Length; i++)
        {
            var (before, now) = (CoreCelsius[i - 1], CoreCelsius[i]);
            if ((now - celsius) * side <= 0)
            {
                return Step * (i - 1 + (celsius - before) / (now - before)) - from;
            }
        }

        return null;
    }
}
