namespace GameNight.Planning.Timeline;

/// <summary>
/// Looks for another order of the work that is left, when keeping the order breaks a limit or makes the table wait: above
/// all few minutes beyond the limits, then the last pie soon, then as little moved as can be. What is begun or done
/// stands; what somebody has in hand is not taken from them.
/// </summary>
internal static class Reordering
{
    /// <summary>
    /// Against one minute by which one step moves: a minute beyond a limit of food weighs as a hundred minutes of wait at the
    /// table, and one of those as all the moves of an evening that goes on much as before.
    /// </summary>
    private const long PriceOfMinuteOver = 100_000;
    private const long PriceOfMinuteLater = 1_000;

    /// <summary>
    /// With more work left than this only what comes next is put in another order, and the rest keeps its own: what dozens of pies
    /// later is done first is decided when it is near.
    /// </summary>
    private const int MostWork = 80;
    private const int NextWork = 25;

    /// <summary>The search need not look further than this after the end that the kept order has.</summary>
    private const int MinutesBeyond = 60;

    /// <param name="kept">The rest in its order.</param>
    /// <param name="notBefore">Per step, as <paramref name="kept"/> was given it.</param>
    /// <returns>Starts of all steps; null when no schedule was found within the effort.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was signalled.</exception>
    public static int[]? Of(NightSteps steps, Retiming kept, int[] notBefore, int hands, int now, Effort effort, CancellationToken cancellation)
    {
        var last = steps.Pies[^1].Serve;
        var soft = kept.Broken.Select(broken => broken.Lag).ToHashSet();
        var horizon = kept.Starts.Max() + MinutesBeyond;
        List<int> work = [.. steps.Steps.Index().Where(step => step.Item.Presence == Presence.Hands && !kept.IsDone(step.Index)).Select(step => step.Index).OrderBy(i => kept.Starts[i])];
        var isLong = work.Count > MostWork;
        var next = work.Take(isLong ? NextWork : work.Count).ToHashSet();
        var model = NightSchedule.Model(
            steps,
            kept.Lengths,
            [.. Enumerable.Range(0, kept.Starts.Length).Select(Starts)],
            steps.Lags.Where(lag => !soft.Contains(lag)).Concat(kept.Chains.Where(lag => !next.Contains(lag.To)))
                .Where(lag => !(Stands(lag.From) && Stands(lag.To)))
                .Select(lag => lag with { Minutes = kept.MinutesOf(lag) }),
            steps.Night.Crew.With(hands),
            work);

        var weights = new long[kept.Starts.Length];
        weights[last] = PriceOfMinuteLater;
        var overs = soft.Select(lag => new WeightedOver(PriceOfMinuteOver, lag.From, lag.To, kept.MinutesOf(lag))).ToList();
        for (var i = 0; i < kept.Starts.Length; i++)
        {
            // |x| = 2 max(x, 0) - x: what moves counts either way.
            if (!Stands(i))
            {
                weights[i]--;
                overs.Add(new WeightedOver(2, i, null, -kept.Starts[i]));
            }
        }

        model.MinimizeSum(weights, overs, 0);
        return model.Run(
            kept.Starts, effort.Slices * Effort.SliceDeterministicTime, cancellation, isLong ? SearchWay.Relaxed : SearchWay.ByCores).Starts;

        bool Stands(int i) => kept.IsFixed(i) || kept.IsDone(i) || kept.IsRunning(i);

        IEnumerable<(int First, int Last)> Starts(int i) => Stands(i)
            ? [(kept.Starts[i], kept.Starts[i])]
            : [.. kept.AwayFor(i).FreeStarts(EarliestOf(i), horizon, steps.Steps[i].FreeMinutes), (kept.Starts[i], kept.Starts[i])];

        // Guests are not served before the time they were told.
        int EarliestOf(int i) => Math.Max(i == steps.Pies[0].Serve ? kept.Starts[i] : now, notBefore[i]);
    }
}
