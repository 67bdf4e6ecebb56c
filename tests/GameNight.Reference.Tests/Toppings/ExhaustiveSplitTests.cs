using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Reference.Tests.Toppings;

/// <summary>
/// The worst-off eater of the solved split against the best possible one, computed by exhaustive enumeration of all sectors
/// and all ways to hand out their slices, for nights of 4 eaters and 2 halved pies.
/// </summary>
public class ExhaustiveSplitTests
{
    private const int Halves = 4;
    private const int SlicesPerHalf = 3;

    private static readonly Diet[] EveryDiet = Enum.GetValues<Diet>();

    private static readonly Menu SmallMenu = new(
        [
            new MenuItem("red", MenuRole.Base, 0.3, Composition.Nothing),
            new MenuItem("blend", MenuRole.Cheese, 0.3, Composition.Nothing with { Suits = [Diet.Vegetarian] }),
            new MenuItem("dairy-free", MenuRole.Cheese, 0.3, Composition.Nothing),
            new MenuItem("mushrooms", MenuRole.Topping, 0.1, Composition.Nothing),
            new MenuItem("ham", MenuRole.Topping, 0.1, new Composition([], [], [], [])),
            new MenuItem("egg", MenuRole.Topping, 0.1, new Composition([Allergen.Eggs], [], [], [Diet.Vegetarian])),
            new MenuItem("olives", MenuRole.Topping, 0.1, new Composition([], [], [], EveryDiet)),
        ],
        MostToppings: 2,
        Composition.Nothing);

    public static TheoryData<int> Seeds => [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_worst_off_eater_is_as_well_off_as_exhaustive_enumeration_finds_possible(int seed)
    {
        var night = Night(new Random(seed));

        var split = SplitPlanner.For(night, Effort.Usual, TestContext.Current.CancellationToken);

        Assert.Equal(SplitQuality.Proved, split.Quality);
        Assert.Equal(BestWorstOff(night), WorstOff(night, split));
    }

    private static SplitRequest Night(Random random)
    {
        DietaryNeeds[] needs =
            [DietaryNeeds.None, DietaryNeeds.None, new([Diet.Vegan], [], []), new([Diet.Vegetarian], [], []), new([], [Allergen.Eggs], [])];
        var eaters = Enumerable.Range(0, 4).Select(index => new SplitEater(
            "e" + index,
            random.Next(2, 4),
            needs[random.Next(needs.Length)],
            SmallMenu.Of(MenuRole.Topping).ToDictionary(topping => topping.Id, _ => (Liking)random.Next(5))));
        return new SplitRequest([.. eaters], [], SmallMenu, Pies: 2, SlicesPerPie: 2 * SlicesPerHalf);
    }

    private static int WorstOff(SplitRequest night, ToppingSplit split) => split.Satisfactions.Min(eater =>
    {
        var slices = night.Eaters.Single(wanted => wanted.Id == eater.EaterId).Slices;
        return (int)Math.Round(eater.Score * slices) * SplitDraft.WorstOffScale / (int)(slices * eater.BestPossible);
    });

    private static int BestWorstOff(SplitRequest night)
    {
        var menu = new MenuLists(night.Menu);
        var palates = night.Eaters.Select(eater => new Palate(eater.Needs, eater.Likes, menu)).ToArray();
        MenuChoice[] choices =
        [
            .. from cheese in Enumerable.Range(0, menu.Cheeses.Count)
            from set in Enumerable.Range(0, 1 << menu.Toppings.Count)
            let toppings = Enumerable.Range(0, menu.Toppings.Count).Where(topping => (set >> topping & 1) == 1).ToArray()
            where toppings.Length <= night.Menu.MostToppings
            select new MenuChoice(0, cheese, toppings),
        ];
        var best = -1;
        TryHalves([], 0);
        return best;

        void TryHalves(int[] halves, int from)
        {
            if (halves.Length == Halves)
            {
                Serve(halves, [.. halves.Select(_ => SlicesPerHalf)], eater: 0, worstSoFar: SplitDraft.WorstOffScale);
                return;
            }

            for (var choice = from; choice < choices.Length; choice++)
            {
                TryHalves([.. halves, choice], choice);
            }
        }

        // Every way to give this eater their slices from what is left, then the next eater; hopeless branches are cut.
        void Serve(int[] halves, int[] left, int eater, int worstSoFar)
        {
            if (eater == night.Eaters.Count)
            {
                best = worstSoFar;
                return;
            }

            Take(half: 0, slices: night.Eaters[eater].Slices, score: 0);

            void Take(int half, int slices, int score)
            {
                if (slices == 0)
                {
                    var worst = Math.Min(
                        worstSoFar, score * SplitDraft.WorstOffScale / (night.Eaters[eater].Slices * palates[eater].BestPossible));
                    if (worst > best)
                    {
                        Serve(halves, left, eater + 1, worst);
                    }

                    return;
                }

                if (half == Halves || score + (slices * palates[eater].BestPossible) == 0)
                {
                    return;
                }

                Take(half + 1, slices, score);
                if (palates[eater].Score(choices[halves[half]]) is { } each)
                {
                    for (var taken = 1; taken <= Math.Min(slices, left[half]); taken++)
                    {
                        left[half] -= taken;
                        Take(half + 1, slices - taken, score + (taken * each));
                        left[half] += taken;
                    }
                }
            }
        }
    }
}
