using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>
/// The smallest number of pies that runs out with at most the chance the host accepts. Nobody expected means no pie.
/// </summary>
public static class PieCountRule
{
    /// <summary>How many neighbours on each side of the choice are shown for comparison.</summary>
    private const int Neighbours = 2;

    /// <param name="runOutChance">0.01 to 0.5.</param>
    /// <param name="begun">Pies of a dough that is begun: so many there are, whatever the host or the answers say.</param>
    public static PiePlan For(
        SliceDistribution demand, int slicesPerPie, Share runOutChance, PieCount? byHand, PieCount? begun = null)
    {
        var pies = 0;
        while (demand.MoreThan(pies * slicesPerPie) > runOutChance.Value && pies < PieCount.Highest)
        {
            pies++;
        }

        var proposed = new PieCount(pies);
        var reached = Choice(demand, slicesPerPie, proposed);
        var asked = new RunOutChanceAsked(runOutChance, reached.RunOutChance, proposed);
        var count = begun is { } fixedPies
            ? new Explained<PieCount>(fixedPies, proposed, IsByHand: false, [new DoughIsBegun(fixedPies), asked])
            : Explained.Decide(byHand, proposed, asked);

        var shown = Around(count.Value.Value).Concat(Around(pies)).Distinct().Order();
        return new PiePlan(count, [.. shown.Select(k => Choice(demand, slicesPerPie, new PieCount(k)))]);
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
