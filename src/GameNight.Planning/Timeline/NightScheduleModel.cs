using Google.OrTools.Sat;
using Google.OrTools.Util;

namespace GameNight.Planning.Timeline;

/// <summary>What the solver found.</summary>
internal sealed record FoundSchedule(int[] Starts, bool IsProved, double GapPercent);

/// <summary>
/// The night as a constraint model in whole minutes: one start per step, the host's unavailable hours as holes in its
/// domain, lags as differences, hands as a shared resource. First the last pie as early as possible, then, with that kept,
/// the fewest inconvenient minutes. One worker, a fixed seed and deterministic time give the same answer every time.
/// </summary>
internal sealed class NightScheduleModel
{
    private const int Seed = 1;

    /// <summary>The last pie may use this part of the effort; what it leaves goes to convenience.</summary>
    private const double PartForLastPie = 0.5;

    private readonly NightSteps _steps;
    private readonly CpModel _model = new();
    private readonly IntVar[] _starts;

    private NightScheduleModel(NightSteps steps, int[] earliest, int[] latest)
    {
        _steps = steps;
        _starts = [.. steps.Steps.Select((step, i) => _model.NewIntVarFromDomain(
            Domain.FromIntervals([.. steps.Night.Away.FreeStarts(earliest[i], latest[i], step.FreeMinutes)
                .Select(range => new long[] { range.First, range.Last })]),
            $"{step.Kind}{step.Number}"))];

        foreach (var lag in steps.Lags)
        {
            _model.Add(_starts[lag.To] - _starts[lag.From] >= lag.Minutes);
        }

        ShareHands();
    }

    /// <summary>
    /// The best schedule found within the effort, or null when none was; <paramref name="slices"/> is what the search took.
    /// </summary>
    /// <param name="earliest">Bounds that lags and free times leave; likewise <paramref name="latest"/>.</param>
    /// <param name="hint">A schedule to start from.</param>
    public static FoundSchedule? Solve(
        NightSteps steps,
        IReadOnlyList<CostTerm> terms,
        int[] earliest,
        int[] latest,
        int[]? hint,
        Effort effort,
        CancellationToken cancellation,
        out int slices)
    {
        var model = new NightScheduleModel(steps, earliest, latest);
        var lastServe = steps.Pies[^1].Serve;
        var limit = effort.Slices * Effort.SliceDeterministicTime;
        var used = 0.0;
        var best = hint;
        var isLastProved = hint is not null && hint[lastServe] == earliest[lastServe];
        if (!isLastProved)
        {
            model._model.Minimize(model._starts[lastServe]);
            var (status, found, _) = model.Run(best, limit * PartForLastPie, ref used, cancellation);
            best = found ?? best;
            isLastProved = status == CpSolverStatus.Optimal;
        }

        var isProved = false;
        var gap = 100.0;
        if (best is not null)
        {
            model._model.Add(model._starts[lastServe] <= best[lastServe]);
            model.MinimizeInconvenience(terms);
            var (status, found, gapPercent) = model.Run(best, limit - used, ref used, cancellation);
            best = found ?? best;
            isProved = isLastProved && status == CpSolverStatus.Optimal;
            gap = isProved ? 0 : gapPercent;
        }

        slices = Math.Clamp((int)Math.Ceiling(used / Effort.SliceDeterministicTime), 1, effort.Slices);
        return best is null ? null : new FoundSchedule(best, isProved, gap);
    }

    private void ShareHands()
    {
        var withHands = _steps.Steps.Index()
            .Where(step => step.Item is { Presence: Presence.Hands, Minutes: > 0 })
            .Select(step => _model.NewFixedSizeIntervalVar(_starts[step.Index], step.Item.Minutes, $"hands{step.Index}"))
            .ToList();
        if (_steps.Night.Hands == 1)
        {
            _model.AddNoOverlap(withHands);
            return;
        }

        var cumulative = _model.AddCumulative(_steps.Night.Hands);
        foreach (var interval in withHands)
        {
            cumulative.AddDemand(interval, 1);
        }
    }

    private void MinimizeInconvenience(IReadOnlyList<CostTerm> terms)
    {
        var weightOfStart = new long[_starts.Length];
        Array.Fill(weightOfStart, -1);
        long constant = 0;
        var cutOff = new List<IntVar>();
        var weightOfCutOff = new List<long>();
        foreach (var term in terms)
        {
            var weight = (long)NightCost.Scale * term.Weight;
            if (term.IsNeverNegative)
            {
                weightOfStart[term.Later] += weight;
                weightOfStart[term.Earlier] -= weight;
                constant += weight * term.Plus;
                continue;
            }

            var minutes = _model.NewIntVar(0, 2 * ServingClock.Farthest, $"over{cutOff.Count}");
            _model.Add(minutes >= _starts[term.Later] - _starts[term.Earlier] + term.Plus);
            cutOff.Add(minutes);
            weightOfCutOff.Add(weight);
        }

        _model.Minimize(LinearExpr.WeightedSum(_starts.Concat(cutOff), weightOfStart.Concat(weightOfCutOff)) + constant);
    }

    private (CpSolverStatus Status, int[]? Starts, double GapPercent) Run(
        int[]? hint, double limit, ref double used, CancellationToken cancellation)
    {
        _model.ClearHints();
        if (hint is not null)
        {
            for (var i = 0; i < _starts.Length; i++)
            {
                _model.AddHint(_starts[i], hint[i]);
            }
        }

        var seconds = limit.ToString("R", System.Globalization.CultureInfo.InvariantCulture);
        using var solver = new CpSolver
        {
            StringParameters = $"num_workers:1,random_seed:{Seed},max_deterministic_time:{seconds}",
        };
        cancellation.ThrowIfCancellationRequested();
        using var stopping = cancellation.Register(solver.StopSearch);
        var status = solver.Solve(_model);
        cancellation.ThrowIfCancellationRequested();

        used += solver.Response!.DeterministicTime;
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            return (status, null, 100);
        }

        var gap = solver.ObjectiveValue - solver.BestObjectiveBound;
        var percent = Math.Round(100 * Math.Abs(gap) / Math.Max(1, Math.Abs(solver.ObjectiveValue)), 2);
        return (status, [.. _starts.Select(start => (int)solver.Value(start))], percent);
    }
}
