using System.Globalization;
using Google.OrTools.Sat;
using Google.OrTools.Util;

namespace GameNight.Planning.Timeline;

/// <summary>Something of which there are so many at once: hands, places, a bowl.</summary>
/// <param name="Uses">Tasks with how many of it each holds from its start to its end.</param>
internal sealed record SharedResource(int Capacity, IReadOnlyList<(int Task, int Demand)> Uses);

/// <summary>Resources of which each task takes one, whichever: people of different skills.</summary>
/// <param name="Capacities">Of each resource.</param>
/// <param name="Uses">Tasks with the resources that each could take; at least one.</param>
internal sealed record EitherResource(IReadOnlyList<int> Capacities, IReadOnlyList<(int Task, IReadOnlyList<int> Able)> Uses);

/// <summary>Minutes above zero of start(Later) − start(Earlier) + Plus, by weight; without an earlier one its start counts as 0.</summary>
internal readonly record struct WeightedOver(long Weight, int Later, int? Earlier, int Plus);

/// <summary>How a search goes about it; each proves the same.</summary>
internal enum SearchWay
{
    /// <summary>With the linear relaxation, which bounds sums of many waits well.</summary>
    Relaxed,

    /// <summary>By propagation alone: a single start is soon as early as it can be, and the relaxation only costs time.</summary>
    Propagated,

    /// <summary>By cores of what cannot all be had: for a few dear terms among many cheap ones. It has no answer before the last.</summary>
    ByCores,
}

/// <summary>What a search came to.</summary>
/// <param name="Starts">The best schedule found, or null.</param>
/// <param name="IsProved">Nothing is better; without a schedule: there is none.</param>
/// <param name="Bound">The objective is never below this.</param>
/// <param name="GapPercent">How far the objective may be from the best; 100 without a schedule.</param>
internal sealed record FoundStarts(int[]? Starts, bool IsProved, double Bound, double GapPercent);

/// <summary>
/// Tasks of fixed length with least and greatest lags between their starts, times at which they may begin, and shared
/// resources: a resource-constrained project with time lags, as a constraint model in whole minutes. One worker, a fixed
/// seed and deterministic time give the same answer every time.
/// </summary>
internal sealed class ScheduleModel
{
    private const int Seed = 1;

    private readonly CpModel _model = new();
    private readonly IntVar[] _starts;

    /// <param name="lengths">Minutes from start to end of each task, 0 or more.</param>
    /// <param name="startRanges">Closed ranges in which each task may begin; none makes the model impossible.</param>
    /// <param name="lags">Start to start; a greatest lag is a least one in the other direction with its sign changed.</param>
    public ScheduleModel(
        IReadOnlyList<int> lengths, IReadOnlyList<IEnumerable<(int First, int Last)>> startRanges, IEnumerable<Lag> lags, IEnumerable<SharedResource> resources)
    {
        _starts = [.. startRanges.Select((ranges, task) => _model.NewIntVarFromDomain(
            Domain.FromIntervals([.. ranges.Select(range => new long[] { range.First, range.Last })]),
            string.Create(CultureInfo.InvariantCulture, $"start{task}")))];
        foreach (var lag in lags)
        {
            _model.Add(_starts[lag.To] - _starts[lag.From] >= lag.Minutes);
        }

        foreach (var resource in resources)
        {
            Share(resource, lengths);
        }
    }

    /// <summary>Solver time used so far, in the solver's own deterministic unit.</summary>
    public double Used { get; private set; }

    public void NotAfter(int task, int minute) => _model.Add(_starts[task] <= minute);

    public void MinimizeStart(int task) => _model.Minimize(_starts[task]);

    /// <param name="starts">A weight for each start.</param>
    public void MinimizeSum(IReadOnlyList<long> starts, IReadOnlyList<WeightedOver> overs, long constant)
    {
        var cutOff = new List<IntVar>();
        foreach (var over in overs)
        {
            var minutes = _model.NewIntVar(0, 2 * ServingClock.Farthest, string.Create(CultureInfo.InvariantCulture, $"over{cutOff.Count}"));
            _model.Add(minutes >= _starts[over.Later] - (over.Earlier is { } earlier ? _starts[earlier] : LinearExpr.Constant(0)) + over.Plus);
            cutOff.Add(minutes);
        }

        _model.Minimize(LinearExpr.WeightedSum(_starts.Concat(cutOff), starts.Concat(overs.Select(over => over.Weight))) + constant);
    }

    /// <param name="hint">A schedule to start from, or null.</param>
    /// <param name="limit">Deterministic solver time.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was signalled.</exception>
    public FoundStarts Run(int[]? hint, double limit, CancellationToken cancellation, SearchWay way = SearchWay.Relaxed)
    {
        _model.ClearHints();
        if (hint is not null)
        {
            for (var i = 0; i < _starts.Length; i++)
            {
                _model.AddHint(_starts[i], hint[i]);
            }
        }

        var time = limit.ToString("R", CultureInfo.InvariantCulture);
        var more = way switch
        {
            SearchWay.Relaxed => "",
            SearchWay.Propagated => ",linearization_level:0",
            SearchWay.ByCores => ",optimize_with_core:true",
        };
        using var solver = new CpSolver
        {
            StringParameters = string.Create(CultureInfo.InvariantCulture, $"num_workers:1,random_seed:{Seed},max_deterministic_time:{time}{more}"),
        };
        cancellation.ThrowIfCancellationRequested();
        using var stopping = cancellation.Register(solver.StopSearch);
        var status = solver.Solve(_model);
        cancellation.ThrowIfCancellationRequested();

        Used += solver.Response!.DeterministicTime;
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            return new FoundStarts(null, status == CpSolverStatus.Infeasible, solver.BestObjectiveBound, 100);
        }

        var gap = solver.ObjectiveValue - solver.BestObjectiveBound;
        var percent = Math.Round(100 * Math.Abs(gap) / Math.Max(1, Math.Abs(solver.ObjectiveValue)), 2);
        return new FoundStarts(
            [.. _starts.Select(start => (int)solver.Value(start))], status == CpSolverStatus.Optimal, solver.BestObjectiveBound, percent);
    }

    /// <summary>Of several resources each task takes one, from its start to its end.</summary>
    public void Share(EitherResource either, IReadOnlyList<int> lengths)
    {
        var takers = either.Capacities.Select(_ => new List<IntervalVar>()).ToList();
        foreach (var (task, able) in either.Uses.Where(use => lengths[use.Task] > 0))
        {
            if (able is [var only])
            {
                takers[only].Add(_model.NewFixedSizeIntervalVar(_starts[task], lengths[task], Name("use", task, only)));
                continue;
            }

            var choices = able.Select(one => (One: one, IsTaken: _model.NewBoolVar(Name("takes", task, one)))).ToList();
            _model.AddExactlyOne(choices.Select(choice => choice.IsTaken));
            foreach (var (one, isTaken) in choices)
            {
                takers[one].Add(_model.NewOptionalFixedSizeIntervalVar(_starts[task], lengths[task], isTaken, Name("use", task, one)));
            }
        }

        foreach (var (intervals, capacity) in takers.Zip(either.Capacities))
        {
            if (capacity == 1)
            {
                _model.AddNoOverlap(intervals);
                continue;
            }

            var cumulative = _model.AddCumulative(capacity);
            foreach (var interval in intervals)
            {
                cumulative.AddDemand(interval, 1);
            }
        }

        static string Name(string what, int task, int one) => string.Create(CultureInfo.InvariantCulture, $"{what}{task}-{one}");
    }

    private void Share(SharedResource resource, IReadOnlyList<int> lengths)
    {
        var uses = resource.Uses.Where(use => use.Demand > 0 && lengths[use.Task] > 0)
            .Select(use => (use.Demand, Interval: _model.NewFixedSizeIntervalVar(
                _starts[use.Task], lengths[use.Task], string.Create(CultureInfo.InvariantCulture, $"use{use.Task}"))))
            .ToList();
        if (resource.Capacity == 1 && uses.TrueForAll(use => use.Demand == 1))
        {
            _model.AddNoOverlap(uses.Select(use => use.Interval));
            return;
        }

        var cumulative = _model.AddCumulative(resource.Capacity);
        foreach (var (demand, interval) in uses)
        {
            cumulative.AddDemand(interval, demand);
        }
    }
}
