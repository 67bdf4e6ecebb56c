using CsCheck;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class SecondDoughSplitTests
{
    private static readonly Menu Menu = AMenu.With(8) with { SecondDough = AMenu.Maize };

    /// <summary>20 slices on three pies of eight: Ada's three need one pie of the second dough, which leaves two for the other seventeen.</summary>
    [Fact]
    public void Whoever_avoids_what_is_in_the_main_dough_has_a_pie_on_the_other_and_what_is_left_of_it_feeds_others()
    {
        var night = ASplit.Night(
            Menu, pies: 3, ASplit.Eater("ada", 3, ASplit.NoGluten, ("salami", Liking.Favourite)), ASplit.Eater("ben", 9), ASplit.Eater("cleo", 8));

        var split = SplitPlanner.For(night, Effort.Usual, CancellationToken.None);

        Assert.Equal(1, SplitPlanner.PiesOnSecondDough(night));
        Assert.Equal([true, false, false], split.Pies.Select(pie => pie.IsOnSecondDough));
        Assert.All(split.Pies, pie => Assert.False(pie.IsOwnPie));
        Assert.Equal(3, split.Servings.Where(serving => serving.EaterId == "ada").Sum(serving => serving.PieNumber == 1 ? serving.Slices : -99));
        Assert.Equal((9, 8), (split.SlicesOf("ben"), split.SlicesOf("cleo")));
        Assert.Equal(1, split.Servings.Where(serving => serving.EaterId != "ada" && serving.PieNumber == 1).Sum(serving => serving.Slices));
        Assert.Empty(split.Conflicts);
    }

    [Fact]
    public void Without_another_dough_there_is_nothing_for_them_and_the_rules_that_clash_name_the_dough()
    {
        var split = Planned(AMenu.With(8), 2, ASplit.Eater("ada", 3, ASplit.NoGluten), ASplit.Eater("ben", 8));

        Assert.Equal(new NothingPermitted("ada", NothingPermittedBecause.Dough), split.Conflicts[0]);
        Assert.Contains(split.Conflicts.OfType<SplitRulesClash>().Single().Nearest, rule => rule.Rule == SplitRuleKind.Dough);
        Assert.All(split.Pies, pie => Assert.False(pie.IsOnSecondDough));
    }

    [Fact]
    public void What_must_not_touch_them_is_in_the_kitchen_with_the_main_dough_and_another_one_does_not_change_that()
    {
        var split = Planned(Menu, 2, ASplit.Eater("ada", 3, ASplit.NoGlutenNear), ASplit.Eater("ben", 8));

        Assert.Equal(new NothingPermitted("ada", NothingPermittedBecause.Kitchen), split.Conflicts[0]);
        Assert.Equal(0, split.SlicesOf("ada"));
        Assert.All(split.Pies, pie => Assert.False(pie.IsOnSecondDough));
        Assert.DoesNotContain(split.Conflicts.OfType<SplitRulesClash>().Single().Nearest, rule => rule.Rule == SplitRuleKind.Dough);
    }

    [Fact]
    public void What_the_other_dough_may_hold_or_nobody_has_read_is_not_absent()
    {
        var split = Planned(
            AMenu.With(8) with { SecondDough = AMenu.Rich }, 2,
            ASplit.Eater("ada", 3, new DietaryNeeds([], [Allergen.GlutenCereals, Allergen.Nuts], [])), ASplit.Eater("ben", 8));

        Assert.Equal(new NothingPermitted("ada", NothingPermittedBecause.Dough), split.Conflicts[0]);
    }

    [Fact]
    public void An_own_pie_lies_on_the_dough_its_owner_may_have_and_never_merges_with_one_of_the_other()
    {
        // Both have the same must-not and one slice pie would do for the two: their doughs keep them apart.
        var split = Planned(
            Menu, 4,
            ASplit.Eater("ada", 3, new DietaryNeeds([], [Allergen.GlutenCereals], [Allergen.Nuts])),
            ASplit.Eater("ben", 3, ASplit.NoNutsNear),
            ASplit.Eater("cleo", 2, ASplit.NoGluten),
            ASplit.Eater("dora", 6));

        Assert.Equal(
            [("ada", true), ("ben", false), ("", true), ("", false)],
            split.Pies.Select(pie => (string.Concat(pie.OwnPieFor), pie.IsOnSecondDough)));
        Assert.Empty(split.Conflicts);
    }

    [Fact]
    public void People_of_different_must_nots_share_a_pie_of_the_other_dough_by_halves()
    {
        var split = Planned(
            Menu, 2,
            ASplit.Eater("ada", 4, new DietaryNeeds([Diet.Vegan], [Allergen.GlutenCereals], []), ("mushrooms", Liking.Favourite)),
            ASplit.Eater("ben", 4, ASplit.NoGluten, ("salami", Liking.Favourite), ("ham", Liking.Favourite), ("mushrooms", Liking.Never)),
            ASplit.Eater("cleo", 8));

        Assert.Equal(2, split.Pies[0].Sectors.Count);
        Assert.Equal([(4, 1), (4, 1)], split.Servings.Where(serving => serving.EaterId != "cleo").Select(serving => (serving.Slices, serving.PieNumber)));
        Assert.Empty(split.Conflicts);
    }

    [Fact]
    public void What_a_group_eats_nine_times_in_ten_counts_on_pies_of_its_dough()
    {
        var night = ASplit.Request(
            Menu, [ASplit.Eater("ada", 4, ASplit.NoGluten), ASplit.Eater("ben", 4, ASplit.NoGluten), ASplit.Eater("cleo", 8)], 4, 8, groupExtra: 2);

        Assert.Equal(2, SplitPlanner.PiesOnSecondDough(night));
        var tight = SplitPlanner.For(night with { Pies = 2 }, Effort.Usual, CancellationToken.None);
        var shortOf = Assert.Single(tight.Conflicts.OfType<GroupShortOfSlices>());
        Assert.Equal((8, 10), (shortOf.Permitted, shortOf.Wanted));
    }

    [Fact]
    public void With_too_few_pies_the_others_go_short_and_nobody_is_left_out_for_their_dough()
    {
        var split = Planned(Menu with { SecondDough = AMenu.Rich }, 1, ASplit.Eater("ada", 4, ASplit.NoGluten), ASplit.Eater("ben", 4, ASplit.NoMilk));

        Assert.Equal(4, split.SlicesOf("ada"));
        Assert.Contains(new EaterShortOfSlices("ben", 0, 4), split.Conflicts);
    }

    [Fact]
    public void More_pies_than_a_begun_dough_has_balls_for_lie_on_the_other()
    {
        var night = ASplit.Night(Menu, 5, ASplit.Eater("ada", 3, ASplit.NoGluten), ASplit.Eater("ben", 8)) with { MainBalls = 3 };

        Assert.Equal(2, SplitPlanner.PiesOnSecondDough(night));
        Assert.Equal(1, SplitPlanner.PiesOnSecondDough(night with { MainBalls = 9 }));
        Assert.Equal(2, SplitPlanner.For(night, Effort.Usual, CancellationToken.None).Pies.Count(pie => pie.IsOnSecondDough));
    }

    [Fact]
    public void A_pin_keeps_to_its_pie_whatever_dough_it_lies_on()
    {
        var night = ASplit.Night(Menu, 2, ASplit.Eater("ada", 4, ASplit.NoGluten), ASplit.Eater("ben", 8)) with
        {
            Pins = [new Pin(1, 1, "white", "blend", ["egg"]), new Pin(1, 1, "red", "no-cheese", ["onions"])],
        };

        var split = SplitPlanner.For(night with { Menu = AMenu.With(12) with { SecondDough = AMenu.Maize } }, Effort.Usual, CancellationToken.None);

        Assert.True(split.Pies[0].IsOnSecondDough);
        Assert.Equal(2, split.Pies[0].Sectors.Count);
        Assert.Empty(split.Conflicts);
    }

    [Fact]
    public void The_count_of_pies_on_it_is_that_of_every_split_quick_or_solved() =>
        ASplit.Nights(Gen.Int[0, 12]).Where(night => night.Menu.SecondDough is not null).Sample(
            night => Assert.Equal(
                SplitPlanner.PiesOnSecondDough(night),
                SplitPlanner.For(night, Effort.Quick, CancellationToken.None).Pies.Count(pie => pie.IsOnSecondDough)),
            iter: 300);

    [Fact]
    public void The_plain_check_finds_slices_of_the_wrong_dough()
    {
        var night = ASplit.Night(Menu, 2, ASplit.Eater("ada", 3, ASplit.NoGluten), ASplit.Eater("ben", 8, new DietaryNeeds([], [Allergen.Soybeans], [])));
        var split = SplitPlanner.For(night, Effort.Usual, CancellationToken.None);

        Assert.Empty(ToppingSplitCheck.Breaches(night, split));
        Assert.Contains(
            "ada is served something they must not have.",
            ToppingSplitCheck.Breaches(night, split with { Pies = [.. split.Pies.Select(pie => pie with { OnSecondDough = null })] }));
        Assert.Contains(
            "ben is served something they must not have.",
            ToppingSplitCheck.Breaches(night, split with { Pies = [.. split.Pies.Select(pie => pie with { OnSecondDough = true })] }));
        Assert.Contains(
            "Pie 1 lies on a dough that there is not.",
            ToppingSplitCheck.Breaches(night with { Menu = night.Menu with { SecondDough = null } }, split));
        Assert.Contains(
            "Pie 2 is out of order: numbers run from 1, own pies first, then those of the second dough.",
            ToppingSplitCheck.Breaches(night, split with { Pies = [split.Pies[1] with { Number = 1 }, split.Pies[0] with { Number = 2 }] }));
    }

    private static ToppingSplit Planned(Menu menu, int pies, params SplitEater[] eaters) =>
        SplitPlanner.For(ASplit.Night(menu, pies, eaters), Effort.Usual, CancellationToken.None);
}
