namespace GameNight.Planning.Safety;

/// <summary>What a caution is about. Each has a row in shared/reference/safety.json that names whom to defer to.</summary>
public enum CautionKind
{
    RawFlour,
    HotSurfaces,
    HoldingClock,
    AllergyTalk,
    KitchenUsesWheat,
    HoneyAndInfants,
    GarlicInOil,
    DoughPartsWithoutLabel,
    WarmFridge,

    /// <summary>Somebody comes late: slices are kept for them.</summary>
    SlicesKept,
}
