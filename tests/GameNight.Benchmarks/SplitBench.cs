using System.Diagnostics;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using Google.OrTools.Sat;

/// <summary>
/// The topping split at growing sizes: the first answer, then the worst-off proved, then everybody together; and the same
/// catalogue written down the plain way, sector by sector with products, in the same run. One worker, deterministic limits.
/// </summary>
internal static class SplitBench
{
    private const int Runs = 3;

    /// <summary>Deterministic solver time for the plain way.</summary>
    private const double PlainLimit = 60;

    public static void Run()
    {
        Console.WriteLine();
        Console.WriteLine($"{"split",-26} {"first answer, ms",18} {"all, ms",10} {"gap %",7} {"quality",-10} {"combinations",12} {"clashes",7}   {"the plain way",-40}");
        Row("20 guests, 8 pies", Night(20, 8, toppings: 10), plain: true);
        Row("40 guests, 25 pies", Night(40, 25, toppings: 14), plain: true);
        Row("200 guests, 80 pies", Night(200, 80, toppings: 14), plain: false);
        Row("200 guests, a clash", WithClash(Night(200, 80, toppings: 14)), plain: false);
    }

    /// <summary>One who avoids what is in every dough: the rules that clash are looked for too.</summary>
    private static SplitRequest WithClash(SplitRequest request) =>
        request with { Eaters = [.. request.Eaters.Skip(1), request.Eaters[0] with { Needs = new([], [Allergen.GlutenCereals], []) }] };

    /// <summary>Random nights through solver and plain-code check; a breach throws.</summary>
    public static int Soak(int nights)
    {
        var random = new Random(6);
        var watch = Stopwatch.StartNew();
        for (var night = 1; night <= nights; night++)
        {
            var guests = random.Next(0, 10);
            var request = Night(guests, random.Next(0, 5), random.Next(0, 8), random.Next(), likesAll: false) with { Parts = new[] { 1, 2, 4 }[random.Next(3)] };
            ToppingSplitCheck.Demand(request, SplitPlanner.For(request, new Effort(1), CancellationToken.None));
            if (night % 1000 == 0)
            {
                Console.WriteLine($"{night} nights, {watch.Elapsed.TotalMinutes:0.0} min, no breach");
            }
        }

        Console.WriteLine($"{nights} nights, no breach");
        return 0;
    }

    private static void Row(string name, SplitRequest request, bool plain)
    {
        var (_, first) = Timed(() => SplitPlanner.For(request, Effort.Quick, CancellationToken.None));
        var (split, all) = Timed(() => SplitPlanner.For(request, new Effort(40), CancellationToken.None));
        Console.WriteLine(
            $"{name,-26} {first,18:0.0} {all,10:0} {split.GapPercent,7:0.00} {split.Quality,-10} {split.Combinations.Count,12} {split.Conflicts.OfType<SplitRulesClash>().Count(),7}   "
            + (plain ? Plain(request, all) : "not tried: out of reach"));
    }

    /// <summary>
    /// Each sector has a number for its combination, and each guest so many slices of each sector; what that is worth is the
    /// product of the two, looked up. Only the worst-off is asked for.
    /// </summary>
    private static string Plain(SplitRequest request, double ours)
    {
        var basis = Seating.For(request, CancellationToken.None);
        var open = basis.Sets.Count - 1;
        var supplies = Enumerable.Range(0, basis.Supplies.Count).Where(supply => basis.Supplies[supply].Set == open).ToList();
        var model = new CpModel();
        var worstOff = model.NewIntVar(0, SplitDraft.WorstOffScale, "worst");
        var sectors = Enumerable.Range(0, basis.Sets[open].Units).Select(sector => model.NewIntVar(0, supplies.Count - 1, $"sector{sector}")).ToList();
        var eaten = new IntVar[basis.Eaters.Count, sectors.Count];
        foreach (var eater in Enumerable.Range(0, basis.Eaters.Count).Where(eater => basis.Regular[eater].All(supply => basis.Supplies[supply].Set == open)))
        {
            var worth = new List<IntVar>();
            for (var sector = 0; sector < sectors.Count; sector++)
            {
                eaten[eater, sector] = model.NewIntVar(0, basis.SlicesPerUnit, $"slices{eater}-{sector}");
                var score = model.NewIntVar(-1, Palate.HighestScore, $"score{eater}-{sector}");
                model.AddElement(sectors[sector], supplies.Select(supply => (long)basis.Score(eater, supply)).ToList(), score);
                var isEaten = model.NewBoolVar($"eaten{eater}-{sector}");
                model.Add(eaten[eater, sector] == 0).OnlyEnforceIf(isEaten.Not());
                model.Add(score >= 0).OnlyEnforceIf(isEaten);
                var product = model.NewIntVar(-basis.SlicesPerUnit, Palate.HighestScore * basis.SlicesPerUnit, $"worth{eater}-{sector}");
                model.AddMultiplicationEquality(product, eaten[eater, sector], score);
                worth.Add(product);
            }

            model.Add(LinearExpr.Sum(Enumerable.Range(0, sectors.Count).Select(sector => eaten[eater, sector])) == basis.Eaters[eater].Slices);
            if (basis.Eaters[eater].Palate.BestPossible > 0)
            {
                model.Add(SplitDraft.WorstOffScale * LinearExpr.Sum(worth) >= basis.MostScore(eater) * worstOff);
            }
        }

        for (var sector = 0; sector < sectors.Count; sector++)
        {
            model.Add(LinearExpr.Sum(Enumerable.Range(0, basis.Eaters.Count).Select(eater => eaten[eater, sector]).Where(slices => slices is not null)) <= basis.SlicesPerUnit);
        }

        model.Maximize(worstOff);
        using var solver = new CpSolver { StringParameters = $"num_workers:1,random_seed:1,max_deterministic_time:{PlainLimit}" };
        var watch = Stopwatch.StartNew();
        var status = solver.Solve(model);
        var milliseconds = watch.Elapsed.TotalMilliseconds;
        return $"{milliseconds:0} ms, {status}, the worst-off alone: {milliseconds / ours:0.0} times ours";
    }

    private static (ToppingSplit Split, double Milliseconds) Timed(Func<ToppingSplit> work)
    {
        var split = work();
        var milliseconds = new List<double>();
        for (var run = 0; run < Runs; run++)
        {
            var watch = Stopwatch.StartNew();
            split = work();
            milliseconds.Add(watch.Elapsed.TotalMilliseconds);
        }

        milliseconds.Sort();
        return (split, milliseconds[Runs / 2]);
    }

    /// <summary>Three slices each, likes at random, three in ten with something they must not have.</summary>
    private static SplitRequest Night(int guests, int pies, int toppings, int seed = 1, bool likesAll = true)
    {
        var random = new Random(seed);
        var menu = SharedFolder.Tables.Menu;
        var items = menu.Items.Where(item => item.Role != MenuRole.Topping).Concat(menu.Items.Where(item => item.Role == MenuRole.Topping).Take(toppings))
            .Select(item => new MenuItem(Id(item.Name), item.Role, item.GramsPerCm2, item.Composition)).ToList();
        DietaryNeeds[] needs =
        [
            new([Diet.Vegan], [], []), new([Diet.Vegetarian], [], []), new([], [Allergen.Milk], []), new([], [Allergen.Fish], []),
            .. likesAll ? Array.Empty<DietaryNeeds>() : [new([], [], [Allergen.Nuts]), new([], [], [Allergen.Milk])],
        ];
        var eaters = Enumerable.Range(0, guests).Select(guest => new SplitEater(
            $"guest-{guest:000}",
            likesAll ? 3 : random.Next(0, 5),
            random.Next(10) < 3 ? needs[random.Next(needs.Length)] : DietaryNeeds.None,
            items.Where(item => item.Role == MenuRole.Topping).ToDictionary(item => item.Id, _ => (Liking)random.Next(5)))).ToList();
        var groups = eaters.Where(eater => !eater.Needs.IsNone && eater.Slices > 0).GroupBy(eater => eater.Needs)
            .Select(group => new MustNotGroup([.. group.Select(eater => eater.Id)], group.Key, group.Sum(eater => eater.Slices))).ToList();
        return new SplitRequest(eaters, groups, new Menu(items, 3, menu.Dough), pies, 8);
    }

    private static string Id(string name) => name.ToLowerInvariant().Replace(' ', '-');
}
