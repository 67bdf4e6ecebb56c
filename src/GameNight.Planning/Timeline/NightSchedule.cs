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
    /// <summary>The last pie may use this part of the effort.</summary>
    private const double PartForLastPie = 0.5;

    /// <summary>So may the best starts in the order that was found for it: nearly always a hundredth is enough.</summary>
    private const double PartInOrder = 0.15;

    /// <summary>
    /// What is left is for other orders, which beat the best starts of a good one by little: a night that needs more is one of dozens of
    /// pies, where nobody would feel it.
    /// </summary>
    private const double PartForConvenience = 1 - PartForLastPie - PartInOrder;

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
        List<IEnumerable<(int First, int Last)>> ranges =
            [.. steps.Steps.Select((step, i) => steps.Night.Away.FreeStarts(earliest[i], latest[i], step.FreeMinutes))];
        var model = Model(steps, lengths, ranges, steps.Lags, steps.Night.Crew, work);
        var lastServe = steps.Pies[^1].Serve;
        var limit = effort.Slices * Effort.SliceDeterministicTime;
        var best = hint;
        var isLastProved = hint is not null && hint[lastServe] == earliest[lastServe];
        if (!isLastProved)
        {
            model.MinimizeStart(lastServe);
            var found = model.Run(best, limit * PartForLastPie, cancellation, SearchWay.Propagated);
            best = found.Starts ?? best;
            isLastProved = found is { Starts: not null, IsProved: true };
        }

        var isProved = false;
        var gap = 100.0;
        var used = 0.0;
        if (best is not null)
        {
            var inOrder = new ScheduleModel(lengths, ranges, steps.Lags.Concat(InOrder(steps, lengths, best, steps.Night.Crew, work)), steps.Stations);
            inOrder.NotAfter(lastServe, best[lastServe]);
            MinimizeInconvenience(inOrder, terms, steps.Steps.Count);
            best = inOrder.Run(best, limit * PartInOrder, cancellation).Starts ?? best;
            used = inOrder.Used;
            model.NotAfter(lastServe, best[lastServe]);
            MinimizeInconvenience(model, terms, steps.Steps.Count);
            var found = model.Run(best, limit * PartForConvenience, cancellation);
            best = found.Starts ?? best;
            isProved = isLastProved && found is { Starts: not null, IsProved: true };
            gap = isProved ? 0 : found.GapPercent;
        }

        slices = Math.Clamp((int)Math.Ceiling((model.Used + used) / Effort.SliceDeterministicTime), 1, effort.Slices);
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

    /// <summary>
    /// Lags that keep each person's work one after the other as it is, and so make people no resource any more: what is left is
    /// quickly the best.
    /// </summary>
    private static IEnumerable<Lag> InOrder(NightSteps steps, int[] lengths, int[] starts, Crew crew, IReadOnlyList<int> work)
    {
        // What takes no time takes nobody's hands from anything.
        List<int> lasting = [.. work.Where(i => lengths[i] > 0)];
        var by = crew.Assign(
            [.. lasting.Select(i => (steps.Steps[i].Kind, steps.Steps[i].Number, starts[i], starts[i] + lengths[i]))], evening: starts[steps.Waves[0]]);
        foreach (var mine in lasting.Zip(by).GroupBy(one => one.Second, one => one.First))
        {
            List<int> order = [.. mine.OrderBy(i => starts[i]).ThenBy(i => starts[i] + lengths[i])];
            foreach (var (before, next) in order.Zip(order.Skip(1)))
            {
                yield return new Lag(before, next, lengths[before]);
            }
        }
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
