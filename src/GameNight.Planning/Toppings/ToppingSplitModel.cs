using System.Globalization;
using Google.OrTools.Sat;

namespace GameNight.Planning.Toppings;

/// <summary>A draft with what is known about it.</summary>
internal sealed record SplitOutcome(SplitDraft Draft, SplitQuality Quality, double GapPercent, int SolverSlices);

/// <summary>
/// The split in whole numbers for CP-SAT: how many units of each supply, and how many slices of it each eater gets.
/// Pies are counted, not named, so they cannot be swapped for nothing; a forbidden slice has no variable at all.
/// <para>
/// In this order: (1) nobody lacks slices, then no must-not group lacks permitted ones (only where the quick answer fell
/// short); (2) the worst-off eater comes as near to their best as can be, or, <see cref="SplitAim.EveryLevel">level by
/// level</see>, as few as can be stay below each eighth of it (leximin at that rounding); (3) the sum of the logarithms of all eaters'
/// nearness (by tangents), less small prices for an eater without a second choice, for each combination, for each
/// topping in use and for each pack that is opened. The prices are the tie-break.
/// </para>
/// </summary>
internal sealed class ToppingSplitModel
{
    /// <summary>The worth of one eater at their best in objective (3); the logarithm is 0 at a twentieth of it.</summary>
    private const int FullWorth = 1_000;

    /// <summary>Prices are for an eater of the usual weight, which is 100.</summary>
    private const int WeightUnit = FairOverTime.UsualPercent;
    private const double LowestNearness = 0.05;

    /// <summary>Where the tangents touch the logarithm, in parts of the eater's best.</summary>
    private static readonly double[] TangentPoints = [0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 1.0];

    private const int PriceOfNoSecondChoice = 40;
    private const int PriceOfCombination = 8;
    private const int PriceOfTopping = 4;
    private const int PriceOfPack = 1;

    /// <summary>Feeding somebody comes before covering a group: the weight is above any number of slices on a night.</summary>
    private const int PriceOfMissingSlice = 10_000;

    private const double ShareForHunger = 0.25;
    private const double ShareForWorstOff = 0.7;
    private const double ShareForLevel = 0.3;

    private readonly SplitBasis _basis;
    private readonly SplitDraft _start;
    private readonly CpModel _model = new();
    private readonly List<IntVar> _variables = [];
    private readonly IntVar[] _units;
    private readonly IntVar?[,] _slices;
    private readonly BoolVar[] _isOnTable;
    private readonly BoolVar[] _isUsed;
    private readonly IntVar[] _missing;
    private readonly IntVar[] _uncovered;
    private readonly IntVar _worstOff;

    private ToppingSplitModel(SplitBasis basis, SplitDraft start)
    {
        var mayFallShort = start.Missing > 0 || start.Uncovered > 0;
        _basis = basis;
        _start = start;
        _units = [.. basis.Supplies.Select((supply, index) => Whole(basis.PinnedUnits(index), basis.Sets[supply.Set].Units, start.Units[index]))];
        _slices = new IntVar?[basis.Eaters.Count, basis.Supplies.Count];
        _missing = [.. basis.Eaters.Select((eater, index) =>
            Whole(0, mayFallShort ? eater.Slices : 0, eater.Slices - start.EatenBy(index)))];
        _uncovered = [.. basis.Goals.Select(goal =>
            Whole(0, mayFallShort ? goal.Wanted : 0, Math.Max(0, goal.Wanted - start.Covering(goal))))];
        _isOnTable = [.. start.Units.Select(units => YesOrNo(units > 0))];
        var used = basis.ChoicesUsed(start.Units);
        _isUsed = [.. basis.Catalogue.Select((_, choice) => YesOrNo(used.Contains(choice)))];

        // Slices for everybody and every group come first, and may take from the worst-off what a short answer left them.
        _worstOff = Whole(mayFallShort ? 0 : start.WorstOff, SplitDraft.WorstOffScale, start.WorstOff);

        FillPies(used.Count);
        FeedEaters();
        ShareLeftOvers();
        CoverGroups();
        KeepToStock();
    }

    /// <summary>
    /// The best split the effort finds: never with fewer slices than <paramref name="start"/>, and where that has enough,
    /// never worse for the worst-off eater (in steps of the aim).
    /// </summary>
    public static SplitOutcome Improve(SplitBasis basis, SplitDraft start, Effort effort, CancellationToken cancellation)
    {
        var model = new ToppingSplitModel(basis, start);
        var search = new Search(model, effort, cancellation);
        if (start.Missing > 0 || start.Uncovered > 0)
        {
            model.FeedEverybody(search);
        }

        if (basis.Aim == SplitAim.EveryLevel)
        {
            model.RaiseLevelByLevel(search);
        }
        else
        {
            model.RaiseTheWorstOff(search);
        }

        model.PleaseEverybody(search);
        return search.Outcome();
    }

    /// <summary>Only as many slices as can be had for everybody and every group, without looking at what they like.</summary>
    public static SplitDraft Feed(SplitBasis basis, SplitDraft start, Effort effort, CancellationToken cancellation)
    {
        var model = new ToppingSplitModel(basis, start);
        var search = new Search(model, effort, cancellation);
        model.FeedEverybody(search);
        return search.Best;
    }

    private void FillPies(int usedAtStart)
    {
        for (var set = 0; set < _basis.Sets.Count; set++)
        {
            var here = Supplies().Where(supply => _basis.Supplies[supply].Set == set).Select(supply => _units[supply]);
            _model.Add(LinearExpr.Sum(here) == _basis.Sets[set].Units);
        }

        foreach (var supply in Supplies())
        {
            _model.Add(_units[supply] <= _basis.Sets[_basis.Supplies[supply].Set].Units * _isOnTable[supply]);
            _model.Add(_units[supply] >= _isOnTable[supply]);
            _model.AddImplication(_isOnTable[supply], _isUsed[_basis.Supplies[supply].Choice]);
        }

        _model.Add(LinearExpr.Sum(_isUsed) <= Math.Max(_basis.DistinctWanted, usedAtStart));
    }

    private void FeedEaters()
    {
        for (var eater = 0; eater < _basis.Eaters.Count; eater++)
        {
            var most = Math.Min(_basis.Eaters[eater].Slices, _basis.Sets.Sum(set => set.Units) * _basis.SlicesPerUnit);
            var leftOver = _start.LeftOverTaken > 0 || _start.Missing > 0 ? _basis.LeftOver[eater] : [];
            foreach (var supply in _basis.Regular[eater].Concat(leftOver))
            {
                _slices[eater, supply] = Whole(0, most, _start.Eaten(eater, supply));
            }

            _model.Add(LinearExpr.Sum(SlicesOf(eater)) + _missing[eater] == _basis.Eaters[eater].Slices);
        }

        foreach (var supply in Supplies())
        {
            var eaten = Enumerable.Range(0, _basis.Eaters.Count).Select(eater => _slices[eater, supply]).OfType<IntVar>();
            _model.Add(LinearExpr.Sum(eaten) <= _basis.SlicesPerUnit * _units[supply]);
        }
    }

    /// <summary>Others take no more from own pies than the quick answer needed, or could not find elsewhere.</summary>
    private void ShareLeftOvers()
    {
        var taken = Enumerable.Range(0, _basis.Eaters.Count)
            .SelectMany(eater => _basis.LeftOver[eater].Select(supply => _slices[eater, supply])).OfType<IntVar>();
        _model.Add(LinearExpr.Sum(taken) <= _start.LeftOverTaken + _start.Missing);
    }

    private void CoverGroups()
    {
        for (var goal = 0; goal < _basis.Goals.Count; goal++)
        {
            var supplies = _basis.Goals[goal].Supplies;
            var onTable = supplies.Select(supply => _basis.SlicesPerUnit * _units[supply]);
            var takenByOthers = supplies.SelectMany(supply => Enumerable.Range(0, _basis.Eaters.Count)
                .Where(eater => _basis.LeftOver[eater].Contains(supply))
                .Select(eater => _slices[eater, supply])).OfType<IntVar>();
            _model.Add(LinearExpr.Sum(onTable) - LinearExpr.Sum(takenByOthers) + _uncovered[goal] >= _basis.Goals[goal].Wanted);
        }
    }

    /// <summary>No more of anything than there is, or than the quick answer had to take.</summary>
    private void KeepToStock()
    {
        foreach (var limit in _basis.Limits)
        {
            _model.Add(LinearExpr.Sum(limit.Supplies.Select(supply => _units[supply]))
                <= Math.Max(limit.MostUnits, limit.Supplies.Sum(supply => _start.Units[supply])));
        }
    }

    private void FeedEverybody(Search search)
    {
        var lack = (PriceOfMissingSlice * LinearExpr.Sum(_missing)) + LinearExpr.Sum(_uncovered);
        _model.Minimize(lack);
        search.Run(ShareForHunger);
        _model.Add(lack <= (PriceOfMissingSlice * search.Best.Missing) + search.Best.Uncovered);
    }

    private void RaiseTheWorstOff(Search search)
    {
        foreach (var eater in _basis.Judging)
        {
            _model.Add((SplitDraft.WorstOffScale * Score(eater)) >= _basis.MostScore(eater) * _worstOff);
        }

        _model.Maximize(_worstOff);
        search.Run(ShareForWorstOff);
        _model.Add(_worstOff >= search.Best.WorstOff);
    }

    private void RaiseLevelByLevel(Search search)
    {
        for (var level = 1; level <= SplitDraft.Levels; level++)
        {
            var isBelow = new List<BoolVar>();
            foreach (var eater in _basis.Judging)
            {
                var below = YesOrNo(search.Best.LevelOf(eater) < level);
                _model.Add(SplitDraft.Levels * Score(eater) >= level * _basis.MostScore(eater)).OnlyEnforceIf(below.Not());
                isBelow.Add(below);
            }

            if (search.Best.Below(level) > 0)
            {
                _model.Minimize(LinearExpr.Sum(isBelow));
                search.Run(ShareForLevel);
            }

            _model.Add(LinearExpr.Sum(isBelow) <= search.Best.Below(level));
        }
    }

    private void PleaseEverybody(Search search)
    {
        var worth = new List<LinearExpr>();

        // Where everybody weighs alike the numbers stay as small as they are without weights.
        var weighs = _basis.Eaters.Any(eater => eater.WeightPercent != WeightUnit);
        var unit = weighs ? WeightUnit : 1;
        foreach (var eater in _basis.Judging)
        {
            var logarithm = Whole(-FullWorth, FullWorth);
            worth.Add(weighs ? _basis.Eaters[eater].WeightPercent * logarithm : logarithm);
            foreach (var point in TangentPoints)
            {
                var slope = (int)Math.Round(FullWorth / (point * -Math.Log(LowestNearness)));
                var height = (int)Math.Round((FullWorth * (1 - (Math.Log(point) / Math.Log(LowestNearness)))) - (slope * point));
                _model.Add(_basis.MostScore(eater) * logarithm <= (slope * Score(eater)) + (height * _basis.MostScore(eater)));
            }

            var lacksSecondChoice = YesOrNo();
            worth.Add(-PriceOfNoSecondChoice * unit * lacksSecondChoice);
            var acceptable = _basis.Regular[eater]
                .Where(supply => _basis.IsAcceptable(eater, supply))
                .Select(supply => _isOnTable[supply]);
            _model.Add(LinearExpr.Sum(acceptable) + (2 * lacksSecondChoice) >= 2);
        }

        worth.AddRange(_isUsed.Select(isUsed => -PriceOfCombination * unit * isUsed));
        for (var topping = 0; topping < _basis.Menu.Toppings.Count; topping++)
        {
            var isBought = YesOrNo();
            worth.Add(-PriceOfTopping * unit * isBought);
            var withIt = Enumerable.Range(0, _basis.Catalogue.Count)
                .Where(choice => _basis.Catalogue[choice].Toppings.Contains(topping));
            foreach (var choice in withIt)
            {
                _model.AddImplication(_isUsed[choice], isBought);
            }
        }

        foreach (var item in _basis.Packed)
        {
            var most = item.Packs([.. Supplies().Select(supply => item.Supplies.Contains(supply) ? _basis.Sets[_basis.Supplies[supply].Set].Units : 0)]);
            var packs = Whole(0, (int)most, (int)item.Packs(search.Best.Units));
            _model.Add(item.PackTenths * packs >= item.UnitTenths * LinearExpr.Sum(item.Supplies.Select(supply => _units[supply])));
            worth.Add(-PriceOfPack * unit * packs);
        }

        _model.Maximize(LinearExpr.Sum(worth));
        search.Run(share: 1);
    }

    private IEnumerable<int> Supplies() => Enumerable.Range(0, _basis.Supplies.Count);

    private IEnumerable<IntVar> SlicesOf(int eater) => Supplies().Select(supply => _slices[eater, supply]).OfType<IntVar>();

    private LinearExpr Score(int eater)
    {
        var supplies = Supplies().Where(supply => _slices[eater, supply] is not null).ToArray();
        return LinearExpr.WeightedSum(
            supplies.Select(supply => _slices[eater, supply]!), supplies.Select(supply => _basis.Score(eater, supply)));
    }

    private IntVar Whole(int lowest, int highest, int? start = null) => Hinted(_model.NewIntVar(lowest, highest, ""), start);

    private BoolVar YesOrNo(bool? start = null)
    {
        var answer = _model.NewBoolVar("");
        Hinted(answer, start is null ? null : start.Value ? 1 : 0);
        return answer;
    }

    private IntVar Hinted(IntVar variable, int? start)
    {
        if (start is { } value)
        {
            _model.AddHint(variable, value);
        }

        _variables.Add(variable);
        return variable;
    }

    /// <summary>Solves one objective after the other, each from the answer of the one before, on one budget of solver time.</summary>
    private sealed class Search(ToppingSplitModel model, Effort effort, CancellationToken cancellation)
    {
        /// <summary>
        /// One worker and a fixed seed: the same model gives the same answer, however fast the machine. The full linear
        /// relaxation proves most nights several times sooner than the default one, and large nights at all.
        /// </summary>
        private const string Repeatable = "num_workers:1,random_seed:1,linearization_level:2";

        private readonly double _budget = effort.Slices * Effort.SliceDeterministicTime;
        private double _used;
        private double _budgetToRepeat;
        private double _gapPercent;
        private bool _isProved = true;

        public SplitDraft Best { get; private set; } = model._start;

        public void Run(double share)
        {
            cancellation.ThrowIfCancellationRequested();
            var limit = Math.Min(share * _budget, _budget - _used);
            using var solver = new CpSolver();
            solver.StringParameters = Repeatable + string.Create(CultureInfo.InvariantCulture, $",max_deterministic_time:{limit:R}");
            using var stop = cancellation.Register(solver.StopSearch);
            var status = solver.Solve(model._model);
            cancellation.ThrowIfCancellationRequested();

            var response = solver.Response!;
            _used += response.DeterministicTime;
            _budgetToRepeat = Math.Max(_budgetToRepeat, Math.Max(_used, response.DeterministicTime / share));
            _isProved &= status == CpSolverStatus.Optimal;
            if (status is CpSolverStatus.ModelInvalid or CpSolverStatus.Infeasible)
            {
                throw new InvalidOperationException($"The split model is {status}, although the quick answer satisfies it.");
            }

            if (status != CpSolverStatus.Unknown)
            {
                var gap = Math.Abs(response.BestObjectiveBound - response.ObjectiveValue);
                // Prices can take more than an answer is worth; further than from nothing to all it cannot be.
                _gapPercent = Math.Max(_gapPercent, Math.Min(100, 100 * gap / Math.Max(1, Math.Abs(response.BestObjectiveBound))));
                Best = Read(solver);
                model._model.ClearHints();
                model._variables.ForEach(variable => model._model.AddHint(variable, solver.Value(variable)));
            }
        }

        public SplitOutcome Outcome() => new(
            Best,
            _isProved ? SplitQuality.Proved : SplitQuality.BestFound,
            _isProved ? 0 : _gapPercent,
            _isProved ? Math.Clamp((int)Math.Ceiling(_budgetToRepeat / Effort.SliceDeterministicTime), 1, effort.Slices) : effort.Slices);

        private SplitDraft Read(CpSolver solver)
        {
            var units = model._units.Select(unit => (int)solver.Value(unit)).ToArray();
            var slices = new int[model._slices.GetLength(0), model._slices.GetLength(1)];
            for (var eater = 0; eater < slices.GetLength(0); eater++)
            {
                for (var supply = 0; supply < slices.GetLength(1); supply++)
                {
                    slices[eater, supply] = model._slices[eater, supply] is { } variable ? (int)solver.Value(variable) : 0;
                }
            }

            return new SplitDraft(model._basis, units, slices);
        }
    }
}
