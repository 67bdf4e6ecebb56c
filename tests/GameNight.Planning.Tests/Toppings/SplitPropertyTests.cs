using System.Text.Json;
using CsCheck;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class SplitPropertyTests
{
    private const int QuickNights = 400;
    private const int SolvedNights = 60;
    private const int RepeatedNights = 15;

    /// <summary>The bench checks a hundred thousand.</summary>
    private const int CheckedNights = 2000;

    /// <summary>Room for the division of two small whole numbers.</summary>
    private const double RoundOff = 1e-9;

    private static readonly Gen<SplitRequest> SmallNights = ASplit.Nights(Gen.Int[0, 9], mostSlices: 4);

    [Fact]
    public void No_must_not_reaches_its_guest_in_a_quick_split() =>
        ASplit.Nights(Gen.Int[0, 40]).Sample(night => AssertSound(night, Plan(night, Effort.Quick)), iter: QuickNights);

    [Fact]
    public void No_must_not_reaches_its_guest_in_a_solved_split() =>
        SmallNights.Sample(night => AssertSound(night, Plan(night, new Effort(1))), iter: CheckedNights);

    [Fact]
    public void The_solved_split_is_never_worse_than_the_quick_one() =>
        SmallNights.Sample(
            night =>
            {
                var (quick, solved) = (Plan(night, Effort.Quick), Plan(night, new Effort(1)));

                Assert.True(solved.Servings.Sum(serving => serving.Slices) >= quick.Servings.Sum(serving => serving.Slices));
                if (quick.Conflicts.Count == 0)
                {
                    Assert.Empty(solved.Conflicts);
                    Assert.True(Worst(solved) >= Worst(quick) - (1.0 / SplitDraft.WorstOffScale) - RoundOff);
                }
            },
            iter: SolvedNights);

    [Fact]
    public void The_same_night_gives_the_same_split_in_whatever_order_it_is_listed() =>
        SmallNights.Sample(
            night =>
            {
                var reversed = night with { Eaters = [.. night.Eaters.Reverse()], Groups = [.. night.Groups.Reverse()] };
                foreach (var effort in new[] { Effort.Quick, new Effort(2) })
                {
                    Assert.Equal(TextOf(Plan(night, effort)), TextOf(Plan(night, effort)));
                    Assert.Equal(TextOf(Plan(night, effort)), TextOf(Plan(reversed, effort)));
                }
            },
            iter: RepeatedNights);

    [Fact]
    public void The_slices_of_solver_time_that_a_split_names_give_it_again() =>
        ASplit.Nights(Gen.Int[8, 14]).Where(night => night.Pies > 0).Sample(
            night =>
            {
                var split = Plan(night, Effort.Usual);

                Assert.Equal(TextOf(split), TextOf(Plan(night, new Effort(split.SolverSlices))));
            },
            iter: RepeatedNights);

    /// <summary>The avoided allergens are on toppings that are nobody's best, so the measure itself stays as it is.</summary>
    [Fact]
    public void Another_exclusion_never_makes_the_worst_off_better_off()
    {
        var menu = new Menu(
            [AMenu.Red, AMenu.Blend, .. AMenu.Toppings.Where(topping => topping.Id is "mushrooms" or "onions" or "anchovies" or "egg")],
            MostToppings: 1,
            AMenu.Wheat);
        var eaters = Gen.Select(Gen.Bool, Gen.Int[0, 4], Gen.Int[0, 4], Gen.Int[0, 4], Gen.Int[1, 4]).Array[2, 6];
        eaters.Sample(
            drawn =>
            {
                SplitEater[] guests =
                [
                    .. drawn.Select((draw, index) => ASplit.Eater(
                        "e" + index,
                        draw.Item5,
                        null,
                        (draw.Item1 ? "mushrooms" : "onions", Liking.Favourite),
                        (draw.Item1 ? "onions" : "mushrooms", (Liking)draw.Item2),
                        ("anchovies", (Liking)draw.Item3),
                        ("egg", (Liking)draw.Item4))),
                ];
                var before = ASplit.Night(menu, (guests.Sum(guest => guest.Slices) + 7) / 8, guests);
                var restricted = guests[0] with { Needs = new DietaryNeeds([], [Allergen.Fish, Allergen.Eggs], []) };
                var after = before with { Eaters = [restricted, .. guests.Skip(1)] };

                var (free, bound) = (Plan(before, Effort.Usual), Plan(after, Effort.Usual));

                Assert.Equal((SplitQuality.Proved, SplitQuality.Proved), (free.Quality, bound.Quality));
                Assert.True(Worst(bound) <= Worst(free) + (1.0 / SplitDraft.WorstOffScale) + RoundOff);
            },
            iter: 30);
    }

    private static void AssertSound(SplitRequest night, ToppingSplit split)
    {
        Assert.Empty(ToppingSplitCheck.Breaches(night, split));
        Assert.Equal(night.Pies, split.Pies.Count);

        // Whoever got fewer slices than asked for is named by a conflict.
        var named = split.Conflicts.SelectMany(conflict => conflict switch
        {
            NothingPermitted nothing => [nothing.EaterId],
            OwnPiesDoNotFit ownPies => ownPies.EaterIds,
            EaterShortOfSlices shortOf => [shortOf.EaterId],
            TooFewSlices => night.Eaters.Select(eater => eater.Id),
            _ => Enumerable.Empty<string>(),
        }).ToHashSet();
        Assert.All(
            night.Eaters.Where(eater => !named.Contains(eater.Id)),
            eater => Assert.Equal(eater.Slices, split.SlicesOf(eater.Id)));
        Assert.All(split.Satisfactions, eater => Assert.InRange(eater.Score, 0, eater.BestPossible + RoundOff));
        Assert.InRange(split.GapPercent, 0, 100);
    }

    private static double Worst(ToppingSplit split) => split.Nearness().FirstOrDefault(1);

    private static ToppingSplit Plan(SplitRequest night, Effort effort) => SplitPlanner.For(night, effort, CancellationToken.None);

    private static string TextOf(ToppingSplit split) =>
        JsonSerializer.Serialize(split with { Conflicts = [] })
        + string.Concat(split.Conflicts.Select(conflict => JsonSerializer.Serialize(conflict, conflict.GetType())));
}
