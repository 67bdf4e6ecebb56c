namespace GameNight.Planning.Toppings;

/// <summary>Turns counts into pies: halves become pies, combinations get letters, and every slice has a place.</summary>
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
            var unitsPerPie = basis.Sets[set].Pies == 0 ? 1 : basis.Sets[set].Units / basis.Sets[set].Pies;
            foreach (var supplies in PiesOf(draft, set, unitsPerPie))
            {
                var number = pies.Count + 1;
                var sectors = new List<Sector>();
                foreach (var same in supplies.GroupBy(supply => supply))
                {
                    var letter = LetterOf(basis.Supplies[same.Key].Choice);
                    var slices = same.Count() * basis.SlicesPerUnit;
                    sectors.Add(new Sector(letter, slices));
                    servings.AddRange(Serve(same.Key, slices).Select(part => new Serving(part.EaterId, number, letter, part.Slices)));
                }

                pies.Add(new PieOrder(number, sectors, ownPieFor));
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

        // Owners come first, so that what others take from an own pie is what is left of it.
        IEnumerable<(string EaterId, int Slices)> Serve(int supply, int left)
        {
            var owners = basis.Sets[basis.Supplies[supply].Set].Owners;
            foreach (var eater in Enumerable.Range(0, basis.Eaters.Count).OrderBy(eater => owners.Contains(eater) ? 0 : 1))
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
    /// Whole pies first, the most frequent choice leading; then the odd halves, paired with their neighbour in the catalogue,
    /// which is the most alike.
    /// </summary>
    private static IEnumerable<int[]> PiesOf(SplitDraft draft, int set, int unitsPerPie)
    {
        var supplies = Enumerable.Range(0, draft.Basis.Supplies.Count)
            .Where(supply => draft.Basis.Supplies[supply].Set == set && draft.Units[supply] > 0)
            .OrderByDescending(supply => draft.Units[supply])
            .ThenBy(supply => supply)
            .ToArray();
        var whole = supplies.SelectMany(supply => Enumerable.Repeat(
            Enumerable.Repeat(supply, unitsPerPie).ToArray(), draft.Units[supply] / unitsPerPie));
        var halves = supplies.Where(supply => draft.Units[supply] % unitsPerPie > 0).Order().Chunk(2);
        return whole.Concat(halves);
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
