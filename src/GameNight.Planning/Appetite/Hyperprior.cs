namespace GameNight.Planning.Appetite;

/// <summary>
/// What is believed of a shared prior before the group has shown anything: its middle (a logit or a logarithm) and the
/// logarithm of its strength, each with a normal spread. It keeps a fit on few guests from running away.
/// </summary>
internal sealed record Hyperprior(double Middle, double LogStrength, double MiddleSpread, double StrengthSpread)
{
    /// <summary>Minus the logarithm of its density, but for a constant.</summary>
    public double Cost(double middle, double logStrength) =>
        Square((middle - Middle) / MiddleSpread) / 2 + Square((logStrength - LogStrength) / StrengthSpread) / 2;

    private static double Square(double value) => value * value;
}
