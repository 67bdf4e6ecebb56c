namespace GameNight.Planning.Toppings;

/// <summary>
/// The few dozen choices a split picks from, out of the thousands a menu allows. On sixteen measured nights of 12 and 20
/// eaters, 150 choices did no more for the worst-off eater than 30, and took five to ten times as long to prove; at 40
/// eaters 40 choices did better than 30 on one night in eight. On very large nights a proof within the usual effort needs
/// fewer, and there it does cost some eaters a point.
/// </summary>
internal static class CombinationCatalogue
{
    private const int Largest = 60;

    /// <summary>Choices by liking on top of those that hard rules demand.</summary>
    private const int AtLeastByLiking = 10;

    /// <summary>
    /// First what hard rules demand: the plain house choice, the choice most eaters may have, and for every party (own pie,
    /// must-not group, eaters who are served together) the best choice all of it may have; and what has a name in this house.
    /// Then greedily whatever most
    /// raises the sum over the eaters of the square root of their best score so far; when nothing does, the same again
    /// among the rest, so that everybody has a second and third good choice.
    /// </summary>
    public static IReadOnlyList<MenuChoice> For(
        MenuLists menu, IReadOnlyList<Palate> eaters, IReadOnlyList<Party> parties, CancellationToken cancellation)
    {
        var everybody = eaters.Concat(parties.SelectMany(party => party.Palates)).ToArray();
        var choices = ChoiceList.All(menu, everybody);
        var scores = new sbyte[choices.Count, eaters.Count];
        for (var choice = 0; choice < choices.Count; choice++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (var eater = 0; eater < eaters.Count; eater++)
            {
                scores[choice, eater] = (sbyte)(eaters[eater].Score(choices[choice]) ?? -1);
            }
        }

        var chosen = new SortedSet<int> { 0 };
        if (eaters.Count > 0)
        {
            chosen.Add(Broadest(scores));
        }

        var liking = Enumerable.Range(0, choices.Count)
            .Select(choice => Enumerable.Range(0, eaters.Count).Sum(eater => Root(scores[choice, eater])))
            .ToArray();
        foreach (var party in parties)
        {
            cancellation.ThrowIfCancellationRequested();
            chosen.UnionWith(BestFor(party, choices, liking));
        }

        foreach (var named in menu.NamedSets())
        {
            chosen.UnionWith(BestOf(named, choices, scores, liking));
        }

        Cover(scores, chosen, Math.Clamp(chosen.Count + AtLeastByLiking, Wanted(eaters.Count), Largest), cancellation);
        return [.. chosen.Select(choice => choices[choice])];
    }

    private static int Wanted(int eaters) => eaters switch
    {
        <= 24 => 30,
        <= 60 => 40,
        _ => 24,
    };

    private static int Broadest(sbyte[,] scores)
    {
        var (best, bestEaters) = (0, -1);
        for (var choice = 0; choice < scores.GetLength(0); choice++)
        {
            var mayHaveIt = 0;
            for (var eater = 0; eater < scores.GetLength(1); eater++)
            {
                mayHaveIt += scores[choice, eater] >= 0 ? 1 : 0;
            }

            if (mayHaveIt > bestEaters)
            {
                (best, bestEaters) = (choice, mayHaveIt);
            }
        }

        return best;
    }

    /// <summary>
    /// The choices the whole party may have with the highest sum of square roots: the party's own first, then everybody's.
    /// </summary>
    private static IEnumerable<int> BestFor(Party party, IReadOnlyList<MenuChoice> choices, int[] liking) =>
        Enumerable.Range(0, choices.Count)
            .Where(choice => party.Palates.All(palate => palate.Permits(choices[choice])))
            .Select(choice => (
                Choice: choice,
                Own: party.Palates.Sum(palate => Root(palate.Score(choices[choice]) ?? -1))))
            .OrderByDescending(candidate => candidate.Own)
            .ThenByDescending(candidate => liking[candidate.Choice])
            .ThenBy(candidate => candidate.Choice)
            .Take(party.Choices)
            .Select(candidate => candidate.Choice);

    /// <summary>A named set on the base and cheese that please most; nothing where nobody may have it or it is too wet.</summary>
    private static IEnumerable<int> BestOf(int[] named, IReadOnlyList<MenuChoice> choices, sbyte[,] scores, int[] liking) =>
        Enumerable.Range(0, choices.Count)
            .Where(choice => choices[choice].Toppings.SequenceEqual(named)
                && Enumerable.Range(0, scores.GetLength(1)).Any(eater => scores[choice, eater] >= 0))
            .OrderByDescending(choice => liking[choice])
            .ThenBy(choice => choice)
            .Take(1);

    private static void Cover(sbyte[,] scores, SortedSet<int> chosen, int size, CancellationToken cancellation)
    {
        var (choices, eaters) = (scores.GetLength(0), scores.GetLength(1));
        while (chosen.Count < Math.Min(size, choices))
        {
            // One layer: every eater's best score so far starts from nothing.
            var best = Enumerable.Repeat((sbyte)-1, eaters).ToArray();
            var waiting = new PriorityQueue<int, (int Gain, int Choice)>();
            foreach (var choice in Enumerable.Range(0, choices).Where(choice => !chosen.Contains(choice)))
            {
                waiting.Enqueue(choice, (-Gain(choice), choice));
            }

            // Gains only shrink within a layer, so a choice whose fresh gain still leads the queue is the best one.
            while (chosen.Count < size && waiting.TryDequeue(out var choice, out var promised))
            {
                cancellation.ThrowIfCancellationRequested();
                var fresh = (-Gain(choice), choice);
                if (fresh.Item1 == promised.Gain)
                {
                    if (promised.Gain == 0)
                    {
                        break;
                    }

                    chosen.Add(choice);
                    for (var eater = 0; eater < eaters; eater++)
                    {
                        best[eater] = Math.Max(best[eater], scores[choice, eater]);
                    }
                }
                else
                {
                    waiting.Enqueue(choice, fresh);
                }
            }

            if (eaters == 0 || best.All(score => score < 0))
            {
                return;
            }

            int Gain(int choice)
            {
                var gain = 0;
                for (var eater = 0; eater < eaters; eater++)
                {
                    gain += Math.Max(0, Root(scores[choice, eater]) - Root(best[eater]));
                }

                return gain;
            }
        }
    }

    /// <summary>Thousandths of the square root, one more than the score so that "may have it" beats "must not".</summary>
    private static int Root(int score) => Roots[score + 1];

    private static readonly int[] Roots =
        [.. Enumerable.Range(0, Palate.HighestScore + 2).Select(score => (int)Math.Round(1_000 * Math.Sqrt(score)))];
}

/// <summary>
/// Eaters for whom the catalogue must hold something all of them may have: <paramref name="Choices"/> of it, if there are.
/// </summary>
internal sealed record Party(IReadOnlyList<Palate> Palates, int Choices);
