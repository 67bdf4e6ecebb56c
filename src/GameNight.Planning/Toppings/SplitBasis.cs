using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>Somebody who gets slices (as many as can be granted, at least one), with their taste.</summary>
/// <param name="WeightPercent">100 to 150, see <see cref="FairOverTime"/>.</param>
internal sealed record SeatedEater(
    string Id, int Slices, DietaryNeeds Needs, Palate Palate, int WeightPercent = FairOverTime.UsualPercent);

/// <summary>Pies that are filled together: the own pies of one party, or all the others of a dough (no owners).</summary>
/// <param name="Units">The smallest parts that carry a combination of their own: quarters, halves or whole pies.</param>
internal sealed record PieSet(int Pies, int Units, IReadOnlyList<int> Owners, bool IsOnSecondDough = false)
{
    public bool IsOwn => Owners.Count > 0;
}

/// <summary>A must-not group of the request with what it may have.</summary>
internal sealed record GroupAtTable(MustNotGroup Group, Palate Palate);

/// <summary>A choice of the catalogue on the pies of one set: what sectors are made of and slices are taken from.</summary>
internal sealed record Supply(int Set, int Choice);

/// <summary>So many units of a supply stand on this pie.</summary>
internal sealed record PinnedSupply(int Pie, int Supply, int Units);

/// <summary>So many slices of these supplies must be on the table for this group.</summary>
internal sealed record CoverageGoal(IReadOnlyList<string> EaterIds, int Wanted, IReadOnlyList<int> Supplies);

/// <summary>What every answer starts from, quick or solved: who eats how much, which pies are whose, and what may go on them.</summary>
internal sealed class SplitBasis
{
    private readonly int[,] _scores;
    private readonly int[] _seats;

    public SplitBasis(
        MenuLists menu,
        IReadOnlyList<SeatedEater> eaters,
        IReadOnlyList<PieSet> sets,
        IReadOnlyList<MenuChoice> catalogue,
        IReadOnlyList<GroupAtTable> groups,
        IReadOnlyList<SettledPin> pins,
        int slicesPerUnit)
    {
        Menu = menu;
        Eaters = eaters;
        Sets = sets;
        Catalogue = catalogue;
        SlicesPerUnit = slicesPerUnit;
        _seats = [.. Enumerable.Range(0, eaters.Count).Select(eater => SeatOf(eater, eaters, sets))];
        Supplies = [.. Enumerable.Range(0, sets.Count).Where(set => sets[set].Units > 0).SelectMany(set => SuppliesOf(set, pins))];

        Pinned = [.. pins.Select(pin => new PinnedSupply(
            pin.Pie,
            Enumerable.Range(0, Supplies.Count).First(supply =>
                Supplies[supply].Set == pin.Set && catalogue[Supplies[supply].Choice].IsSameAs(pin.Choice)),
            pin.Units))];
        _scores = new int[eaters.Count, Supplies.Count];
        for (var eater = 0; eater < eaters.Count; eater++)
        {
            for (var supply = 0; supply < Supplies.Count; supply++)
            {
                var (palate, there) = (eaters[eater].Palate, Supplies[supply]);
                _scores[eater, supply] = palate.MayHaveDough(sets[there.Set].IsOnSecondDough) ? palate.Score(catalogue[there.Choice]) ?? -1 : -1;
            }
        }

        Goals = [.. groups.Select(GoalOf)];
        Regular = [.. Enumerable.Range(0, eaters.Count).Select(eater => SuppliesFor(eater, leftOver: false))];
        LeftOver = [.. Enumerable.Range(0, eaters.Count).Select(eater => SuppliesFor(eater, leftOver: true))];
    }

    public MenuLists Menu { get; }
    public IReadOnlyList<SeatedEater> Eaters { get; }

    /// <summary>Own pies first, then other pies of the second dough, the open pies last (perhaps none).</summary>
    public IReadOnlyList<PieSet> Sets { get; }

    public IReadOnlyList<MenuChoice> Catalogue { get; }
    public int SlicesPerUnit { get; }
    public IReadOnlyList<Supply> Supplies { get; }
    public IReadOnlyList<CoverageGoal> Goals { get; }

    /// <summary>What the host has settled, pie by pie.</summary>
    public IReadOnlyList<PinnedSupply> Pinned { get; }

    public required int UnitsPerPie { get; init; }

    public required SplitAim Aim { get; init; }

    /// <summary>Items of which there is not enough for every pie.</summary>
    public IReadOnlyList<StockLimit> Limits { get; set; } = [];

    /// <summary>Items that are opened by the pack.</summary>
    public IReadOnlyList<PackedItem> Packed { get; set; } = [];

    /// <summary>What is already known to stand in the way.</summary>
    public IReadOnlyList<Conflict> Conflicts { get; init; } = [];

    /// <summary>For each eater the supplies they may eat from: their own pies, or the open ones of their dough.</summary>
    public IReadOnlyList<int[]> Regular { get; }

    /// <summary>
    /// For each eater the own pies of others and those of the second dough that hold nothing forbidden: only for slices nobody
    /// else can give them.
    /// </summary>
    public IReadOnlyList<int[]> LeftOver { get; }

    /// <summary>
    /// How many different combinations are wanted at most: six on a small night, ten at 24 pies, fourteen from 40 on. More
    /// choice on the table is more to prepare and to explain, and helps hardly anybody.
    /// </summary>
    public int DistinctWanted => Math.Clamp(4 + (Sets.Sum(set => set.Pies) / 4), 6, 14);

    public IReadOnlyList<int> SuppliesWith(MenuItem item) =>
        [.. Enumerable.Range(0, Supplies.Count).Where(supply => Menu.Has(Catalogue[Supplies[supply].Choice], item))];

    /// <summary>True while one more unit of the supply takes no more of anything than there is.</summary>
    public bool HasStock(int supply, IReadOnlyList<int> units) => Limits.All(limit =>
        !limit.Supplies.Contains(supply) || limit.Supplies.Sum(other => units[other]) < limit.MostUnits);

    public int PinnedUnits(int supply) => Pinned.Where(pin => pin.Supply == supply).Sum(pin => pin.Units);

    /// <summary>What a slice is worth to the eater, 0 to 12. Only for supplies they may eat from.</summary>
    public int Score(int eater, int supply) => _scores[eater, supply];

    /// <summary>Eaters whose satisfaction can be compared: those for whom some choice is worth anything.</summary>
    public IEnumerable<int> Judging => Enumerable.Range(0, Eaters.Count).Where(eater => Eaters[eater].Palate.BestPossible > 0);

    /// <summary>The score of all slices of this eater if every one were their best possible.</summary>
    public int MostScore(int eater) => Eaters[eater].Slices * Eaters[eater].Palate.BestPossible;

    /// <summary>As good as "fine", or as their best where that is less.</summary>
    public bool IsAcceptable(int eater, int supply) =>
        _scores[eater, supply] >= Math.Min(Palate.FineScore, Eaters[eater].Palate.BestPossible);

    /// <summary>The different choices on the table, whichever pies they are on.</summary>
    public IReadOnlySet<int> ChoicesUsed(IReadOnlyList<int> units) =>
        Enumerable.Range(0, Supplies.Count).Where(supply => units[supply] > 0).Select(supply => Supplies[supply].Choice).ToHashSet();

    /// <summary>The set of pies that the eater's slices are planned on.</summary>
    public int SeatOf(int eater) => _seats[eater];

    private static int SeatOf(int eater, IReadOnlyList<SeatedEater> eaters, IReadOnlyList<PieSet> sets)
    {
        var own = sets.ToList().FindIndex(set => set.Owners.Contains(eater));
        return own >= 0 ? own : sets.ToList().FindIndex(set => !set.IsOwn && set.IsOnSecondDough == eaters[eater].Palate.NeedsSecondDough);
    }

    /// <summary>
    /// What may go on the pies of a set: on own pies what all owners may have, on those of the second dough what somebody who
    /// needs it may have, or what the host settled there.
    /// </summary>
    private IEnumerable<Supply> SuppliesOf(int set, IReadOnlyList<SettledPin> pins)
    {
        var all = Enumerable.Range(0, Catalogue.Count)
            .Where(choice => Sets[set].Owners.All(owner => Eaters[owner].Palate.Permits(Catalogue[choice])))
            .ToList();
        if (Sets[set] is { IsOnSecondDough: true, IsOwn: false })
        {
            var seated = Enumerable.Range(0, Eaters.Count).Where(eater => _seats[eater] == set).Select(eater => Eaters[eater].Palate).ToList();
            var wanted = all.Where(choice => seated.Exists(palate => palate.Permits(Catalogue[choice]))
                || pins.Any(pin => pin.Set == set && pin.Choice.IsSameAs(Catalogue[choice]))).ToList();
            all = wanted.Count > 0 ? wanted : all;
        }

        return all.Select(choice => new Supply(set, choice));
    }

    private int[] SuppliesFor(int eater, bool leftOver)
    {
        var seat = _seats[eater];
        return [.. Enumerable.Range(0, Supplies.Count).Where(supply => _scores[eater, supply] >= 0 && MayTakeFrom(Supplies[supply].Set))];

        bool MayTakeFrom(int set) => leftOver
            ? !Sets[seat].IsOwn && set != seat && (Sets[set].IsOwn || Sets[set].IsOnSecondDough)
            : set == seat;
    }

    /// <summary>A group that needs own pies counts on those of its own eaters only; any other on the open pies of its dough.</summary>
    private CoverageGoal GoalOf(GroupAtTable group)
    {
        return new CoverageGoal(group.Group.EaterIds, group.Group.SlicesNineInTen, [.. Enumerable.Range(0, Supplies.Count).Where(Counts)]);

        bool Counts(int supply)
        {
            var set = Sets[Supplies[supply].Set];
            return group.Palate.Permits(Catalogue[Supplies[supply].Choice])
                && (group.Group.Needs.NeedsOwnPie
                    ? set.Owners.Any(owner => group.Group.EaterIds.Contains(Eaters[owner].Id))
                    : !set.IsOwn && set.IsOnSecondDough == group.Palate.NeedsSecondDough);
        }
    }
}
