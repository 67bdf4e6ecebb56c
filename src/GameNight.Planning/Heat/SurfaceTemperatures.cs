using System.Collections.Immutable;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>Temperatures in an oven in °C at equal steps, from switching on.</summary>
/// <param name="TopCelsius">Of the baking surface, where the pies lie.</param>
/// <param name="IronCelsius">Of the plate above; empty without one.</param>
/// <param name="StoredJPerM2">Heat the baking surface gained from start to end.</param>
/// <param name="ThroughFacesJPerM2">Heat that came in through its faces, less what pies took; the same, up to rounding.</param>
/// <param name="Dips">One for each bake, in order.</param>
public sealed record SurfaceTemperatures(
    Duration Step,
    ImmutableArray<double> AirCelsius,
    ImmutableArray<double> TopCelsius,
    ImmutableArray<double> BottomCelsius,
    ImmutableArray<double> IronCelsius,
    double StoredJPerM2,
    double ThroughFacesJPerM2,
    ImmutableArray<SurfaceDip> Dips)
{
    /// <summary>When the top is first this hot, counted from <paramref name="from"/>; null when it is not until the end.</summary>
    public Duration? UntilTop(double celsius, Duration from = default)
    {
        var first = (int)Math.Ceiling(from / Step);
        for (var i = first; i < TopCelsius.Length; i++)
        {
            if (TopCelsius[i] >= celsius)
            {
                return i == first
                    ? Duration.Zero
                    : Step * (i - 1 + (celsius - TopCelsius[i - 1]) / (TopCelsius[i] - TopCelsius[i - 1])) - from;
            }
        }

        return null;
    }

    /// <summary>Top temperature at a moment, in a straight line between the steps.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The moment is before the start or after the end.</exception>
    public double TopAt(Duration afterSwitchOn)
    {
        var last = TopCelsius.Length - 1;
        var at = afterSwitchOn / Step;
        if (!(at >= 0 && at <= last))
        {
            throw new ArgumentOutOfRangeException(
                nameof(afterSwitchOn), afterSwitchOn, $"The temperatures run from 0 to {Step * last}.");
        }

        var i = Math.Min((int)at, last - 1);
        return TopCelsius[i] + (at - i) * (TopCelsius[i + 1] - TopCelsius[i]);
    }
}

/// <summary>What one bake did to the surface under its pie.</summary>
/// <param name="Start">Counted from switching on.</param>
/// <param name="Back">
/// After the bake, until the top is as near to the set-point as a ready surface; null when the next bake or the end comes
/// before.
/// </param>
public sealed record SurfaceDip(Duration Start, double AtStartCelsius, double AtEndCelsius, Duration? Back);
