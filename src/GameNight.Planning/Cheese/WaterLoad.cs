using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Cheese;

/// <summary>Something on a pie and its water.</summary>
/// <param name="GramsPerCm2">Its mass on a square centimetre of topped area.</param>
/// <param name="Water">Share that is water; null where nobody knows, and that of its role is taken.</param>
public sealed record WetItem(string ItemId, MenuRole Role, double GramsPerCm2, Share? Water);

/// <summary>The water an item brings; <see cref="IsAssumed"/> when nobody said how much of it is water.</summary>
public sealed record WaterPart(string ItemId, Estimate<double> GramsPerCm2, bool IsAssumed);

/// <summary>So much less of an item on each pie.</summary>
public sealed record LessOf(string ItemId, Grams PerPie);

/// <summary>
/// Even by the low end of the estimate there is more water on the pie than its middle bears: it stays soggy, unless there is
/// less on it, or the toppings are cooked or drained first.
/// </summary>
/// <param name="AtLeastGramsPerCm2">The low end of the load.</param>
/// <param name="TakeLessOf">What brings the expected load down to the bound: the wettest toppings first, then the sauce.</param>
/// <param name="CookedFirstGramsPerCm2">The expected load when the toppings lose water beforehand.</param>
public sealed record SoggyMiddle(
    double LoadGramsPerCm2,
    double AtLeastGramsPerCm2,
    double BoundGramsPerCm2,
    IReadOnlyList<LessOf> TakeLessOf,
    double CookedFirstGramsPerCm2) : Reason;

/// <summary>Water that sauce, cheese and toppings of a combination bring to a square centimetre of topped area.</summary>
/// <param name="Letter">Of the combination.</param>
public sealed record WaterLoad(
    string Letter, Estimate<double> GramsPerCm2, IReadOnlyList<WaterPart> Parts, IReadOnlyList<Reason> Because)
{
    /// <param name="toppedAreaCm2">Of one pie, above 0.</param>
    public static WaterLoad For(string letter, IReadOnlyList<WetItem> items, double toppedAreaCm2, WaterLoadTable table)
    {
        var waters = items.Select(item => Band(item, table.Of(item.Role))).ToList();
        var load = new Estimate<double>(
            waters.Sum(water => water.Expected), waters.Sum(water => water.Low), waters.Sum(water => water.High));
        return new WaterLoad(
            letter,
            load,
            [.. items.Zip(waters, (item, water) => new WaterPart(item.ItemId, water, item.Water is null))],
            load.Low > table.BoundGramsPerCm2 ? [Soggy(items, waters, load, toppedAreaCm2, table)] : []);
    }

    /// <summary>Hand and style move the mass; where nobody knows the water, its share moves too.</summary>
    private static Estimate<double> Band(WetItem item, AssumedWaterRow assumed)
    {
        var (low, share, high) = item.Water is { } known
            ? (known.Value, known.Value, known.Value)
            : (assumed.Low, assumed.Share, assumed.High);
        return new Estimate<double>(
            item.GramsPerCm2 * share,
            item.GramsPerCm2 * (1 - SpreadAmount.Band) * low,
            item.GramsPerCm2 * (1 + SpreadAmount.Band) * high);
    }

    private static SoggyMiddle Soggy(
        IReadOnlyList<WetItem> items, List<Estimate<double>> waters, Estimate<double> load, double toppedAreaCm2, WaterLoadTable table)
    {
        var ofToppings = items.Zip(waters).Where(pair => pair.First.Role == MenuRole.Topping).Sum(pair => pair.Second.Expected);
        return new SoggyMiddle(
            load.Expected,
            load.Low,
            table.BoundGramsPerCm2,
            [.. Less(items, waters, load.Expected - table.BoundGramsPerCm2, toppedAreaCm2)],
            load.Expected - (table.CookedFirstLoses.Share * ofToppings));
    }

    private static IEnumerable<LessOf> Less(
        IReadOnlyList<WetItem> items, List<Estimate<double>> waters, double tooMuch, double toppedAreaCm2)
    {
        var wettestFirst = items.Zip(waters, (item, water) => (Item: item, Water: water.Expected))
            .Where(part => part.Water > 0)
            .OrderBy(part => part.Item.Role switch { MenuRole.Topping => 0, MenuRole.Base => 1, MenuRole.Cheese => 2 })
            .ThenByDescending(part => part.Water);
        foreach (var (item, water) in wettestFirst)
        {
            if (tooMuch <= 0)
            {
                yield break;
            }

            var off = Math.Min(tooMuch, water);
            yield return new LessOf(item.ItemId, new Grams(item.GramsPerCm2 * toppedAreaCm2 * off / water));
            tooMuch -= off;
        }
    }
}
