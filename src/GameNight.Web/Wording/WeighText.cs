using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>What scales make of a batch.</summary>
internal static class WeighText
{
    /// <summary>Below this no kitchen scale tells the difference.</summary>
    private const double SameGrams = 0.05;

    private static readonly Grams LittleYeast = new(0.5);

    /// <summary>All digits of what stands on the step of a scale, and otherwise those that a usual scale shows.</summary>
    public static string Number(DoughPlan dough, Grams mass) =>
        dough.OnScale is null ? QuantityText.GramNumber(mass) : QuantityText.ScaleNumber(mass);

    /// <summary>"As weighed: 62.3 % water, 2.5 % salt, 0.07 % yeast; 0.4 g heavier than worked out."</summary>
    public static string Rounded(RoundedBatch rounded)
    {
        var (water, salt, yeast) = (
            QuantityText.Percent(rounded.Hydration), QuantityText.Percent(rounded.Salt), QuantityText.Percent(rounded.Yeast));
        var off = Phrase.Fill(Amounts.Grams, QuantityText.Number(Math.Abs(rounded.TotalOffGrams)));
        return Math.Abs(rounded.TotalOffGrams) < SameGrams ? Phrase.Fill(WeighPages.AsWeighed, water, salt, yeast)
            : rounded.TotalOffGrams > 0 ? Phrase.Fill(WeighPages.AsWeighedHeavier, water, salt, yeast, off)
            : Phrase.Fill(WeighPages.AsWeighedLighter, water, salt, yeast, off);
    }

    /// <summary>How the yeast of this batch is divided; null when it can be weighed.</summary>
    public static DissolveAndSplit? Dissolving(DoughPlan dough, DoughBatch batch) =>
        dough.Because.OfType<DissolveAndSplit>().FirstOrDefault(reason => reason.Balls == batch.Balls);

    /// <summary>How the yeast of a batch is divided, in sentences; none when it can be weighed.</summary>
    public static IEnumerable<string> Say(DissolveAndSplit? dissolving, DoughFormula formula, Measures measures) => dissolving is null
        ? []
        :
        [
            ReasonText.Say(dissolving, measures),
            .. formula.Preferment is { OfYeast.Value: > 0 } preferment
                ? [Phrase.Fill(WeighPages.PrefermentsPart, measures.SayDough(dissolving.Use * preferment.OfYeast), preferment.Name)]
                : Array.Empty<string>(),
        ];

    /// <summary>The scales are not known, and most would not tell this yeast from none.</summary>
    public static bool IsYeastTooLittleForMostScales(DoughPlan dough) =>
        dough.OnScale is null && dough.Batches.Any(batch => batch.Yeast < LittleYeast);
}
