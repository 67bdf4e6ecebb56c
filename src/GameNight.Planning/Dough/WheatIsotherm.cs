using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>1 - humidity = exp(-K (T + C) M^N), M in % of dry mass.</summary>
public sealed record HendersonRow(double K, double N, double C);

/// <summary>humidity = exp(-A / (T + C) · exp(-B m)), m as a fraction of dry mass.</summary>
public sealed record ChungPfostRow(double A, double B, double C);

/// <summary>
/// The moisture at which kernels of a wheat come to rest in air: modified Henderson and Chung-Pfost laws (ASABE D245.5).
/// They hold for whole kernels that dry; flour that takes water up rests lower.
/// </summary>
public sealed record WheatIsotherm(WheatKind Wheat, HendersonRow Henderson, ChungPfostRow ChungPfost, string Source)
{
    /// <summary>Air in which the laws hold (from memory: they were fitted from about 10 to 90 %).</summary>
    public const double DriestAir = 0.1;
    public const double MoistestAir = 0.9;

    public const double ColdestCelsius = -5;
    public const double HottestCelsius = 50;

    /// <summary>Moisture on wet basis by the modified Henderson law.</summary>
    /// <param name="humidity">Relative humidity, 0.1 to 0.9.</param>
    /// <exception cref="ArgumentOutOfRangeException">The air is outside -5 to 50 °C or 0.1 to 0.9.</exception>
    public Share ByHenderson(Celsius air, Share humidity)
    {
        Demand(air, humidity);
        var law = Henderson;
        return WetBasis(Math.Pow(-Math.Log(1 - humidity.Value) / (law.K * (air.Value + law.C)), 1 / law.N) / 100);
    }

    /// <summary>Moisture on wet basis by the modified Chung-Pfost law.</summary>
    /// <param name="humidity">Relative humidity, 0.1 to 0.9.</param>
    /// <exception cref="ArgumentOutOfRangeException">The air is outside -5 to 50 °C or 0.1 to 0.9.</exception>
    public Share ByChungPfost(Celsius air, Share humidity)
    {
        Demand(air, humidity);
        var law = ChungPfost;
        return WetBasis(-Math.Log(-(air.Value + law.C) * Math.Log(humidity.Value) / law.A) / law.B);
    }

    private static Share WetBasis(double dryBasis) => new(dryBasis / (1 + dryBasis));

    private static void Demand(Celsius air, Share humidity)
    {
        if (humidity.Value is < DriestAir or > MoistestAir)
        {
            throw new ArgumentOutOfRangeException(nameof(humidity), humidity, "The laws hold for a humidity of 0.1 to 0.9.");
        }

        if (air.Value is < ColdestCelsius or > HottestCelsius)
        {
            throw new ArgumentOutOfRangeException(nameof(air), air, "The laws hold for air of -5 to 50 °C.");
        }
    }
}
