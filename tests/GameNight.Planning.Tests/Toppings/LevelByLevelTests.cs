using CsCheck;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>The aim that raises eater after eater, against every split there is of small nights.</summary>
public class LevelByLevelTests
{
    private const int Nights = 500;
    private const double RoundOff = 1e-9;

    private static readonly Menu Small = new(
        [AMenu.Red, AMenu.Blend, AMenu.NoCheese, .. AMenu.Toppings.Where(topping => topping.Id is "mushrooms" or "salami" or "anchovies" or "egg")],
        MostToppings: 1,
        AMenu.Wheat);

    private static readonly string[] ToppingIds = [.. Small.Of(MenuRole.Topping).Select(topping => topping.Id)];

    private static readonly DietaryNeeds[] Needs =
        [DietaryNeeds.None, DietaryNeeds.None, ASplit.Vegan, ASplit.NoMilk, new([], [Allergen.Fish], [])];

    /// <summary>Two to four eaters and one or two pies of four slices, in halves.</summary>
    private static readonly Gen<SplitRequest> SmallNights =
        from pies in Gen.Int[1, 2]
        from guests in Gen.Select(Gen.Int[0, Needs.Length - 1], Gen.Int[1, 2], Gen.Int[0, 4].Array[ToppingIds.Length]).Array[2, 2 * pies]
        select new SplitRequest(
            [
                .. guests.Select((guest, index) => new SplitEater(
                    "e" + index,
                    guest.Item2,
                    Needs[guest.Item1],
                    guest.Item3.Select((liking, topping) => (ToppingIds[topping], (Liking)liking)).ToDictionary())),
            ],
            [],
            Small,
            pies,
            SlicesPerPie: 4,
            SplitAim.EveryLevel);

    [Fact]
    public void Gives_the_best_ordered_levels_of_all_splits_there_are() => SmallNights.Sample(
        night =>
        {
            var split = SplitPlanner.For(night, Effort.Usual, CancellationToken.None);

            Assert.Equal(SplitQuality.Proved, split.Quality);
            Assert.Equal(EverySplit.BestLevels(night), LevelsOf(split));
        },
        iter: Nights);

    /// <summary>
    /// The referee itself, on a published example: four goods worth (5, 3, 0, 0) to one and (2, 4, 9, 0) to the other are
    /// shared best as (8, 9). Source: documentation of the package cvxpy-leximin.
    /// </summary>
    [Fact]
    public void The_order_that_counts_is_that_of_the_literature()
    {
        int[] first = [5, 3, 0, 0], second = [2, 4, 9, 0];
        var best = Enumerable.Range(0, 16)
            .Select(share => (
                First: Enumerable.Range(0, 4).Where(good => (share >> good & 1) == 1).Sum(good => first[good]),
                Second: Enumerable.Range(0, 4).Where(good => (share >> good & 1) == 0).Sum(good => second[good])))
            .Aggregate((one, other) =>
                EverySplit.Compare([.. new[] { one.First, one.Second }.Order()], [.. new[] { other.First, other.Second }.Order()]) >= 0 ? one : other);

        Assert.Equal((8, 9), best);
    }

    [Fact]
    public void Is_never_behind_the_other_aim_at_the_level_that_differs_first() => ASplit.Nights(Gen.Int[2, 9], mostSlices: 4).Sample(
        night =>
        {
            var usual = SplitPlanner.For(night, Effort.Usual, CancellationToken.None);
            var levels = SplitPlanner.For(night with { Aim = SplitAim.EveryLevel }, Effort.Usual, CancellationToken.None);
            if (usual.Quality == SplitQuality.Proved && levels.Quality == SplitQuality.Proved)
            {
                Assert.True(EverySplit.Compare(LevelsOf(levels), LevelsOf(usual)) >= 0);
            }
        },
        iter: 40);

    [Fact]
    public void An_eater_who_may_have_no_topping_gets_plain() => SmallNights.Sample(
        night =>
        {
            var bound = night with
            {
                Menu = night.Menu with
                {
                    Items = [.. night.Menu.Items.Select(item => item.Role == MenuRole.Topping ? item with { Composition = AMenu.Of([Allergen.Celery], Enum.GetValues<Diet>()) } : item)],
                },
                Eaters = [night.Eaters[0] with { Needs = new DietaryNeeds([], [Allergen.Celery], []) }, .. night.Eaters.Skip(1)],
            };

            var split = SplitPlanner.For(bound, Effort.Usual, CancellationToken.None);

            var plain = split.Combinations.Where(combination => combination.ToppingIds.Count == 0).Select(combination => combination.Letter);
            Assert.All(split.Servings.Where(serving => serving.EaterId == bound.Eaters[0].Id), serving => Assert.Contains(serving.Letter, plain));
            Assert.Equal(bound.Eaters[0].Slices, split.SlicesOf(bound.Eaters[0].Id));
        },
        iter: 30);

    private static int[] LevelsOf(ToppingSplit split) =>
    [
        .. split.Satisfactions.Where(eater => eater.BestPossible > 0)
            .Select(eater => (int)Math.Floor((eater.Score / eater.BestPossible * SplitDraft.Levels) + RoundOff)).Order(),
    ];
}

/// <summary>Every split of a small night, one by one: what no solver may beat and none may miss.</summary>
internal static class EverySplit
{
    /// <summary>The best ordered vector of levels, worst first.</summary>
    public static int[] BestLevels(SplitRequest night)
    {
        var menu = new MenuLists(night.Menu);
        var palates = night.Eaters.Select(eater => new Palate(eater.Needs, eater.Likes, menu)).ToArray();
        MenuChoice[] choices =
        [
            .. from cheese in Enumerable.Range(0, menu.Cheeses.Count)
            from topping in Enumerable.Range(-1, menu.Toppings.Count + 1)
            select new MenuChoice(0, cheese, topping < 0 ? [] : [topping]),
        ];
        var scores = palates.Select(palate => choices.Select(choice => palate.Score(choice) ?? -1).ToArray()).ToArray();
        int[]? best = null;
        Bake(new int[choices.Length], 0, 2 * night.Pies);
        return best!;

        void Bake(int[] left, int choice, int halves)
        {
            if (choice == choices.Length - 1)
            {
                left[choice] = halves * night.SlicesPerPart;
                Serve(left, 0, []);
                left[choice] = 0;
                return;
            }

            for (var here = 0; here <= halves; here++)
            {
                left[choice] = here * night.SlicesPerPart;
                Bake(left, choice + 1, halves - here);
            }

            left[choice] = 0;
        }

        void Serve(int[] left, int eater, int[] levels)
        {
            if (eater == palates.Length)
            {
                int[] ordered = [.. levels.Order()];
                best = best is null || Compare(ordered, best) > 0 ? ordered : best;
                return;
            }

            Eat(left, eater, 0, night.Eaters[eater].Slices, 0, levels);
        }

        void Eat(int[] left, int eater, int choice, int hungry, int score, int[] levels)
        {
            if (hungry == 0)
            {
                var most = night.Eaters[eater].Slices * palates[eater].BestPossible;
                Serve(left, eater + 1, most == 0 ? levels : [.. levels, score * SplitDraft.Levels / most]);
                return;
            }

            if (choice == choices.Length)
            {
                return;
            }

            var mostHere = scores[eater][choice] < 0 ? 0 : Math.Min(left[choice], hungry);
            for (var slices = 0; slices <= mostHere; slices++)
            {
                left[choice] -= slices;
                Eat(left, eater, choice + 1, hungry - slices, score + (slices * Math.Max(0, scores[eater][choice])), levels);
                left[choice] += slices;
            }
        }
    }

    /// <summary>Which ordered vector is better: the first place that differs decides.</summary>
    public static int Compare(IReadOnlyList<int> one, IReadOnlyList<int> other) =>
        one.Zip(other, (first, second) => first.CompareTo(second)).FirstOrDefault(sign => sign != 0);
}
