using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>Handbook rule for the water: three times the wanted dough temperature less flour, room and friction.</summary>
public sealed record WaterRule(Celsius Dough, Celsius Flour, Celsius Room, double FrictionKelvin) : Reason;

/// <summary>The rule asks for water that yeast or tap does not allow; the nearest allowed one is taken.</summary>
public sealed record WaterLimited(double NeededCelsius, Celsius Limit) : Reason;

/// <summary>How warm the water goes in, and how much of it as ice when the tap is not cold enough.</summary>
/// <param name="IceShare">Share of the water's mass that goes in as ice at 0 °C, replacing water.</param>
public sealed record WaterTemperature(Estimate<Celsius> Water, Share IceShare, IReadOnlyList<Reason> Because)
{
    /// <summary>Hotter water harms yeast where it touches it (from memory).</summary>
    public const double HottestCelsius = 43;

    /// <summary>Half width of the honest band: friction and room are known to a few kelvins of the sum (from memory).</summary>
    private const double BandKelvin = 2;

    /// <summary>Latent heat of ice over the heat capacity of water: 333.55 / 4.186 K.</summary>
    private const double IceKelvin = 79.7;

    /// <summary>The rule counts flour, room and water.</summary>
    private const int Factors = 3;

    /// <param name="frictionKelvin">Friction factor in kelvins of the temperature sum, not the rise of the dough.</param>
    /// <param name="tap">The coldest water from the tap.</param>
    public static WaterTemperature For(
        Celsius dough, Celsius flour, Celsius room, double frictionKelvin, Celsius tap)
    {
        var needed = Factors * dough.Value - flour.Value - room.Value - frictionKelvin;
        var allowed = Math.Clamp(needed, 0, HottestCelsius);
        var ice = needed < tap.Value ? IceFor(tap.Value, allowed) : 0;

        List<Reason> because = [new WaterRule(dough, flour, room, frictionKelvin)];
        if (needed != allowed)
        {
            because.Add(new WaterLimited(needed, new Celsius(allowed)));
        }

        return new WaterTemperature(
            new Estimate<Celsius>(
                new Celsius(allowed),
                new Celsius(Math.Max(0, allowed - BandKelvin)),
                new Celsius(Math.Min(HottestCelsius, allowed + BandKelvin))),
            new Share(ice),
            because);
    }

    /// <summary>Share of the water to replace by ice at 0 °C so that tap water comes down to what is needed.</summary>
    internal static double IceFor(double tapCelsius, double neededCelsius) =>
        (tapCelsius - neededCelsius) / (tapCelsius + IceKelvin);
}
