using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class SplitPlannerTests
{
    public static TheoryData<int> Efforts => [0, 8];

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Serves_a_must_not_touch_eater_from_an_own_pie_that_comes_first(int effort)
    {
        var split = Plan(effort, pies: 3, ASplit.Eater("a", 8), ASplit.Eater("b", 3, ASplit.NoNutsNear), ASplit.Eater("c", 8));

        Assert.Equal(["b"], split.Pies[0].OwnPieFor);
        Assert.All(split.Pies.Skip(1), pie => Assert.False(pie.IsOwnPie));
        Assert.All(split.Servings.Where(serving => serving.EaterId == "b"), serving => Assert.Equal(1, serving.PieNumber));
        Assert.All(split.Servings.Where(serving => serving.EaterId != "b"), serving => Assert.NotEqual(1, serving.PieNumber));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Lets_two_must_not_touch_eaters_share_an_own_pie_that_suits_both(int effort)
    {
        var split = Plan(
            effort, pies: 2, ASplit.Eater("a", 3, ASplit.NoNutsNear), ASplit.Eater("b", 4, ASplit.NoMilkNear), ASplit.Eater("c", 8));

        Assert.Equal(["a", "b"], Assert.Single(split.Pies, pie => pie.IsOwnPie).OwnPieFor);
        Assert.Empty(split.Conflicts);
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Gives_others_the_left_over_slices_of_an_own_pie_when_no_open_pie_has_any(int effort)
    {
        var split = Plan(effort, pies: 1, ASplit.Eater("a", 3, ASplit.NoNutsNear), ASplit.Eater("b", 5));

        Assert.Equal(3, split.SlicesOf("a"));
        Assert.Equal(5, split.SlicesOf("b"));
        Assert.Equal(["a"], split.Pies[0].OwnPieFor);
    }

    [Fact]
    public void Says_when_own_pies_do_not_fit_and_serves_the_others()
    {
        var red = AMenu.Red with { Composition = AMenu.Of([Allergen.Nuts], [Diet.Vegan]) };
        var menu = new Menu([AMenu.White, red, AMenu.NoCheese], MostToppings: 0, AMenu.Wheat);
        var night = ASplit.Night(
            menu, 1, ASplit.Eater("a", 2, ASplit.NoNutsNear), ASplit.Eater("b", 2, ASplit.NoMilkNear), ASplit.Eater("c", 2));

        var split = SplitPlanner.For(night, Effort.Usual, TestContext.Current.CancellationToken);

        Assert.Equal(2, split.Conflicts.Count);
        Assert.Contains(split.Conflicts.OfType<SplitRulesClash>().Single().Rules, rule => rule is { EaterId: "b", Allergen: Allergen.Milk });
        var conflict = Assert.Single(split.Conflicts.OfType<OwnPiesDoNotFit>());
        Assert.Equal(["b"], conflict.EaterIds);
        Assert.Equal((3, 1), (conflict.PiesNeeded, conflict.Pies));
        Assert.Equal(0, split.SlicesOf("b"));
        Assert.Equal(2, split.SlicesOf("c"));
    }

    [Fact]
    public void Says_when_a_group_may_eat_more_than_is_permitted_for_it()
    {
        var night = ASplit.Night(AMenu.With(5), 1, ASplit.Eater("a", 4, ASplit.Vegan), ASplit.Eater("b", 4)) with
        {
            Groups = [new MustNotGroup(["a"], ASplit.Vegan, SlicesNineInTen: 12)],
        };

        var split = SplitPlanner.For(night, Effort.Usual, TestContext.Current.CancellationToken);

        Assert.Equal(2, split.Conflicts.Count);
        var conflict = Assert.Single(split.Conflicts.OfType<GroupShortOfSlices>());
        Assert.Equal((8, 12), (conflict.Permitted, conflict.Wanted));
        Assert.Contains(split.Conflicts.OfType<SplitRulesClash>().Single().Nearest, rule => rule is { Rule: SplitRuleKind.NumberOfPies, Number: 2 });
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Puts_enough_permitted_slices_on_the_table_for_a_group(int effort)
    {
        var night = ASplit.Night(AMenu.With(8), 3, ASplit.Eater("a", 3, ASplit.Vegan), ASplit.Eater("b", 8), ASplit.Eater("c", 8)) with
        {
            Groups = [new MustNotGroup(["a"], ASplit.Vegan, SlicesNineInTen: 8)],
        };

        var split = SplitPlanner.For(night, new Effort(effort), TestContext.Current.CancellationToken);

        var veganItems = night.Menu.Items.Where(item => item.Composition.IsPermittedFor(ASplit.Vegan)).Select(item => item.Id);
        var veganLetters = split.Combinations
            .Where(combination => combination.ItemIds.All(veganItems.Contains))
            .Select(combination => combination.Letter);
        var veganSectors = split.Pies.SelectMany(pie => pie.Sectors).Where(sector => veganLetters.Contains(sector.Letter));
        Assert.True(veganSectors.Sum(sector => sector.Slices) >= 8);
        Assert.Empty(split.Conflicts);
    }

    [Fact]
    public void Cuts_everybody_in_proportion_when_the_pies_are_too_few()
    {
        var split = Plan(8, pies: 1, ASplit.Eater("a", 8), ASplit.Eater("b", 4), ASplit.Eater("c", 4));

        Assert.Equal((4, 2, 2), (split.SlicesOf("a"), split.SlicesOf("b"), split.SlicesOf("c")));
        Assert.Equal(new TooFewSlices(16, 8, PiesNeeded: 2), Assert.Single(split.Conflicts));
    }

    [Fact]
    public void Bakes_whole_pies_only_when_a_pie_has_an_odd_number_of_slices()
    {
        var night = ASplit.Night(AMenu.With(8), 3, ASplit.Eater("a", 5), ASplit.Eater("b", 5), ASplit.Eater("c", 4)) with { SlicesPerPie = 5 };

        var split = SplitPlanner.For(night, Effort.Usual, TestContext.Current.CancellationToken);

        Assert.All(split.Pies, pie => Assert.Equal(5, Assert.Single(pie.Sectors).Slices));
    }

    [Fact]
    public void Gives_everybody_their_favourite_when_halves_allow_it()
    {
        var split = Plan(
            8,
            pies: 1,
            ASplit.Eater("a", 4, null, ("olives", Liking.Favourite)),
            ASplit.Eater("b", 4, ASplit.Vegan, ("mushrooms", Liking.Favourite)));

        Assert.Equal([1.0, 1.0], split.Nearness());
        Assert.Equal(SplitQuality.Proved, split.Quality);
        Assert.Equal(2, split.Pies[0].Sectors.Count);
    }

    [Fact]
    public void Offers_a_second_choice_where_it_costs_nothing()
    {
        var split = Plan(
            8, pies: 1, ASplit.Eater("a", 8, null, ("olives", Liking.Favourite), ("ham", Liking.Favourite), ("onions", Liking.Never)));

        Assert.Equal(2, split.Combinations.Count);
        Assert.Equal([1.0], split.Nearness());
    }

    [Fact]
    public void Goes_on_with_AA_after_Z() =>
        Assert.Equal(["A", "Z", "AA", "AZ", "BA"], new[] { 0, 25, 26, 51, 52 }.Select(PieLayout.Letter));

    [Fact]
    public void Stops_when_cancelled_before()
    {
        var night = ASplit.Night(AMenu.With(5), 1, ASplit.Eater("a", 4));

        Assert.Throws<OperationCanceledException>(() => SplitPlanner.For(night, Effort.Usual, new CancellationToken(canceled: true)));
    }

    [Fact]
    public void Stops_soon_when_cancelled_while_solving()
    {
        var night = RandomNights.Large(eaters: 200, pies: 80);
        using var source = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        source.CancelAfter(TimeSpan.FromMilliseconds(500));
        var started = TimeProvider.System.GetTimestamp();

        Assert.Throws<OperationCanceledException>(() => SplitPlanner.For(night, new Effort(200), source.Token));

        // Generous for a busy machine; without the stop the effort would last for minutes.
        Assert.InRange(TimeProvider.System.GetElapsedTime(started), TimeSpan.Zero, TimeSpan.FromSeconds(10));
    }

    private static ToppingSplit Plan(int effort, int pies, params SplitEater[] eaters) =>
        SplitPlanner.For(ASplit.Night(AMenu.With(8), pies, eaters), new Effort(effort), TestContext.Current.CancellationToken);
}
