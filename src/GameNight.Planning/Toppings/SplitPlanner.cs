namespace GameNight.Planning.Toppings;

/// <summary>
/// Plans which combination goes on which pie and whose slices are where. The same request and effort always give the same
/// split, in whatever order eaters and groups are listed.
/// </summary>
public static class SplitPlanner
{
    public const int MostPies = 200;

    /// <summary>
    /// A feasible split at once with <see cref="Effort.Quick"/>, else the best one found within the effort, which is never
    /// worse for the worst-off eater. What cannot be had is said in <see cref="ToppingSplit.Conflicts"/>.
    /// </summary>
    /// <exception cref="ArgumentException">The request contradicts itself: an id twice, a count out of range.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was cancelled.</exception>
    public static ToppingSplit For(SplitRequest request, Effort effort, CancellationToken cancellation)
    {
        Demand(request);
        cancellation.ThrowIfCancellationRequested();
        var asked = request;
        (request, var gone) = StockRules.Offered(request);
        var missing = new[] { MenuRole.Base, MenuRole.Cheese }.Where(role => !request.Menu.Of(role).Any()).ToArray();
        if (missing.Length > 0)
        {
            Conflict[] incomplete = [.. gone, .. missing.Select(role => new MenuIncomplete(role))];
            return new ToppingSplit([], [], [], [], QualityWithoutSearch(effort), GapPercent: 0, SolverSlices: 0, incomplete);
        }

        var basis = Seating.For(request, cancellation);
        var quick = QuickSplit.Of(basis, cancellation);
        var outcome = effort == Effort.Quick || basis.Eaters.Count == 0
            ? new SplitOutcome(quick, QualityWithoutSearch(effort), 0, 0)
            : ToppingSplitModel.Improve(basis, quick, effort, cancellation);

        var conflicts = gone.Concat(basis.Conflicts).Concat(ShortcomingsOf(outcome.Draft)).ToList();
        if (effort != Effort.Quick)
        {
            conflicts.AddRange(ClashFinder.For(asked, conflicts, cancellation));
        }

        var split = PieLayout.Of(outcome, conflicts);
        ToppingSplitCheck.Demand(request, split);
        return split;
    }

    /// <summary>How many pies of the split lie on the second dough, without any search: whatever the effort, so many they are.</summary>
    public static int PiesOnSecondDough(SplitRequest request)
    {
        (request, _) = StockRules.Offered(request);
        return request.Menu.Of(MenuRole.Base).Any() && request.Menu.Of(MenuRole.Cheese).Any() ? Seating.PiesOnSecondDough(request) : 0;
    }

    /// <summary>Who would go short, found with little effort: only whether everybody can be fed is asked.</summary>
    internal static IReadOnlyList<Conflict> Shortfalls(SplitRequest request, Effort effort, CancellationToken cancellation)
    {
        (request, _) = StockRules.Offered(request);
        if (!request.Menu.Of(MenuRole.Base).Any() || !request.Menu.Of(MenuRole.Cheese).Any())
        {
            return [.. request.Eaters.Where(eater => eater.Slices > 0).Select(eater => new NothingPermitted(eater.Id, NothingPermittedBecause.Base))];
        }

        var basis = Seating.For(request, cancellation);
        var quick = QuickSplit.Of(basis, cancellation);
        var draft = quick.Missing == 0 && quick.Uncovered == 0 ? quick : ToppingSplitModel.Feed(basis, quick, effort, cancellation);
        return [.. basis.Conflicts, .. ShortcomingsOf(draft)];
    }

    /// <summary>Where there is nothing to choose, the only answer is the best one.</summary>
    private static SplitQuality QualityWithoutSearch(Effort effort) =>
        effort == Effort.Quick ? SplitQuality.Quick : SplitQuality.Proved;

    private static IEnumerable<Conflict> ShortcomingsOf(SplitDraft draft)
    {
        var basis = draft.Basis;
        for (var eater = 0; eater < basis.Eaters.Count; eater++)
        {
            var (id, wanted, palate) = (basis.Eaters[eater].Id, basis.Eaters[eater].Slices, basis.Eaters[eater].Palate);
            if (draft.EatenBy(eater) < wanted)
            {
                yield return new EaterShortOfSlices(id, draft.EatenBy(eater), wanted);
            }

            if (palate.OnlyUnwantedToppings || (draft.EatenBy(eater) > 0 && draft.ScoreOf(eater) == 0))
            {
                yield return new OnlyUnwantedLeft(id);
            }
        }

        foreach (var overdrawn in StockRules.Overdrawn(basis, draft.Units))
        {
            yield return overdrawn;
        }

        foreach (var goal in basis.Goals.Where(goal => draft.Covering(goal) < goal.Wanted))
        {
            yield return new GroupShortOfSlices(goal.EaterIds, draft.Covering(goal), goal.Wanted);
        }
    }

    private static void Demand(SplitRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentOutOfRangeException.ThrowIfNegative(request.Pies);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(request.Pies, MostPies);
        ArgumentOutOfRangeException.ThrowIfLessThan(request.SlicesPerPie, 4);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(request.SlicesPerPie, 16);
        ArgumentOutOfRangeException.ThrowIfNegative(request.Menu.MostToppings);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(request.Menu.MostToppings, 5);
        DemandUnique(request.Eaters.Select(eater => eater.Id), "Every eater has an id of their own.");
        DemandUnique(request.Menu.Items.Select(item => item.Id), "Every menu item has an id of its own.");
        if (request.Eaters.Any(eater => eater.WeightPercent is < FairOverTime.UsualPercent or > FairOverTime.MostPercent))
        {
            throw new ArgumentException("An eater weighs 100 to 150.", nameof(request));
        }

        if (request.Eaters.Any(eater => eater.Slices < 0))
        {
            throw new ArgumentException("Nobody eats fewer than no slices.", nameof(request));
        }

        void DemandUnique(IEnumerable<string> ids, string message)
        {
            if (ids.GroupBy(id => id, StringComparer.Ordinal).Any(same => same.Count() > 1))
            {
                throw new ArgumentException(message, nameof(request));
            }
        }
    }
}
