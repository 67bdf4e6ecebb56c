namespace GameNight.Planning.Toppings;

/// <summary>
/// A feasible split in milliseconds, without a solver. Sectors are chosen one by one, each for whoever can be served by
/// the fewest combinations, with the combination that pleases the rest most; then the slices are handed out with the
/// least regret. It is the first answer a host sees and the starting point of the better one.
/// </summary>
internal static class QuickSplit
{
    /// <summary>
    /// Two ways of valuing a sector: by how well it pleases, and by how many it can feed. The second wins on tight nights
    /// with many must-nots.
    /// </summary>
    public static SplitDraft Of(SplitBasis basis, CancellationToken cancellation)
    {
        var pleasing = Draft(basis, Pleasure, cancellation);
        if (pleasing.Missing == 0 && pleasing.Uncovered == 0)
        {
            return pleasing;
        }

        var feeding = Draft(basis, static (_, _, _) => 1, cancellation);
        return feeding.IsBetterThan(pleasing) ? feeding : pleasing;
    }

    private static SplitDraft Draft(SplitBasis basis, Func<SplitBasis, int, int, int> value, CancellationToken cancellation)
    {
        var units = new int[basis.Supplies.Count];
        var hunger = basis.Eaters.Select(eater => eater.Slices).ToArray();
        var used = new HashSet<int>();
        for (var set = 0; set < basis.Sets.Count; set++)
        {
            var supplies = Enumerable.Range(0, basis.Supplies.Count).Where(supply => basis.Supplies[supply].Set == set).ToArray();
            var eaters = Enumerable.Range(0, basis.Eaters.Count)
                .Where(eater => basis.Regular[eater].Length > 0 && basis.Supplies[basis.Regular[eater][0]].Set == set)
                .ToArray();
            var pinned = 0;
            foreach (var pin in basis.Pinned.Where(pin => basis.Supplies[pin.Supply].Set == set))
            {
                for (var unit = 0; unit < pin.Units; unit++)
                {
                    Bake(pin.Supply);
                }

                pinned += pin.Units;
            }

            for (var unit = pinned; unit < basis.Sets[set].Units; unit++)
            {
                cancellation.ThrowIfCancellationRequested();
                var allowed = Narrow(basis, supplies, eaters, units, hunger, used);
                var best = allowed
                    .Select(supply => (Supply: supply, Value: Serve(supply, serve: false)))
                    .OrderByDescending(candidate => candidate.Value)
                    .ThenByDescending(candidate => used.Contains(basis.Supplies[candidate.Supply].Choice))
                    .ThenBy(candidate => candidate.Supply)
                    .First().Supply;
                Bake(best);
            }

            void Bake(int supply)
            {
                units[supply]++;
                used.Add(basis.Supplies[supply].Choice);
                Serve(supply, serve: true);
            }

            // The value of one more unit: its slices go to whoever they please most.
            int Serve(int supply, bool serve)
            {
                var (left, total) = (basis.SlicesPerUnit, 0);
                var takers = eaters.Where(eater => hunger[eater] > 0 && basis.Score(eater, supply) >= 0)
                    .OrderByDescending(eater => value(basis, eater, supply))
                    .ThenBy(eater => basis.Regular[eater].Length)
                    .ThenBy(eater => eater);
                foreach (var eater in takers)
                {
                    var taken = Math.Min(left, hunger[eater]);
                    total += taken * value(basis, eater, supply);
                    left -= taken;
                    hunger[eater] -= serve ? taken : 0;
                    if (left == 0)
                    {
                        break;
                    }
                }

                return total;
            }
        }

        return HandOut(basis, units, cancellation);
    }

    /// <summary>
    /// The supplies worth a look for the next unit: permitted for the group that still lacks slices, else for the hungry
    /// eater with the fewest choices; no new combination once there are enough of them.
    /// </summary>
    private static int[] Narrow(
        SplitBasis basis, int[] supplies, int[] eaters, int[] units, int[] hunger, HashSet<int> used)
    {
        var forShortGroup = basis.Goals
            .Where(goal => goal.Supplies.Sum(supply => units[supply]) * basis.SlicesPerUnit < goal.Wanted)
            .Select(goal => goal.Supplies.Intersect(supplies).ToArray())
            .Where(permitted => permitted.Length > 0)
            .MinBy(permitted => permitted.Length);
        var hungriest = eaters.Where(eater => hunger[eater] > 0)
            .OrderBy(eater => basis.Regular[eater].Length)
            .ThenByDescending(eater => hunger[eater])
            .FirstOrDefault(-1);
        var wanted = forShortGroup ?? (hungriest < 0 ? supplies : basis.Regular[hungriest]);

        // What there is comes before what is wanted; only when all is gone is more taken than there is.
        var allowed = InStock(wanted) ?? InStock(supplies) ?? wanted;
        if (used.Count < basis.DistinctWanted)
        {
            return allowed;
        }

        var familiar = allowed.Where(supply => used.Contains(basis.Supplies[supply].Choice)).ToArray();
        return familiar.Length > 0 ? familiar : allowed;

        int[]? InStock(int[] from) => basis.Limits.Count == 0 ? from
            : from.Where(supply => basis.HasStock(supply, units)).ToArray() is { Length: > 0 } there ? there : null;
    }

    /// <summary>How near a slice comes to the eater's best, squared: what one loves counts more than what one accepts.</summary>
    private static int Pleasure(SplitBasis basis, int eater, int supply)
    {
        var best = basis.Eaters[eater].Palate.BestPossible;
        return best == 0 ? 1 : 1 + (basis.Score(eater, supply) * basis.Score(eater, supply) * 144 / (best * best));
    }

    private static SplitDraft HandOut(SplitBasis basis, int[] units, CancellationToken cancellation)
    {
        var (eaters, supplies) = (basis.Eaters.Count, basis.Supplies.Count);
        var (source, sink) = (eaters + supplies, eaters + supplies + 1);
        var flow = new SliceFlow(sink + 1);
        var edges = new int?[eaters, supplies];
        for (var supply = 0; supply < supplies; supply++)
        {
            if (units[supply] > 0)
            {
                flow.Connect(eaters + supply, sink, units[supply] * basis.SlicesPerUnit, regret: 0);
            }
        }

        for (var eater = 0; eater < eaters; eater++)
        {
            flow.Connect(source, eater, basis.Eaters[eater].Slices, regret: 0);
            Offer(eater, basis.Regular[eater]);
        }

        flow.Fill(source, sink, cancellation);

        // Only now, with owners served and open pies handed out, may others look at what is left on own pies.
        for (var eater = 0; eater < eaters; eater++)
        {
            Offer(eater, basis.LeftOver[eater]);
        }

        flow.Fill(source, sink, cancellation);

        var slices = new int[eaters, supplies];
        for (var eater = 0; eater < eaters; eater++)
        {
            for (var supply = 0; supply < supplies; supply++)
            {
                slices[eater, supply] = edges[eater, supply] is { } edge ? flow.Through(edge) : 0;
            }
        }

        return new SplitDraft(basis, units, slices);

        void Offer(int eater, int[] offered)
        {
            foreach (var supply in offered.Where(supply => units[supply] > 0))
            {
                edges[eater, supply] = flow.Connect(
                    eater, eaters + supply, basis.Eaters[eater].Slices, Regret(basis, eater, supply));
            }
        }
    }

    /// <summary>Squared like the pleasure, so that one bad slice for somebody weighs more than two fair ones.</summary>
    private static int Regret(SplitBasis basis, int eater, int supply)
    {
        var best = basis.Eaters[eater].Palate.BestPossible;
        var lost = best - basis.Score(eater, supply);
        return best == 0 ? 0 : lost * lost * 1_000 / (best * best);
    }
}
