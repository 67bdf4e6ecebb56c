using GameNight.Planning.Timeline;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>What tells that a step is done, besides the clock. Common practice, no source.</summary>
public static class CueText
{
    public static string Say(StepKind step) => step switch
    {
        StepKind.Shop => Cues.Shop,
        StepKind.Preferment => Cues.Preferment,
        StepKind.WakeYeast => Cues.WakeYeast,
        StepKind.Mix => Cues.Mix,
        StepKind.Knead => Cues.Knead,
        StepKind.BulkRest => Cues.BulkRest,
        StepKind.Ball => Cues.Ball,
        StepKind.ColdFerment => Cues.ColdFerment,
        StepKind.Temper => Cues.Temper,
        StepKind.Sauce => Cues.Sauce,
        StepKind.GrateCheese => Cues.GrateCheese,
        StepKind.PrepareToppings => Cues.PrepareToppings,
        StepKind.SecondMix => Cues.SecondMix,
        StepKind.SecondRise => Cues.SecondRise,
        StepKind.Preheat => Cues.Preheat,
        StepKind.Soak => Cues.Soak,
        StepKind.Shape => Cues.Shape,
        StepKind.Top => Cues.Top,
        StepKind.Bake => Cues.Bake,
        StepKind.Rack => Cues.Rack,
        StepKind.Serve => Cues.Serve,
        StepKind.Own => Cues.Own,
        StepKind.PutAway => Cues.PutAway,
    };
}
