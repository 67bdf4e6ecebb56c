namespace GameNight.Planning.Toppings;

/// <summary>Turns counts into pies: parts become pies, combinations get letters, and every slice has a place.</summary>
internal static class PieLayout
{
    public static ToppingSplit Of(SplitOutcome outcome, IReadOnlyList<Conflict> conflicts)
    {
        var draft = outcome.Draft;
        var basis = draft.Basis;
        var letters = new Dictionary<int, string>();
        var pies = new List<PieOrder>();
        var servings = new List<Serving>();
        var eaten = new int[basis.Eaters.Count, basis.Supplies.Count];
        for (var set = 0; set < basis.Sets.Count; set++)
        {
            string[] ownPieFor = [.. basis.Sets[set].Owners.Select(owner => basis.Eaters[owner].Id)];
            foreach (var supplies in PiesOf(draft, set, firstPie: pies.Count + 1))
            {
                var number = pies.Count + 1;
                var sectors = new List<Sector>();
                foreach (var same in supplies.GroupBy(supply => supply).OrderByDescending(same => same.Count()))
                {
                    var letter = LetterOf(basis.Supplies[same.Key].Choice);
                    var slices = same.Count() * basis.SlicesPerUnit;
                    sectors.Add(new Sector(letter, slices));
                    servings.AddRange(Serve(same.Key, slices).Select(part => new Serving(part.EaterId, number, letter, part.Slices)));
                }

                pies.Add(new PieOrder(number, sectors, ownPieFor, basis.Sets[set].IsOnSecondDough ? true : null));
            }
        }

        return new ToppingSplit(
            [.. letters.Select(entry => Named(entry.Value, basis.Catalogue[entry.Key], basis.Menu))],
            pies,
            [.. servings.OrderBy(serving => serving.EaterId, StringComparer.Ordinal).ThenBy(serving => serving.PieNumber)],
            SatisfactionsOf(draft),
            outcome.Quality,
            outcome.GapPercent,
            outcome.SolverSlices,
            conflicts);

        string LetterOf(int choice)
        {
            if (!letters.TryGetValue(choice, out var letter))
            {
                letters[choice] = letter = Letter(letters.Count);
            }

            return letter;
        }

        // Whoever the pies are for comes first, so that what others take of them is what is left.
        IEnumerable<(string EaterId, int Slices)> Serve(int supply, int left)
        {
            var set = basis.Supplies[supply].Set;
            foreach (var eater in Enumerable.Range(0, basis.Eaters.Count).OrderBy(eater => basis.SeatOf(eater) == set ? 0 : 1))
            {
                var slices = Math.Min(left, draft.Eaten(eater, supply) - eaten[eater, supply]);
                if (slices > 0)
                {
                    left -= slices;
                    eaten[eater, supply] += slices;
                    yield return (basis.Eaters[eater].Id, slices);
                }
            }
        }
    }

    /// <summary>A, B, … Z, AA, AB, …</summary>
    internal static string Letter(int index) =>
        index < 26 ? ((char)('A' + index)).ToString() : Letter((index / 26) - 1) + (char)('A' + (index % 26));

    /// <summary>
    /// Each pie with the supply of each of its parts. Pinned parts stand on their pie, which is filled up with what leaves
    /// least to patch; then whole pies, the most frequent choice leading; then parts, the largest first, each pie with as few
    /// combinations as can be and neighbours in the catalogue, which are the most alike.
    /// </summary>
    private static List<int>[] PiesOf(SplitDraft draft, int set, int firstPie)
    {
        var basis = draft.Basis;
        var parts = basis.UnitsPerPie;
        var left = draft.Units.Select((units, supply) => basis.Supplies[supply].Set == set ? units : 0).ToArray();
        var pies = Enumerable.Range(0, basis.Sets[set].Pies).Select(_ => new List<int>()).ToArray();
        foreach (var pin in basis.Pinned.Where(pin => basis.Supplies[pin.Supply].Set == set))
        {
            Put(pies[pin.Pie - firstPie], pin.Supply, pin.Units);
        }

        foreach (var pie in pies.Where(pie => pie.Count > 0))
        {
            FillUp(pie);
        }

        foreach (var pie in pies.Where(pie => pie.Count == 0))
        {
            if (Largest() is { } whole)
            {
                Put(pie, whole, parts);
            }
            else
            {
                FillUp(pie);
            }
        }

        return pies;

        void Put(List<int> pie, int supply, int units)
        {
            pie.AddRange(Enumerable.Repeat(supply, units));
            left[supply] -= units;
        }

        // What fits exactly into what is still free, else the largest that fits, else a piece of the largest.
        void FillUp(List<int> pie)
        {
            while (pie.Count < parts)
            {
                var free = parts - pie.Count;
                var supply = Enumerable.Range(0, left.Length)
                    .Where(supply => left[supply] > 0)
                    .OrderBy(supply => pie.Contains(supply) ? 0 : 1)
                    .ThenBy(supply => Loose(supply) == free && pie.Count > 0 ? 0 : Loose(supply) > 0 && Loose(supply) <= free ? 1 : 2)
                    .ThenByDescending(Loose)
                    .ThenBy(supply => pie.Count == 0 ? supply : Math.Abs(supply - pie[0]))
                    .First();
                Put(pie, supply, Math.Min(free, Loose(supply) is > 0 and var loose ? loose : left[supply]));
            }
        }

        int Loose(int supply) => left[supply] % parts;

        int? Largest() => Enumerable.Range(0, left.Length)
            .Where(supply => left[supply] >= parts)
            .OrderByDescending(supply => draft.Units[supply])
            .ThenBy(supply => supply)
            .Cast<int?>()
            .FirstOrDefault();
    }

    private static Combination Named(string letter, MenuChoice choice, MenuLists menu) => new(
        letter,
        menu.Bases[choice.Base].Id,
        menu.Cheeses[choice.Cheese].Id,
        [.. choice.Toppings.Select(topping => menu.Toppings[topping].Id)]);

    private static Satisfaction[] SatisfactionsOf(SplitDraft draft) =>
    [
        .. draft.Basis.Eaters.Select((eater, index) => new Satisfaction(
            eater.Id, (double)draft.ScoreOf(index) / eater.Slices, eater.Palate.BestPossible)),
    ];
}
