using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Kitchen;

/// <summary>Flour, room and scales as text fields. What is not known stays empty.</summary>
public sealed class FlourForm(KitchenSnapshot shown)
{
    private const double DriestFlourPercent = 8;
    private const double MoistestFlourPercent = 16;

    /// <summary>Says nothing of the flour: no water is moved.</summary>
    private static readonly KitchenFlour Unknown = new(WheatKind.Hard, FlourKept.Paper);

    public WheatKind Wheat { get; set; } = shown.Flour?.Wheat ?? Unknown.Wheat;
    public FlourKept Kept { get; set; } = shown.Flour?.Kept ?? Unknown.Kept;
    public string RoomHumidity { get; set; } = Percent(shown.Flour?.RoomHumidity);
    public string Moisture { get; set; } = Percent(shown.Flour?.Moisture);
    public string Coarse { get; set; } = Step(shown.Scale?.Coarse);
    public string Fine { get; set; } = Step(shown.Scale?.Fine);

    public KitchenFlour? ReadFlour(TypedNumbers numbers)
    {
        var flour = new KitchenFlour(
            Wheat,
            Kept,
            Share("roomHumidity", RoomHumidity, 100 * WheatIsotherm.DriestAir, 100 * WheatIsotherm.MoistestAir),
            Share("moisture", Moisture, DriestFlourPercent, MoistestFlourPercent));
        return flour == Unknown ? null : flour;

        Share? Share(string field, string text, double low, double high) =>
            text.Trim().Length == 0 ? null : new Share(numbers.Read(field, text, low, high) / 100);
    }

    /// <summary>Steps of scales are in grams in all measures, as all weights of the dough are.</summary>
    public KitchenScale? ReadScale(TypedNumbers numbers)
    {
        if (Coarse.Trim().Length == 0)
        {
            if (Fine.Trim().Length > 0)
            {
                numbers.Refuse("coarseGrams", FormulaPages.CoarseNeeded);
            }

            return null;
        }

        var coarse = numbers.Read("coarseGrams", Coarse, 0.1, 10);
        var fine = Fine.Trim().Length == 0 ? coarse : numbers.Read("fineGrams", Fine, 0.001, coarse);
        return new KitchenScale(new Grams(coarse), new Grams(fine));
    }

    private static string Percent(Share? share) => share is { } known ? TypedNumbers.Text(known.Percent) : "";

    private static string Step(Grams? step) => step is { } known ? TypedNumbers.Text(known.Value) : "";
}
