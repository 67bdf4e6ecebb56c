using GameNight.Planning.Quantities;

namespace GameNight.Planning.Toppings;

/// <summary>An amount follows from the area it is spread on.</summary>
public sealed record SpreadOnArea(double AreaCm2, double GramsPerCm2) : Reason;

/// <summary>How much of something that is spread (sauce, cheese) goes on a pie, and in all.</summary>
public sealed record SpreadAmount(Explained<Grams> PerPie, Estimate<Grams> Total)
{
    /// <summary>Style and hand move such amounts by 15 % either way (from memory).</summary>
    public const double Band = 0.15;

    /// <param name="wholePies">Number of pies' worth that carry it; halves count as halves.</param>
    public static SpreadAmount For(double areaCm2, double gramsPerCm2, double wholePies, Grams? perPieByHand)
    {
        var perPie = Explained.Decide(
            perPieByHand, new Grams(areaCm2 * gramsPerCm2), new SpreadOnArea(areaCm2, gramsPerCm2));
        return new SpreadAmount(perPie, WithBand(perPie.Value * wholePies));
    }

    public static Estimate<Grams> WithBand(Grams expected) => new(expected, expected * (1 - Band), expected * (1 + Band));
}

/// <summary>How much of a menu item the whole night needs.</summary>
public sealed record ItemAmount(string ItemId, Estimate<Grams> Amount);
