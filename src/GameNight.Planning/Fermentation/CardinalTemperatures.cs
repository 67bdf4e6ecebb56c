namespace GameNight.Planning.Fermentation;

/// <summary>
/// Cardinal temperature model with inflection: how fast something living works at a temperature, 0 at and outside the
/// limits, 1 at the optimum. (Rosso, Lobry and Flandrois 1993, J. Theor. Biol. 162, 447.) Temperatures in °C.
/// </summary>
public readonly record struct CardinalTemperatures
{
    private readonly double _lowest;
    private readonly double _optimum;
    private readonly double _highest;

    /// <exception cref="ArgumentException">Not lowest &lt; optimum &lt; highest, or the optimum lies below the middle.</exception>
    public CardinalTemperatures(double lowestCelsius, double optimumCelsius, double highestCelsius)
    {
        if (!(lowestCelsius < optimumCelsius && optimumCelsius < highestCelsius)
            || optimumCelsius <= (lowestCelsius + highestCelsius) / 2)
        {
            throw new ArgumentException(
                $"Cardinal temperatures run lowest, optimum above the middle, highest; got {lowestCelsius}, {optimumCelsius}, {highestCelsius}.");
        }

        (_lowest, _optimum, _highest) = (lowestCelsius, optimumCelsius, highestCelsius);
    }

    /// <summary>Rate at a temperature relative to the optimum, 0 to 1.</summary>
    public double RateAt(double celsius)
    {
        if (celsius <= _lowest || celsius >= _highest)
        {
            return 0;
        }

        var aboveLowest = celsius - _lowest;
        var span = _optimum - _lowest;
        return (celsius - _highest) * aboveLowest * aboveLowest
            / (span * (span * (celsius - _optimum)
                - (_optimum - _highest) * (_optimum + _lowest - 2 * celsius)));
    }
}
