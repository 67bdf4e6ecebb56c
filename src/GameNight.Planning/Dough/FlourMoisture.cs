using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// Flour by its moisture. Mills state absorption for flour of 14 % moisture (ICC 115/1, AACC 54-21): drier flour is more
/// flour by weight and takes more water. All moistures are on wet basis, as a share of the flour as it is.
/// </summary>
public static class FlourMoisture
{
    /// <summary>The basis: 14 g of water in 100 g of flour.</summary>
    public const double Basis = 0.14;

    /// <summary>Flour that is bought or kept lies within these (legal limit 15 %; an oven-dry kitchen from memory).</summary>
    public const double Lowest = 0.06;
    public const double Highest = 0.18;

    /// <summary>What flour of that moisture counts for on the basis.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The moisture is outside 0.06 to 0.18.</exception>
    public static Grams OnBasis(Grams asIs, Share moisture) => asIs * (Dry(moisture) / (1 - Basis));

    /// <summary>What to weigh of flour of that moisture in place of flour on the basis.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The moisture is outside 0.06 to 0.18.</exception>
    public static Grams AsIs(Grams onBasis, Share moisture) => onBasis * ((1 - Basis) / Dry(moisture));

    /// <summary>
    /// Water per flour as it is, for a dough that has <paramref name="onBasis"/> with flour on the basis: the water of flour
    /// and jug together stays what it is per dry flour.
    /// </summary>
    /// <returns>Never below 0: very wet flour in a stiff dough needs no more water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moisture is outside 0.06 to 0.18.</exception>
    public static Share AbsorptionAsIs(Share onBasis, Share moisture) => new(Math.Max(
        0, (onBasis.Value + Basis) * Dry(moisture) / (1 - Basis) - moisture.Value));

    /// <summary>The other way round: what an absorption of flour as it is means on the basis.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The moisture is outside 0.06 to 0.18.</exception>
    public static Share AbsorptionOnBasis(Share asIs, Share moisture) => new(Math.Max(
        0, (asIs.Value + moisture.Value) * (1 - Basis) / Dry(moisture) - Basis));

    /// <summary>Moisture from a sample that was dried until it lost no more; 20 g do.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sample did not lose 6 to 18 % of its mass.</exception>
    public static Share FromDrying(Grams before, Grams after)
    {
        var moisture = before > default(Grams) ? 1 - after / before : double.NaN;
        return moisture is >= Lowest and <= Highest
            ? new Share(moisture)
            : throw new ArgumentOutOfRangeException(nameof(after), after, "A sample of flour loses 6 to 18 % in drying.");
    }

    private static double Dry(Share moisture) => moisture.Value is >= Lowest and <= Highest
        ? 1 - moisture.Value
        : throw new ArgumentOutOfRangeException(nameof(moisture), moisture, "Flour has a moisture of 0.06 to 0.18.");
}
