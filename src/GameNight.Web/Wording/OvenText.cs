using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Wording;

/// <summary>Words of oven, surface and ball; times and temperatures no finer than their models.</summary>
internal static class OvenText
{
    /// <summary>Times of the models end there.</summary>
    private static readonly Duration SixHours = Duration.FromHours(6);

    public static string Say(SurfaceKind kind) => kind switch
    {
        SurfaceKind.Cordierite => OvenPages.Cordierite,
        SurfaceKind.FireBrick => OvenPages.FireBrick,
        SurfaceKind.CarbonSteel => OvenPages.CarbonSteel,
        SurfaceKind.CastIron => OvenPages.CastIron,
        SurfaceKind.Aluminium => OvenPages.Aluminium,
    };

    public static string Say(OvenAir air) => air switch
    {
        OvenAir.Static => OvenPages.AirStill,
        OvenAir.Fan => OvenPages.AirFan,
    };

    public static string Say(SurfaceSupport support) => support switch
    {
        SurfaceSupport.WireRack => OvenPages.OnRack,
        SurfaceSupport.SolidTray => OvenPages.OnTray,
    };

    public static string Say(SoakLead lead) => lead switch
    {
        SoakLead.RuleOfThumb => OvenPages.LeadOwn,
        SoakLead.Model => OvenPages.LeadModel,
    };

    /// <summary>As finely as a model with a band of a third carries.</summary>
    public static Duration About(Duration time)
    {
        var step = time.TotalMinutes < 20 ? 1 : time.TotalMinutes < 120 ? 5 : time.TotalMinutes < 480 ? 15 : 30;
        return Duration.FromMinutes(Math.Round(time.TotalMinutes / step) * step);
    }

    public static string SayAbout(Duration time) => QuantityText.Length(About(time));

    /// <summary>The upper end of a time after switching on, or of a recovery.</summary>
    public static string SayHighEnd(Duration time) =>
        time >= SixHours ? Phrase.Fill(OvenPages.OverHours, QuantityText.Length(SixHours)) : SayAbout(time);

    /// <summary>Surfaces are known to five degrees at best.</summary>
    public static string Number(Celsius temperature, Measures measures) =>
        QuantityText.Whole(Math.Round(measures.Temperature.From(temperature.Value) / 5) * 5);

    public static string Say(Celsius temperature, Measures measures) =>
        Phrase.Fill(Amounts.WithUnit, Number(temperature, measures), measures.Temperature.Symbol);
}
