using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// What the hands found: this share of the flour stayed out although the dough was right. Hands know more than any law of
/// moist flour, so that no cap applies to it.
/// </summary>
/// <param name="StayedOut">Share of all flour, 0 to 0.5.</param>
public sealed record KneadersCorrection(Share StayedOut)
{
    /// <summary>No more than can be held back.</summary>
    public const double Most = 0.5;

    /// <summary>Learns from one batch, on top of what was corrected in it already.</summary>
    /// <param name="stayedOut">Flour of this batch that was not worked in: "20 g of it stayed out".</param>
    /// <exception cref="ArgumentOutOfRangeException">More stayed out than was held back.</exception>
    public static KneadersCorrection Learn(Grams stayedOut, DoughBatch batch, KneadersCorrection? before = null)
    {
        if (stayedOut > batch.HeldBackFlour)
        {
            throw new ArgumentOutOfRangeException(
                nameof(stayedOut), stayedOut, $"Flour that stayed out is 0 g to the {batch.HeldBackFlour} that was held back.");
        }

        var wentIn = (1 - (before?.StayedOut.Value ?? 0)) * (1 - stayedOut / batch.Flour);
        return new KneadersCorrection(new Share(Math.Min(Most, 1 - wentIn)));
    }

    /// <summary>Water per flour of a dough that had <paramref name="hydration"/> before the flour stayed out.</summary>
    public Share After(Share hydration) => new(hydration.Value / (1 - StayedOut.Value));
}
