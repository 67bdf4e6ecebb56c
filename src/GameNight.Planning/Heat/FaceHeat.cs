namespace GameNight.Planning.Heat;

/// <summary>
/// What one face of a slab exchanges heat with: air by convection, walls and one other body by radiation with the fourth power
/// of absolute temperatures, and a pie by contact. Coefficients of what is not there are 0.
/// </summary>
/// <param name="ConvectionWPerM2K">To the air.</param>
/// <param name="WallShare">Emissivity times the share of the view that the walls fill.</param>
/// <param name="BodyShare">The same for the other body: view share times the emissivity of the exchange.</param>
/// <param name="ContactWPerM2K">To what lies on the face.</param>
internal readonly record struct FaceHeat(
    double ConvectionWPerM2K = 0,
    double AirCelsius = 0,
    double WallShare = 0,
    double WallCelsius = 0,
    double BodyShare = 0,
    double BodyCelsius = 0,
    double ContactWPerM2K = 0,
    double ContactCelsius = 0)
{
    private const double StefanBoltzmann = 5.670374e-8;
    private const double KelvinOfZeroCelsius = 273.15;

    /// <summary>Heat into the face at a temperature.</summary>
    public double WPerM2(double celsius) =>
        ConvectionWPerM2K * (AirCelsius - celsius)
        + Radiation(WallShare, WallCelsius, celsius)
        + Radiation(BodyShare, BodyCelsius, celsius)
        + ContactWPerM2K * (ContactCelsius - celsius);

    /// <summary>By how much that falls for each kelvin the face is warmer.</summary>
    public double FallWPerM2K(double celsius)
    {
        var kelvin = celsius + KelvinOfZeroCelsius;
        return ConvectionWPerM2K + ContactWPerM2K + 4 * StefanBoltzmann * (WallShare + BodyShare) * kelvin * kelvin * kelvin;
    }

    /// <summary>Radiation from one temperature onto a face of another.</summary>
    public static double Radiation(double share, double fromCelsius, double celsius)
    {
        var (from, to) = (fromCelsius + KelvinOfZeroCelsius, celsius + KelvinOfZeroCelsius);
        return share * StefanBoltzmann * (from * from + to * to) * (from + to) * (from - to);
    }
}
