using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;

namespace GameNight.Planning.Heat;

/// <summary>A lump of dough as the sphere of the same mass.</summary>
public readonly record struct DoughSphere
{
    /// <summary>From a ball for a tasting to the whole dough of a bowl.</summary>
    public static ValidRange MassGrams { get; } =
        new(20, 50_000, "a lump smaller than 20 g is no pie, and no domestic bowl holds more than 50 kg");

    /// <exception cref="ArgumentOutOfRangeException">The mass is outside <see cref="MassGrams"/>.</exception>
    public DoughSphere(Grams mass, ThermalProperties dough)
    {
        MassKg = MassGrams.Demand(mass.Value, nameof(mass), "g") / 1000;
        Dough = dough;
        RadiusMetres = Math.Cbrt(3 * MassKg / (4 * Math.PI * dough.DensityKgPerM3));
    }

    public double MassKg { get; }
    public ThermalProperties Dough { get; }
    public double RadiusMetres { get; }
    public double AreaM2 => 4 * Math.PI * RadiusMetres * RadiusMetres;

    /// <summary>Resistance inside over resistance at the surface; below 0.1 the sphere has one temperature.</summary>
    public double BiotAt(double wPerM2K) => wPerM2K * RadiusMetres / Dough.ConductivityWPerMK;

    /// <summary>Diffusivity times time over radius squared.</summary>
    public double FourierAfter(double seconds) => Dough.DiffusivityM2PerS * seconds / (RadiusMetres * RadiusMetres);

    /// <summary>Time in which a sphere of one temperature loses 63 % of its difference.</summary>
    public double LumpedSeconds(double wPerM2K) => MassKg * Dough.HeatCapacityJPerKgK / (wPerM2K * AreaM2);
}
