namespace GameNight.Planning.Heat;

/// <summary>Height above the sea in metres, from -400 to 5000, and what it does to air, water and gas.</summary>
public readonly record struct Altitude
{
    public const double LowestMetres = -400;
    public const double HighestMetres = 5000;

    private const double SeaLevelPascals = 101_325;

    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or outside -400 to 5000 m.</exception>
    public Altitude(double metres)
    {
        if (!(metres is >= LowestMetres and <= HighestMetres))
        {
            throw new ArgumentOutOfRangeException(
                nameof(metres), metres, "A kitchen lies between -400 and 5000 m: nobody lives lower, hardly anybody higher.");
        }

        Metres = metres;
    }

    public double Metres { get; }

    /// <summary>Air pressure over that at sea level (ISO 2533, troposphere).</summary>
    public double PressureFactor => Math.Pow(1 - 2.25577e-5 * Metres, 5.25588);

    public double PressurePascals => SeaLevelPascals * PressureFactor;

    /// <summary>Where water boils; weather moves it by 0.3 °C either way.</summary>
    public double BoilingCelsius => WaterBoiling.CelsiusAt(PressurePascals);

    /// <summary>How much larger the same gas is than at sea level.</summary>
    public double GasVolumeFactor => 1 / PressureFactor;
}
