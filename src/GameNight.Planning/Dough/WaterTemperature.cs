using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Dough;

/// <summary>
/// Handbook rule for the water: three times the wanted dough temperature less flour, room and friction; four times less the
/// preferment as well, where there is one.
/// </summary>
public sealed record WaterRule(
    Celsius Dough, Celsius Flour, Celsius Room, double FrictionKelvin, Celsius? Preferment = null) : Reason;

/// <summary>The friction is a handbook's for the way of kneading, until one dough of this kitchen is measured.</summary>
public sealed record FrictionEstimated(double Kelvin) : Reason;

/// <summary>The rule asks for water that yeast or tap does not allow; the nearest allowed one is taken.</summary>
public sealed record WaterLimited(double NeededCelsius, Celsius Limit) : Reason;

/// <summary>
/// Beside the rule: the water by a balance of heat alone, with kneading that warms by <paramref name="RiseKelvin"/>. The rule
/// counts bowl and room silently, so that the two differ by a few degrees.
/// </summary>
public sealed record WaterByHeatBalance(double WaterCelsius, double RiseKelvin) : Reason;

/// <summary>The tap is not cold enough: this share of the water goes in as ice of that temperature.</summary>
public sealed record IceReplacesWater(Share OfWater, Celsius Tap, Celsius Ice) : Reason;

/// <summary>Dry yeast is woken in its own water; no foam by then means dead yeast: take new yeast and start again.</summary>
public sealed record YeastIsWoken(Celsius Water, Share OfWater, Celsius Rest, Duration Foam) : Reason;

/// <summary>How warm the water goes in, and how much of it as ice when the tap is not cold enough.</summary>
/// <param name="Water">All water together, ice melted and the yeast's own water included.</param>
/// <param name="IceShare">Share of the water's mass that goes in as ice, replacing water.</param>
/// <param name="Rest">The water without that in which the yeast is woken; null when none is.</param>
public sealed record WaterTemperature(
    Estimate<Celsius> Water, Share IceShare, IReadOnlyList<Reason> Because, Celsius? Rest = null)
{
    /// <summary>Hotter water harms yeast where it touches it (from memory).</summary>
    public const double HottestCelsius = 43;

    /// <summary>Half width of the honest band: friction and room are known to a few kelvins of the sum (from memory).</summary>
    private const double BandKelvin = 2;

    /// <summary>Latent heat of ice over the heat capacity of water: 333.55 / 4.186 K.</summary>
    internal const double IceKelvin = 79.7;

    /// <summary>Heat capacity of ice over that of water: 2.1 / 4.186.</summary>
    private const double IcePerWater = 2.1 / 4.186;

    private const double MostForYeast = 0.5;

    /// <exception cref="ArgumentOutOfRangeException">No water, more than half of it for the yeast, or ice above 0 °C.</exception>
    public static WaterTemperature For(WaterRequest request, HeatRow heat)
    {
        Demand(request);
        var rise = request.FrictionKelvin / FrictionFactor.FactorsWith(request.Preferment?.Temperature);
        var (needed, balance) = (Rule(request), HeatBalance(request, heat, rise));
        List<Reason> because =
        [
            new WaterRule(
                request.Dough, request.Flour, request.Room, request.FrictionKelvin, request.Preferment?.Temperature),
            new WaterByHeatBalance(balance, rise),
        ];

        if (!request.FrictionIsLearned)
        {
            because.Add(new FrictionEstimated(request.FrictionKelvin));
        }

        // What the yeast is woken in is warm whatever the rule says; the rest of the water makes up for it.
        var own = request.Activation?.OfWater.Value ?? 0;
        var ownCelsius = request.Activation?.Water.Value ?? 0;
        var restNeeded = (needed - own * ownCelsius) / (1 - own);
        var rest = Math.Clamp(restNeeded, 0, HottestCelsius);
        var mixed = own * ownCelsius + (1 - own) * rest;
        if (restNeeded != rest)
        {
            because.Add(new WaterLimited(restNeeded, new Celsius(rest)));
        }

        var ice = new Share(rest < request.Tap.Value ? (1 - own) * IceFor(request.Tap.Value, rest, request.Ice.Value) : 0);
        if (ice.Value > 0)
        {
            because.Add(new IceReplacesWater(ice, request.Tap, request.Ice));
        }

        if (request.Activation is { } waking)
        {
            because.Add(new YeastIsWoken(waking.Water, waking.OfWater, new Celsius(rest), waking.Foam));
        }

        // The truth lies near either: far from usual rooms rule and balance part, and the band reaches over both.
        return new WaterTemperature(
            new Estimate<Celsius>(
                new Celsius(mixed),
                new Celsius(Math.Max(0, Math.Min(mixed - BandKelvin, balance))),
                new Celsius(Math.Max(mixed, Math.Min(HottestCelsius, Math.Max(mixed + BandKelvin, balance))))),
            ice,
            because,
            request.Activation is null ? null : new Celsius(rest));
    }

    /// <summary>The handbook rule, in °C, without any limit.</summary>
    internal static double Rule(WaterRequest request)
    {
        var preferment = request.Preferment?.Temperature;
        return FrictionFactor.FactorsWith(preferment) * request.Dough.Value
            - request.Flour.Value - request.Room.Value - (preferment?.Value ?? 0) - request.FrictionKelvin;
    }

    /// <summary>
    /// Water by what flour, preferment and water hold of heat, nothing lost to bowl and room, in °C, without any limit.
    /// </summary>
    internal static double HeatBalance(WaterRequest request, HeatRow heat, double riseKelvin)
    {
        var ahead = request.Preferment ?? new FermentedAhead(request.Flour, default, default);
        var all = heat.FlourJPerKgK + request.Hydration.Value * heat.WaterJPerKgK;
        var flour = (1 - ahead.OfFlour.Value) * heat.FlourJPerKgK;
        var preferment = ahead.OfFlour.Value * heat.FlourJPerKgK + ahead.Water.Value * heat.WaterJPerKgK;
        var poured = (request.Hydration.Value - ahead.Water.Value) * heat.WaterJPerKgK;
        return (all * (request.Dough.Value - riseKelvin) - flour * request.Flour.Value - preferment * ahead.Temperature.Value)
            / poured;
    }

    /// <summary>
    /// Share of the water to replace by ice so that tap water comes down to what is needed (the replacing formula; adding ice
    /// on top of all the water needs more).
    /// </summary>
    internal static double IceFor(double tapCelsius, double neededCelsius, double iceCelsius = 0) =>
        (tapCelsius - neededCelsius) / (tapCelsius + IceKelvin + IcePerWater * -iceCelsius);

    private static void Demand(WaterRequest request)
    {
        if (!(request.Hydration.Value > (request.Preferment?.Water.Value ?? 0)))
        {
            throw new ArgumentOutOfRangeException(
                nameof(request), request.Hydration, "More water than the preferment has must be poured.");
        }

        if (request.Activation is { OfWater.Value: > MostForYeast })
        {
            throw new ArgumentOutOfRangeException(
                nameof(request), request.Activation.OfWater, "Yeast is woken in 0 to 0.5 of the water.");
        }

        if (request.Ice > default(Celsius))
        {
            throw new ArgumentOutOfRangeException(nameof(request), request.Ice, "Ice has -40 to 0 °C.");
        }
    }
}
