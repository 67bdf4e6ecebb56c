namespace GameNight.Planning.Heat;

/// <summary>Saturation of water: IAPWS-IF97, region 4, backward equation (IAPWS R7-97).</summary>
public static class WaterBoiling
{
    public const double LowestPascals = 611.213;
    public const double HighestPascals = 22.064e6;

    private const double KelvinOfZeroCelsius = 273.15;

    /// <summary>Temperature at which water boils under a pressure.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is outside 611.213 Pa to 22.064 MPa: ice, or no boiling.</exception>
    public static double CelsiusAt(double pascals)
    {
        if (!(pascals is >= LowestPascals and <= HighestPascals))
        {
            throw new ArgumentOutOfRangeException(
                nameof(pascals), pascals, "Water boils between 611.213 Pa (ice below) and 22.064 MPa (the critical point).");
        }

        var beta = Math.Sqrt(Math.Sqrt(pascals / 1e6));
        var e = beta * beta - 17.073846940092 * beta + 14.915108613530;
        var f = 1167.0521452767 * beta * beta + 12020.824702470 * beta - 4823.2657361591;
        var g = -724213.16703206 * beta * beta - 3232555.0322333 * beta + 405113.40542057;
        var d = 2 * g / (-f - Math.Sqrt(f * f - 4 * e * g));

        var sum = 650.17534844798 + d;
        return (sum - Math.Sqrt(sum * sum - 4 * (-0.23855557567849 + 650.17534844798 * d))) / 2 - KelvinOfZeroCelsius;
    }
}
