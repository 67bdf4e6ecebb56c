using GameNight.Planning.Safety;

namespace GameNight.Web.Wording;

/// <summary>Says each caution, and whom to defer to. Never calls food safe.</summary>
public static class CautionText
{
    public static string Say(Caution caution) => $"{Note(caution)} Defer to {caution.Authority}.";

    private static string Note(Caution caution) => caution.Kind switch
    {
        CautionKind.RawFlour => "Raw flour and raw dough are not for tasting, and not for children to play with.",
        CautionKind.HotSurfaces => "Stone, steel and iron burn at a touch and stay hot for an hour after the last pie. No water on them.",
        CautionKind.HoldingClock => "Sauce, cheese, toppings and baked pizza stand out for 2 hours at most, 1 hour above 32 °C; then they go into the fridge or away.",
        CautionKind.AllergyTalk => $"Somebody must not have {WordText.And([.. caution.Allergens.Select(WordText.Say)])}. The plan keeps it off their slices as far as the labels say; this kitchen may still carry traces. Read every pack, and talk with them.",
        CautionKind.KitchenUsesWheat => "A home kitchen that uses wheat flour is not fit for coeliacs: flour dust travels.",
        CautionKind.HoneyAndInfants => "There is honey in the dough: not for children under 12 months, baked or not.",
        CautionKind.GarlicInOil => "Garlic or herbs kept in oil go into the fridge at once, at 4 °C or below, for about 4 days at most.",
    };
}
