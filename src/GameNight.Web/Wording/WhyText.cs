using GameNight.Planning.Timeline;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>What a step is for. Common practice, no source.</summary>
public static class WhyText
{
    /// <returns>Null for a step of the host's own: they know.</returns>
    public static string? Say(StepKind step) => step switch
    {
        StepKind.Shop => Whys.Shop,
        StepKind.Preferment => Whys.Preferment,
        StepKind.WakeYeast => Whys.WakeYeast,
        StepKind.Mix => Whys.Mix,
        StepKind.Knead => Whys.Knead,
        StepKind.BulkRest => Whys.BulkRest,
        StepKind.Ball => Whys.Ball,
        StepKind.ColdFerment => Whys.ColdFerment,
        StepKind.Temper => Whys.Temper,
        StepKind.Sauce => Whys.Sauce,
        StepKind.GrateCheese => Whys.GrateCheese,
        StepKind.PrepareToppings => Whys.PrepareToppings,
        StepKind.SecondMix => Whys.SecondMix,
        StepKind.SecondRise => Whys.SecondRise,
        StepKind.Preheat => Whys.Preheat,
        StepKind.Soak => Whys.Soak,
        StepKind.Shape => Whys.Shape,
        StepKind.Top => Whys.Top,
        StepKind.Bake => Whys.Bake,
        StepKind.Rack => Whys.Rack,
        StepKind.Serve => Whys.Serve,
        StepKind.PutAway => Whys.PutAway,
        StepKind.Own => null,
    };
}
