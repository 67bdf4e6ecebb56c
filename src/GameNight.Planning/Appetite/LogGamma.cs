namespace GameNight.Planning.Appetite;

/// <summary>Logarithm of the gamma function: Stirling's series, its argument raised until four terms are exact to 1e-14.</summary>
internal static class LogGamma
{
    private const double LargeEnough = 12;

    /// <param name="x">Positive.</param>
    public static double Of(double x)
    {
        // One logarithm of a product instead of many: below 12 it stays far from overflow.
        var product = 1.0;
        while (x < LargeEnough)
        {
            product *= x++;
        }

        var square = 1 / (x * x);
        var series = (1.0 / 12 - square * (1.0 / 360 - square * (1.0 / 1260 - square * (1.0 / 1680 - square / 1188)))) / x;
        return (x - 0.5) * Math.Log(x) - x + 0.5 * Math.Log(2 * Math.PI) + series - Math.Log(product);
    }
}
