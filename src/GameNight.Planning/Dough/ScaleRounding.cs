using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// So little yeast cannot be weighed on this scale: dissolve more of it, use a part of the solution. Its water
/// is set apart for all batches: each gets <paramref name="Use"/> of it and <paramref name="WaterLeft"/> of other water. A preferment takes its share of the part.
/// </summary>
/// <param name="Balls">Which batches: those of so many balls.</param>
/// <param name="Use">How much of the solution holds <paramref name="Yeast"/>.</param>
public sealed record DissolveAndSplit(
    int Balls, Grams Yeast, Grams Dissolve, Grams InWater, Grams Use, Grams WaterLeft) : Reason;

/// <summary>A batch as a scale can weigh it, and what that makes of its percentages.</summary>
/// <param name="Hydration">Water per flour, as weighed.</param>
/// <param name="Salt">Salt per flour, as weighed.</param>
/// <param name="Yeast">Yeast per flour, as weighed.</param>
/// <param name="TotalOffGrams">How much heavier the batch gets; negative for lighter.</param>
public sealed record RoundedBatch(DoughBatch Batch, Share Hydration, Share Salt, Share Yeast, double TotalOffGrams);

/// <summary>
/// Rounds what is weighed to the steps of the scales: each ingredient by half a step at most. Portions are rounded too, and
/// what is left for the dough itself is the difference, so that everything that is weighed stands on a step.
/// </summary>
public static class ScaleRounding
{
    /// <summary>Below this yeast is dissolved and split when the scale is too coarse for it.</summary>
    private const double LittleYeastGrams = 0.5;

    /// <summary>A scale is too coarse for yeast when half a step is more than this of it.</summary>
    private const double WorstYeastError = 0.05;

    /// <summary>Dissolved: at least a gram, and so many steps that it is weighed to a tenth.</summary>
    private const double LeastDissolvedGrams = 1;
    private const double StepsDissolved = 5;

    /// <summary>Solution per yeast in it: weak enough to weigh the part on any scale, or strong where the batch has little water.</summary>
    private const double Weak = 100;
    private const double Strong = 10;

    public static RoundedBatch Of(DoughBatch batch, KitchenScale scale)
    {
        var flours = batch.Flours?.Select(part => part with { Mass = OnStep(part.Mass, scale.Coarse) }).ToList();
        var flour = flours is null ? OnStep(batch.Flour, scale.Coarse) : DoughBatch.Together(flours);
        var isDissolved = IsTooLittle(batch.Yeast, scale);
        var rounded = batch with
        {
            Flour = flour,
            Flours = flours,
            HeldBackFlour = OnStep(batch.HeldBackFlour, scale.Coarse),
            Water = OnStep(batch.Water, scale.Coarse),
            Salt = OnStep(batch.Salt, scale.Fine),
            Oil = OnStep(batch.Oil, scale.Coarse),
            Sugar = OnStep(batch.Sugar, scale.Coarse),
            Yeast = Yeast(batch.Yeast),
            Extras = batch.Extras?.Select(part => part with { Mass = OnStep(part.Mass, scale.Coarse) }).ToList(),
            Preferment = Portion(batch.Preferment),
            Soaker = Portion(batch.Soaker),
        };
        return new RoundedBatch(
            rounded,
            PerFlour(rounded.Water),
            PerFlour(rounded.Salt),
            PerFlour(rounded.Yeast),
            rounded.Total.Value - batch.Total.Value);

        // A solution gives the dose to a tenth of a step; rounding it to nothing would be no dough.
        Grams Yeast(Grams mass) => isDissolved ? mass : OnStep(mass, scale.Fine);

        BatchPortion? Portion(BatchPortion? portion) => portion is null
            ? null
            : portion with
            {
                Flour = OnStep(portion.Flour, scale.Coarse),
                Water = OnStep(portion.Water, scale.Coarse),
                Yeast = Yeast(portion.Yeast),
            };

        Share PerFlour(Grams mass) => flour > default(Grams) ? new Share(mass / flour) : default;
    }

    /// <summary>How to get a dose of yeast that is too small for the scale; null when it can be weighed.</summary>
    public static DissolveAndSplit? Dissolving(DoughBatch batch, KitchenScale scale)
    {
        if (!IsTooLittle(batch.Yeast, scale))
        {
            return null;
        }

        var perYeast = batch.Yeast * Weak <= batch.FinalWater / 2 ? Weak : Strong;
        var dissolve = new Grams(Math.Max(LeastDissolvedGrams, StepsDissolved * scale.Fine.Value));
        var waterInPart = batch.Yeast.Value * (perYeast - 1);
        return new DissolveAndSplit(
            batch.Balls,
            batch.Yeast,
            dissolve,
            dissolve * (perYeast - 1),
            batch.Yeast * perYeast,
            new Grams(Math.Max(0, batch.FinalWater.Value - waterInPart)));
    }

    private static bool IsTooLittle(Grams yeast, KitchenScale scale) =>
        yeast.Value is > 0 and < LittleYeastGrams && scale.Fine / 2 > yeast * WorstYeastError;

    /// <summary>To a microgram, so that 123 steps of 0.1 g read 12.3 g.</summary>
    internal static Grams OnStep(Grams mass, Grams step) =>
        new(Math.Round(Math.Round(mass / step, MidpointRounding.AwayFromZero) * step.Value, 6));
}
