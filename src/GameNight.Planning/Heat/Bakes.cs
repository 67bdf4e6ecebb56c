using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Heat;

/// <summary>Pies on one place of a surface, one after the other.</summary>
/// <param name="Starts">Counted from switching on, in order, none before the last is out.</param>
/// <param name="Length">Of each bake, 1 to 60 minutes.</param>
/// <param name="PieAreaM2">Of one pie, 0.01 to 0.5.</param>
public sealed record Bakes(IReadOnlyList<Duration> Starts, Duration Length, PieHeat Pie, double PieAreaM2)
{
    private static readonly ValidRange Minutes = new(1, 60, "shorter is no bake, longer is no pie");
    private static readonly ValidRange AreaM2 = new(0.01, 0.5, "from 11 to 80 cm across");

    /// <summary>
    /// Heat goes into a pie in proportion to how far the surface is above boiling, and at the set-point it is what a pie takes
    /// through the surface: a colder surface gives less, and none below boiling.
    /// </summary>
    internal PieContact Contact(double setPointCelsius) => new(
        Pie.ThroughSurfaceJoules.Expected / (PieAreaM2 * Length.TotalSeconds * (setPointCelsius - Pie.BoilingCelsius)),
        Pie.BoilingCelsius);

    internal bool LieAt(double seconds)
    {
        for (var i = 0; i < Starts.Count; i++)
        {
            var since = seconds - Starts[i].TotalSeconds;
            if (since >= 0 && since < Length.TotalSeconds)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What each bake did to the surface; those that the temperatures do not reach to the end are left out.</summary>
    internal IEnumerable<SurfaceDip> Dips(SurfaceTemperatures surface, double readyCelsius)
    {
        var end = surface.Step * (surface.TopCelsius.Length - 1);
        for (var i = 0; i < Starts.Count && Starts[i] + Length <= end; i++)
        {
            var (start, over) = (Starts[i], Starts[i] + Length);
            var next = i + 1 < Starts.Count ? Duration.Min(Starts[i + 1], end) : end;
            var back = surface.UntilTop(readyCelsius, over);
            yield return new SurfaceDip(
                start,
                surface.TopAt(start),
                surface.TopAt(over),
                back is { } time && over + time <= next ? time : null);
        }
    }

    /// <exception cref="ArgumentOutOfRangeException">Length or area is outside its range.</exception>
    /// <exception cref="ArgumentException">A bake starts before switching on, or before the one before it has ended.</exception>
    internal void Demand()
    {
        Minutes.Demand(Length.TotalMinutes, nameof(Length), "min");
        AreaM2.Demand(PieAreaM2, nameof(PieAreaM2), "m²");
        if (Starts.Any(start => start < Duration.Zero) || Starts.Zip(Starts.Skip(1)).Any(two => two.Second < two.First + Length))
        {
            throw new ArgumentException("Bakes on one place come one after the other, the first after the oven is switched on.");
        }
    }
}
