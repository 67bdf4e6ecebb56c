namespace GameNight.Planning.Quantities;

/// <summary>How wide the band of an <see cref="Estimate{T}"/> is.</summary>
public static class BandWidth
{
    /// <summary>Standard deviations to each side of a normal value, so that it lies within four times out of five.</summary>
    public const double Deviations = 1.2815515655446004;
}
