using GameNight.Planning.Quantities;
using GameNight.Planning.Safety;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>Says each caution, and whom to defer to. Never calls food safe.</summary>
public static class CautionText
{
    private static readonly Celsius WarmDay = new(32);
    private static readonly Celsius ColdFridge = new(4);
    private static readonly Celsius ColdHolding = new(5);

    public static string Say(Caution caution, Measures measures) =>
        Phrase.Fill(Cautions.WithAuthority, Note(caution, measures), Authority(caution.Kind));

    /// <summary>What the table of safety names, in the reader's language.</summary>
    public static string Authority(CautionKind kind) => kind switch
    {
        CautionKind.RawFlour => Cautions.RawFlourAuthority,
        CautionKind.HotSurfaces => Cautions.HotSurfacesAuthority,
        CautionKind.HoldingClock => Cautions.HoldingClockAuthority,
        CautionKind.AllergyTalk => Cautions.AllergyTalkAuthority,
        CautionKind.KitchenUsesWheat => Cautions.KitchenUsesWheatAuthority,
        CautionKind.HoneyAndInfants => Cautions.HoneyAndInfantsAuthority,
        CautionKind.GarlicInOil => Cautions.GarlicInOilAuthority,
        CautionKind.DoughPartsWithoutLabel => Cautions.DoughPartsWithoutLabelAuthority,
        CautionKind.WarmFridge => Cautions.WarmFridgeAuthority,
        CautionKind.SlicesKept => Cautions.SlicesKeptAuthority,
    };

    private static string Note(Caution caution, Measures measures) => caution.Kind switch
    {
        CautionKind.RawFlour => Cautions.RawFlour,
        CautionKind.HotSurfaces => Cautions.HotSurfaces,
        CautionKind.HoldingClock => Phrase.Fill(Cautions.HoldingClock, measures.Say(WarmDay)),
        CautionKind.AllergyTalk => Phrase.Fill(Cautions.AllergyTalk, WordText.And([.. caution.Allergens.Select(WordText.Say)])),
        CautionKind.KitchenUsesWheat => Cautions.KitchenUsesWheat,
        CautionKind.HoneyAndInfants => Cautions.HoneyAndInfants,
        CautionKind.GarlicInOil => Phrase.Fill(Cautions.GarlicInOil, measures.Say(ColdFridge)),
        CautionKind.DoughPartsWithoutLabel => Cautions.DoughPartsWithoutLabel,
        CautionKind.WarmFridge => Phrase.Fill(Cautions.WarmFridge, measures.Say(ColdHolding)),
        CautionKind.SlicesKept => Phrase.Fill(Cautions.SlicesKept, measures.Say(WarmDay)),
    };
}
