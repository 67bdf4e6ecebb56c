using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>
/// Checks kitchen, dough and menu against the planner's own ranges, by placing them into an otherwise plain night.
/// </summary>
internal sealed class KitchenCheck(ReferenceTables tables)
{
    private readonly SnapshotCheck _check = new(tables);

    public IReadOnlyList<SnapshotProblem> Problems(KitchenFacts facts) => _check.Problems(Plain(facts));

    public IReadOnlyList<SnapshotProblem> Problems(string name, DoughFormula formula, PieShape shape) =>
    [
        .. Name(name, DoughRecipe.LongestName),
        .. _check.Problems(Plain(KitchenFacts.Starting) with { Formula = formula, Shape = shape }),
    ];

    public static IReadOnlyList<SnapshotProblem> Problems(string name, double gramsPerCm2, int count)
    {
        var problems = Name(name, PantryItem.LongestName).ToList();
        if (!(gramsPerCm2 is >= 0 and <= 1))
        {
            problems.Add(new("gramsPerCm2", SnapshotFault.OutOfRange, gramsPerCm2, 0, 1));
        }

        if (count > SnapshotCheck.MostMenuItems)
        {
            problems.Add(new("menu.items", SnapshotFault.WrongCount, count, 0, SnapshotCheck.MostMenuItems));
        }

        return problems;
    }

    private static IEnumerable<SnapshotProblem> Name(string name, int longest)
    {
        var length = name.Trim().Length;
        return length >= 1 && length <= longest
            ? []
            : [new SnapshotProblem("name", SnapshotFault.WrongCount, length, 1, longest)];
    }

    private NightSnapshot Plain(KitchenFacts facts)
    {
        var style = tables.Dough.Styles[0];
        return new NightSnapshot(
            Instant.FromUnixTimeSeconds(0),
            [],
            facts.ToSnapshot(),
            new DoughFormula(
                new Share(style.Water), new Share(style.Salt), default, default, false, YeastForm.Instant, default, default),
            new PieShape(
                new Centimetres(style.DiameterCentimetres), style.ThicknessGramsPerCm2,
                new Centimetres(style.RimCentimetres), default, default, style.SlicesPerPie),
            new Menu([], 0, Composition.Nothing),
            [],
            new ColdFerment(Duration.Zero, Duration.Zero, Duration.Zero),
            new Share(tables.Appetite.RunOutChance.Usual),
            ByHand.Nothing);
    }
}
