namespace GameNight.Planning.Heat;

/// <summary>How a material conducts and holds heat. All three are positive and finite.</summary>
public readonly record struct ThermalProperties
{
    /// <exception cref="ArgumentOutOfRangeException">A property is not positive and finite.</exception>
    public ThermalProperties(double conductivityWPerMK, double densityKgPerM3, double heatCapacityJPerKgK)
    {
        ConductivityWPerMK = Positive(conductivityWPerMK, nameof(conductivityWPerMK));
        DensityKgPerM3 = Positive(densityKgPerM3, nameof(densityKgPerM3));
        HeatCapacityJPerKgK = Positive(heatCapacityJPerKgK, nameof(heatCapacityJPerKgK));
    }

    public double ConductivityWPerMK { get; }
    public double DensityKgPerM3 { get; }
    public double HeatCapacityJPerKgK { get; }

    /// <summary>How fast a difference of temperature spreads.</summary>
    public double DiffusivityM2PerS => ConductivityWPerMK / (DensityKgPerM3 * HeatCapacityJPerKgK);

    /// <summary>How strongly the material sets the temperature where two bodies touch.</summary>
    public double EffusivityJPerM2KRootS => Math.Sqrt(ConductivityWPerMK * DensityKgPerM3 * HeatCapacityJPerKgK);

    private static double Positive(double value, string name) => value > 0 && double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, value, "A thermal property is positive and finite.");
}
