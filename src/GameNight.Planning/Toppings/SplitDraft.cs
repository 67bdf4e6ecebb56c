namespace GameNight.Planning.Toppings;

/// <summary>An answer in counts: how many units of each supply are baked, and how many slices of it each eater gets.</summary>
internal sealed class SplitDraft(SplitBasis basis, int[] units, int[,] slices)
{
    /// <summary>
    /// The worst-off eater is compared in steps of a 360th of the best they could have: a finer step is no difference at the
    /// table, and a coarser one would hide half a point in a slice.
    /// </summary>
    public const int WorstOffScale = 360;

    /// <summary>Steps of nearness in which eaters are compared level by level.</summary>
    public const int Levels = 8;

    public SplitBasis Basis { get; } = basis;
    public IReadOnlyList<int> Units { get; } = units;

    /// <summary>Slices that are wanted but not on the table in a permitted form.</summary>
    public int Missing =>
        Enumerable.Range(0, Basis.Eaters.Count).Sum(eater => Basis.Eaters[eater].Slices - EatenBy(eater));

    /// <summary>Slices short of the goals of the must-not groups, all together.</summary>
    public int Uncovered => Basis.Goals.Sum(goal => Math.Max(0, goal.Wanted - Covering(goal)));

    /// <summary>Slices that somebody takes from other people's own pies, or from the second dough without needing it.</summary>
    public int LeftOverTaken =>
        Enumerable.Range(0, Basis.Eaters.Count).Sum(eater => Basis.LeftOver[eater].Sum(supply => Eaten(eater, supply)));

    /// <summary>The lowest score per wanted slice, against the eater's best possible: 0 to 360. A missing slice scores 0.</summary>
    public int WorstOff => Basis.Judging.Select(NearnessOf).DefaultIfEmpty(WorstOffScale).Min();

    /// <summary>The sum over all eaters of how near they come to their best, in 360ths.</summary>
    public int Together => Basis.Judging.Sum(NearnessOf);

    public int Eaten(int eater, int supply) => slices[eater, supply];

    public int EatenBy(int eater) => Enumerable.Range(0, Basis.Supplies.Count).Sum(supply => slices[eater, supply]);

    /// <summary>The scores of all slices of this eater together.</summary>
    public int ScoreOf(int eater) =>
        Enumerable.Range(0, Basis.Supplies.Count)
            .Where(supply => slices[eater, supply] > 0)
            .Sum(supply => slices[eater, supply] * Basis.Score(eater, supply));

    /// <summary>Slices on the table that count for the group; what others take from its own pies is gone.</summary>
    public int Covering(CoverageGoal goal) =>
        goal.Supplies.Sum(supply => (Units[supply] * Basis.SlicesPerUnit) - TakenByOthers(supply));

    /// <summary>How many eighths of their best this eater reaches, 0 to 8.</summary>
    public int LevelOf(int eater) => ScoreOf(eater) * Levels / Basis.MostScore(eater);

    public int Below(int level) => Basis.Judging.Count(eater => LevelOf(eater) < level);

    public bool IsBetterThan(SplitDraft other) =>
        (-Missing, -Uncovered, WorstOff, Together).CompareTo((-other.Missing, -other.Uncovered, other.WorstOff, other.Together)) > 0;

    private int NearnessOf(int eater) => ScoreOf(eater) * WorstOffScale / Basis.MostScore(eater);

    private int TakenByOthers(int supply)
    {
        var set = Basis.Supplies[supply].Set;
        return Basis.Sets[set] is { IsOwn: false, IsOnSecondDough: false }
            ? 0
            : Enumerable.Range(0, Basis.Eaters.Count).Where(eater => Basis.SeatOf(eater) != set).Sum(eater => slices[eater, supply]);
    }
}
