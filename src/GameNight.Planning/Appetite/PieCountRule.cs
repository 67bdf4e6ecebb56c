using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>
/// The smallest number of pies that runs out with at most the chance the host accepts, or with the chance that follows from
/// what a shortage costs against a leftover: the critical ratio. Nobody expected means no pie. (Arrow, Harris and Marschak 1951.)
/// </summary>
public static class PieCountRule
{
    /// <summary>How many neighbours on each side of the choice are shown for comparison.</summary>
    private const int Neighbours = 2;

    /// <summary>Of a sum of probabilities: a chance that is exactly accepted is accepted.</summary>
    private const double RoundOff = 1e-12;

    /// <summary>From where running out is nearly certain to where it is nearly ruled out, at most so many numbers of pies.</summary>
    private const double NearlyCertain = 0.995;
    private const double NearlyNever = 0.005;
    private const int MostOnCurve = 60;

    /// <summary>Digits of a chance that are kept for drawing.</summary>
    private const int CurveDigits = 5;

    /// <param name="runOutChance">0.01 to 0.5.</param>
    /// <param name="begun">What is known of a dough that is begun: its pies are there, whatever the host or the answers say.</param>
    /// <param name="shortageWeight">A missing pie is as bad as so many left over, 1 to 99; null for the accepted chance.</param>
    public static PiePlan For(
        SliceDistribution demand, int slicesPerPie, Share runOutChance, PieCount? byHand, DoughIsBegun? begun = null,
        double? shortageWeight = null)
    {
        var accepted = shortageWeight is { } weight ? new Share(1 / (weight + 1)) : runOutChance;
        var pies = 0;
        while (demand.MoreThan(pies * slicesPerPie) > accepted.Value + RoundOff && pies < PieCount.Highest)
        {
            pies++;
        }

        var proposed = new PieCount(pies);
        var reached = Choice(demand, slicesPerPie, proposed);
        Reason asked = shortageWeight is { } costly
            ? new ShortageWeighed(costly, accepted, reached.RunOutChance, proposed)
            : new RunOutChanceAsked(accepted, reached.RunOutChance, proposed);
        var count = begun is not null
            ? new Explained<PieCount>(
                new PieCount(Math.Min(PieCount.Highest, begun.Pies.Value + (begun.Beside?.Value ?? 0))), proposed, IsByHand: false, [begun, asked])
            : Explained.Decide(byHand, proposed, asked);

        var shown = Around(count.Value.Value).Concat(Around(pies)).Distinct().Order();
        return new PiePlan(
            count, [.. shown.Select(k => Choice(demand, slicesPerPie, new PieCount(k)))], Curve(demand, slicesPerPie, count.Value.Value));
    }

    private static RunOutCurve? Curve(SliceDistribution demand, int slicesPerPie, int chosen)
    {
        var chances = Enumerable.Range(0, PieCount.Highest + 1)
            .Select(k => Math.Round(demand.MoreThan(k * slicesPerPie), CurveDigits)).ToList();
        if (chances[0] == 0)
        {
            return null;
        }

        var last = Math.Max(chosen + 1, chances.FindIndex(chance => chance < NearlyNever));
        last = last < 0 ? PieCount.Highest : Math.Min(last, PieCount.Highest);
        var first = Math.Max(0, Math.Min(chosen - 1, chances.FindLastIndex(chance => chance > NearlyCertain)));
        first = Math.Max(first, last - MostOnCurve + 1);
        return new RunOutCurve(new PieCount(first), chances[first..(last + 1)]);
    }

    private static IEnumerable<int> Around(int pies) =>
        Enumerable.Range(pies - Neighbours, 2 * Neighbours + 1).Where(k => k is >= 0 and <= PieCount.Highest);

    private static PieChoice Choice(SliceDistribution demand, int slicesPerPie, PieCount pies)
    {
        var slices = pies.Value * slicesPerPie;
        return new PieChoice(
            pies,
            new Share(demand.MoreThan(slices)),
            demand.ExpectedShortage(slices),
            demand.ExpectedLeftover(slices));
    }
}
