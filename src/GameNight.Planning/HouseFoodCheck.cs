using GameNight.Planning.Cheese;
using GameNight.Planning.Sauce;

namespace GameNight.Planning;

/// <summary>Valid ranges of a sauce and a cheese blend, for the whole snapshot and for a formula that is typed by itself.</summary>
public static class HouseFoodCheck
{
    /// <param name="sauce">Null has no problems.</param>
    public static IEnumerable<SnapshotProblem> Problems(HouseSauce? sauce, ReferenceTables tables)
    {
        if (sauce is null)
        {
            yield break;
        }

        foreach (var (field, given, range) in SauceLimits.Broken(sauce.Formula, tables.Sauces))
        {
            yield return new($"sauce.formula.{field}", SnapshotFault.OutOfRange, given, range.Low, range.High);
        }

        if (SauceLimits.RepeatsAPart(sauce.Formula))
        {
            yield return new("sauce.formula.parts", SnapshotFault.Repeated);
        }

        if (sauce.Tins is { Count: 0 or > SauceLimits.MostTinSizes } tins)
        {
            yield return new("sauce.tins", SnapshotFault.WrongCount, tins.Count, 1, SauceLimits.MostTinSizes);
        }

        var size = tables.Sauces.Ranges.TinGrams;
        foreach (var tin in (sauce.Tins ?? []).Where(tin => !size.Holds(tin.Value)))
        {
            yield return new("sauce.tins", SnapshotFault.OutOfRange, tin.Value, size.Low, size.High);
        }
    }

    /// <param name="cheese">Null has no problems.</param>
    public static IEnumerable<SnapshotProblem> Problems(HouseCheese? cheese, ReferenceTables tables)
    {
        if (cheese is null)
        {
            return [];
        }

        var (sum, drained) = (CheeseBlend.SumTolerance, tables.Cheese.Drained);
        SnapshotProblem?[] all =
        [
            SnapshotCheck.Range("cheeseBlend.blend", cheese.Blend.Sum, 1 - sum, 1 + sum),
            SnapshotCheck.Range("cheeseBlend.blend.drained", cheese.Blend.Drained.Value, drained.Low, drained.High),
        ];
        return all.OfType<SnapshotProblem>();
    }
}
