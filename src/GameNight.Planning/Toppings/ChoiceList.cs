namespace GameNight.Planning.Toppings;

/// <summary>
/// Every choice worth considering before the catalogue is picked: all small sets of toppings, on those pairs of base and
/// cheese that do something for somebody.
/// </summary>
internal static class ChoiceList
{
    /// <summary>
    /// At most this many topping sets of one size: all triples of 21 toppings. A longer menu is cut to its best liked
    /// toppings for the larger sets, never for the single ones.
    /// </summary>
    private const int MostSetsOfOneSize = 1_500;

    /// <summary>Fewer toppings first, then in menu order, so that ties go to the simpler choice.</summary>
    public static IReadOnlyList<MenuChoice> All(MenuLists menu, IReadOnlyList<Palate> palates)
    {
        var pairs = UsefulPairs(menu, palates);
        var byLiking = Enumerable.Range(0, menu.Toppings.Count)
            .OrderByDescending(topping => palates.Sum(palate => BestScoreWith(topping, pairs, palate)))
            .ThenBy(topping => topping)
            .ToArray();

        var choices = new List<MenuChoice>();
        for (var size = 0; size <= menu.Menu.MostToppings && size <= byLiking.Length; size++)
        {
            var toppings = byLiking[..PrefixFor(size, byLiking.Length)].Order().ToArray();
            foreach (var set in SetsOf(toppings, size).Where(set => !menu.NeverTogether(set)))
            {
                Add(set);
            }
        }

        // A long menu is cut to its best liked toppings; what has a name stays.
        foreach (var named in menu.NamedSets().Where(named => !choices.Exists(choice => choice.Toppings.SequenceEqual(named))))
        {
            Add(named);
        }

        return choices;

        void Add(int[] set) =>
            choices.AddRange(pairs.Select(pair => new MenuChoice(pair.Base, pair.Cheese, set)).Where(choice => !menu.IsTooWet(choice)));
    }

    /// <summary>Leaves out a pair when an earlier one is at least as good for everybody; the house pair always stays.</summary>
    private static List<(int Base, int Cheese)> UsefulPairs(MenuLists menu, IReadOnlyList<Palate> palates)
    {
        var pairs = new List<(int Base, int Cheese)>();
        var kept = new List<int[]>();
        for (var baseIndex = 0; baseIndex < menu.Bases.Count; baseIndex++)
        {
            for (var cheese = 0; cheese < menu.Cheeses.Count; cheese++)
            {
                var plain = new MenuChoice(baseIndex, cheese, []);
                var scores = palates.Select(palate => palate.Score(plain) ?? -1).ToArray();
                if (!kept.Exists(earlier => earlier.Zip(scores).All(both => both.First >= both.Second)))
                {
                    pairs.Add((baseIndex, cheese));
                    kept.Add(scores);
                }
            }
        }

        return pairs.Count > 0 ? pairs : [(0, 0)];
    }

    private static int BestScoreWith(int topping, List<(int Base, int Cheese)> pairs, Palate palate) =>
        pairs.Max(pair => palate.Score(new MenuChoice(pair.Base, pair.Cheese, [topping])) ?? 0);

    private static int PrefixFor(int size, int toppings)
    {
        var prefix = toppings;
        while (prefix > size && NumberOfSets(prefix, size) > MostSetsOfOneSize)
        {
            prefix--;
        }

        return size <= 1 ? toppings : prefix;
    }

    private static long NumberOfSets(int toppings, int size)
    {
        var sets = 1L;
        for (var taken = 0; taken < size && sets <= MostSetsOfOneSize * 1_000L; taken++)
        {
            sets = sets * (toppings - taken) / (taken + 1);
        }

        return sets;
    }

    private static IEnumerable<int[]> SetsOf(int[] toppings, int size)
    {
        var places = Enumerable.Range(0, size).ToArray();
        while (true)
        {
            yield return [.. places.Select(place => toppings[place])];

            var last = size - 1;
            while (last >= 0 && places[last] == toppings.Length - size + last)
            {
                last--;
            }

            if (last < 0)
            {
                yield break;
            }

            places[last]++;
            for (var next = last + 1; next < size; next++)
            {
                places[next] = places[next - 1] + 1;
            }
        }
    }
}
