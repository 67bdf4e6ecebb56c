namespace GameNight.Planning.Timeline;

/// <summary>What the solver found.</summary>
internal sealed record FoundSchedule(int[] Starts, bool IsProved, double GapPercent);

/// <summary>
/// The night handed to the solver: one start per step with the host's unavailable hours as holes in its domain, lags as
/// differences, hands as a shared resource. First the last pie as early as possible, then, with that kept, the fewest
/// inconvenient minutes.
/// </summary>
internal static class NightSchedule
{
    /// <summary>The last pie may use this part of the effort; what it leaves goes to convenience.</summary>
    private const double PartForLastPie = 0.5;

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
        int[] lengths = [.. steps.Steps.Select(step => step.Minutes)];
        List<int> work = [.. steps.Steps.Index().Where(step => step.Item.Presence == Presence.Hands).Select(step => step.Index)];
        var model = Model(
            steps, lengths, [.. steps.Steps.Select((step, i) => steps.Night.Away.FreeStarts(earliest[i], latest[i], step.FreeMinutes))], steps.Lags, steps.Night.Crew, work);
        var lastServe = steps.Pies[^1].Serve;
        var limit = effort.Slices * Effort.SliceDeterministicTime;
        var best = hint;
        var isLastProved = hint is not null && hint[lastServe] == earliest[lastServe];
        if (!isLastProved)
        {
            model.MinimizeStart(lastServe);
            var found = model.Run(best, limit * PartForLastPie, cancellation);
            best = found.Starts ?? best;
            isLastProved = found is { Starts: not null, IsProved: true };
        }

        var isProved = false;
        var gap = 100.0;
        if (best is not null)
        {
            model.NotAfter(lastServe, best[lastServe]);
            MinimizeInconvenience(model, terms, steps.Steps.Count);
            var found = model.Run(best, limit - model.Used, cancellation);
            best = found.Starts ?? best;
            isProved = isLastProved && found is { Starts: not null, IsProved: true };
            gap = isProved ? 0 : found.GapPercent;
        }

        slices = Math.Clamp((int)Math.Ceiling(model.Used / Effort.SliceDeterministicTime), 1, effort.Slices);
        return best is null ? null : new FoundSchedule(best, isProved, gap);
    }

    /// <summary>Steps, lags and the people who do the work, each only what they can do.</summary>
    /// <param name="work">The steps that need somebody's hands.</param>
    public static ScheduleModel Model(
        NightSteps steps, IReadOnlyList<int> lengths, IReadOnlyList<IEnumerable<(int First, int Last)>> starts, IEnumerable<Lag> lags, Crew crew, IReadOnlyList<int> work)
    {
        var model = new ScheduleModel(
            lengths, starts, lags, crew.Counts is [var hands] ? [new SharedResource(hands, [.. work.Select(i => (i, 1))]), .. steps.Stations] : steps.Stations);
        if (crew.Counts.Count > 1)
        {
            model.Share(new EitherResource(crew.Counts, [.. work.Select(i => (i, crew.Able(steps.Steps[i].Kind, steps.Steps[i].Number)))]), lengths);
        }

        return model;
    }

    private static void MinimizeInconvenience(ScheduleModel model, IReadOnlyList<CostTerm> terms, int steps)
    {
        // At a thousandth of a minute each, work done later.
        var weightOfStart = new long[steps];
        Array.Fill(weightOfStart, -1);
        long constant = 0;
        var overs = new List<WeightedOver>();
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

            overs.Add(new WeightedOver(weight, term.Later, term.Earlier, term.Plus));
        }

        model.MinimizeSum(weightOfStart, overs, constant);
    }
}
