using GameNight.Planning.Guests;
using GameNight.Planning.Safety;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Planning;

/// <summary>Which cautions a night needs. They follow from facts, never from estimates.</summary>
internal static class NightCautions
{
    public static IReadOnlyList<Caution> For(NightSnapshot night, int pies, SafetyTable table)
    {
        var eaters = night.Guests
            .Where(guest => guest.Answer != AnswerState.NotComing)
            .SelectMany(guest => guest.Eaters)
            .Where(eater => eater.EatsHere)
            .ToList();
        var kept = eaters
            .SelectMany(eater => eater.Needs.Avoids.Concat(eater.Needs.MustNotTouch))
            .Distinct()
            .Order()
            .ToList();

        var cautions = new List<Caution>();
        if (kept.Count > 0)
        {
            cautions.Add(Of(CautionKind.AllergyTalk, kept));
        }

        if (kept.Contains(Allergen.GlutenCereals) && night.Menu.Dough.IsOrMayBe(Allergen.GlutenCereals))
        {
            cautions.Add(Of(CautionKind.KitchenUsesWheat, [Allergen.GlutenCereals]));
        }

        if (pies > 0)
        {
            cautions.Add(Of(CautionKind.RawFlour));
            cautions.Add(Of(CautionKind.HotSurfaces));
            cautions.Add(Of(CautionKind.HoldingClock));
            if (night.Guests.Any(guest => guest is { Answer: not AnswerState.NotComing, Stay.ComesAfter: { } after }
                && after > Duration.Zero && guest.Eaters.Any(eater => eater.EatsHere)))
            {
                cautions.Add(Of(CautionKind.SlicesKept));
            }

            if (night.Menu.Of(MenuRole.Base).Any(item => item.GramsPerCm2 > 0))
            {
                cautions.Add(Of(CautionKind.GarlicInOil));
            }
        }

        // An infant is not always told of: whoever cooks with honey knows it, whoever is announced.
        if (pies > 0 && night.Formula is { SugarIsHoney: true, Sugar.Value: > 0 })
        {
            cautions.Add(Of(CautionKind.HoneyAndInfants));
        }

        if (pies > 0 && night.Formula.UnlabelledParts.Count > 0)
        {
            cautions.Add(Of(CautionKind.DoughPartsWithoutLabel));
        }

        if (pies > 0 && night.Kitchen.Fridge is { } fridge && fridge.Value > table.FridgeCelsius.High)
        {
            cautions.Add(Of(CautionKind.WarmFridge));
        }

        return cautions;

        Caution Of(CautionKind kind, params IReadOnlyList<Allergen> allergens) =>
            new(kind, table.Of(kind).Authority, allergens);
    }
}
