using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>Nights nobody plans on purpose: always an answer or a conflict.</summary>
public class SplitOddNightsTests
{
    public static TheoryData<int> Efforts => [0, 8];

    [Theory]
    [InlineData(MenuRole.Base)]
    [InlineData(MenuRole.Cheese)]
    public void A_menu_without_a_base_or_a_cheese_is_said_to_be_incomplete(MenuRole missing)
    {
        var menu = new Menu([.. AMenu.With(3).Items.Where(item => item.Role != missing)], 3, AMenu.Wheat);

        var split = Plan(8, ASplit.Night(menu, 1, ASplit.Eater("a", 3)));

        Assert.Equal(new MenuIncomplete(missing), Assert.Single(split.Conflicts));
        Assert.Empty(split.Pies);
    }

    [Fact]
    public void Nothing_is_permitted_when_the_dough_is_not() =>
        AssertNothing(AMenu.With(3), Allergen.GlutenCereals, NothingPermittedBecause.Dough);

    [Fact]
    public void Nothing_is_permitted_when_no_base_is() =>
        AssertNothing(new Menu([AMenu.White, AMenu.NoCheese], 3, AMenu.Wheat), Allergen.Milk, NothingPermittedBecause.Base);

    [Fact]
    public void Nothing_is_permitted_when_no_cheese_is() =>
        AssertNothing(new Menu([AMenu.Red, AMenu.Blend], 3, AMenu.Wheat), Allergen.Milk, NothingPermittedBecause.Cheese);

    [Theory]
    [MemberData(nameof(Efforts))]
    public void A_night_without_pies_serves_nobody(int effort)
    {
        var split = Plan(effort, ASplit.Night(AMenu.With(3), 0, ASplit.Eater("a", 3), ASplit.Eater("b", 2, ASplit.NoNutsNear)));

        Assert.Empty(split.Servings);
        Assert.Contains(new TooFewSlices(5, 0, PiesNeeded: 2), split.Conflicts);
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void A_night_without_eaters_still_lays_out_its_pies(int effort) =>
        Assert.Equal(2, Plan(effort, ASplit.Night(AMenu.With(3), 2)).Pies.Count);

    [Theory]
    [MemberData(nameof(Efforts))]
    public void An_eater_without_slices_is_served_nothing_and_takes_no_own_pie(int effort)
    {
        var split = Plan(effort, ASplit.Night(AMenu.With(3), 1, ASplit.Eater("a", 0, ASplit.NoNutsNear), ASplit.Eater("b", 8)));

        Assert.Equal(0, split.SlicesOf("a"));
        Assert.DoesNotContain(split.Pies, pie => pie.IsOwnPie);
        Assert.Empty(split.Conflicts);
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Far_too_many_pies_are_all_laid_out(int effort)
    {
        var split = Plan(effort, ASplit.Night(AMenu.With(6), 80, ASplit.Eater("a", 3), ASplit.Eater("b", 3, ASplit.Vegan)));

        Assert.Equal(80, split.Pies.Count);
        Assert.Equal((3, 3), (split.SlicesOf("a"), split.SlicesOf("b")));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Sixty_five_eaters_are_all_served(int effort)
    {
        var night = RandomNights.Large(eaters: 65, pies: 28);

        var split = Plan(effort, night);

        Assert.All(night.Eaters, eater => Assert.Equal(eater.Slices, split.SlicesOf(eater.Id)));
    }

    [Fact]
    public void Eaters_who_all_like_the_same_are_all_as_well_served_as_can_be()
    {
        var split = Plan(8, ASplit.Night(
            AMenu.With(6),
            3,
            [
                .. Enumerable.Range(0, 6).Select(index =>
                    ASplit.Eater("e" + index, 4, null, ("olives", Liking.Favourite), ("ham", Liking.Never))),
            ]));

        Assert.All(split.Nearness(), nearness => Assert.Equal(1, nearness));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Eaters_who_never_want_any_topping_get_plain_and_the_host_is_told(int effort)
    {
        var never = AMenu.Toppings.Take(3).Select(topping => (topping.Id, Liking.Never)).ToArray();

        var split = Plan(effort, ASplit.Night(AMenu.With(3), 1, ASplit.Eater("a", 4, null, never)));

        Assert.Equal(new OnlyUnwantedLeft("a"), Assert.Single(split.Conflicts));
        Assert.All(split.Combinations, combination => Assert.Empty(combination.ToppingIds));
    }

    [Fact]
    public void An_eater_who_never_wants_the_only_base_is_served_and_the_host_is_told()
    {
        var split = Plan(8, ASplit.Night(
            new Menu([AMenu.Red, AMenu.Blend], 3, AMenu.Wheat), 1, ASplit.Eater("a", 4, null, ("red", Liking.Never))));

        Assert.Equal(4, split.SlicesOf("a"));
        Assert.Equal(new OnlyUnwantedLeft("a"), Assert.Single(split.Conflicts));
    }

    /// <summary>
    /// The quick answer leaves a group short and everybody pleased; to cover it, the search must take from the worst-off.
    /// A random night once found it.
    /// </summary>
    [Fact]
    public void A_group_that_may_come_is_covered_although_those_at_the_table_like_it_less()
    {
        var noPork = new DietaryNeeds([Diet.NoPork], [], []);
        var night = ASplit.Night(
            AMenu.With(3),
            2,
            Eater("own", 3, Liking.Like, Liking.Like, Liking.Favourite, ASplit.NoNutsNear),
            Eater("onions", 1, Liking.Fine, Liking.Fine, Liking.Like),
            Eater("pork", 2, Liking.RatherNot, Liking.Fine, Liking.RatherNot, noPork),
            Eater("milk", 0, Liking.Fine, Liking.RatherNot, Liking.RatherNot, ASplit.NoMilk),
            Eater("plain", 1, Liking.Fine, Liking.RatherNot, Liking.Never)) with
        {
            SlicesPerPie = 6,
            Parts = 1,
            Groups =
            [
                new MustNotGroup(["own"], ASplit.NoNutsNear, 5),
                new MustNotGroup(["pork"], noPork, 4),
                new MustNotGroup(["milk"], ASplit.NoMilk, 2),
            ],
        };

        var (quick, solved) = (Plan(0, night), Plan(8, night));

        Assert.IsType<GroupShortOfSlices>(Assert.Single(quick.Conflicts));
        Assert.Empty(solved.Conflicts);
        Assert.True(solved.Nearness()[0] < quick.Nearness()[0]);

        static SplitEater Eater(string id, int slices, Liking mushrooms, Liking salami, Liking onions, DietaryNeeds? needs = null) =>
            ASplit.Eater(id, slices, needs, ("mushrooms", mushrooms), ("salami", salami), ("onions", onions));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Eaters_who_can_share_no_pie_are_not_all_served_from_one(int effort)
    {
        var onlyMilk = AMenu.White with { Composition = AMenu.Of([Allergen.Milk], []) };
        var onlyNuts = AMenu.Red with { Composition = AMenu.Of([Allergen.Nuts], []) };
        var night = ASplit.Night(
            new Menu([onlyMilk, onlyNuts, AMenu.NoCheese], 0, AMenu.Wheat),
            1,
            ASplit.Eater("a", 2, ASplit.NoMilk),
            ASplit.Eater("b", 3, new DietaryNeeds([], [Allergen.Nuts], [])));

        var split = Plan(effort, night with { SlicesPerPie = 5 });

        Assert.Equal(new EaterShortOfSlices("a", 0, 2), Assert.Single(split.Conflicts, conflict => conflict is not SplitRulesClash));
        Assert.Equal(3, split.SlicesOf("b"));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Everybody_who_excludes_everything_is_told_of_and_the_pies_stay_plain(int effort)
    {
        var all = new DietaryNeeds([Diet.Vegan], [], [], [.. AMenu.With(6).Items.Where(item => item.Role != MenuRole.Topping).Select(item => item.Id)]);
        var night = ASplit.Night(AMenu.With(6), 2, [.. Enumerable.Range(0, 5).Select(index => ASplit.Eater($"e{index}", 3, all))]);

        var split = Plan(effort, night);

        Assert.Empty(split.Servings);
        Assert.Equal(5, split.Conflicts.OfType<NothingPermitted>().Count());
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void What_nobody_has_read_on_a_label_reaches_nobody_who_must_not_have_it(int effort)
    {
        var unread = AMenu.Toppings[0] with { Id = "unread", Composition = new Composition([], [], [Allergen.Nuts], Enum.GetValues<Diet>()) };
        var menu = AMenu.With(2) with { Items = [.. AMenu.With(2).Items, unread] };
        var night = ASplit.Night(
            menu, 2,
            ASplit.Eater("kept", 4, new DietaryNeeds([], [Allergen.Nuts], []), ("unread", Liking.Favourite)),
            ASplit.Eater("own", 4, ASplit.NoNutsNear, ("unread", Liking.Favourite)),
            ASplit.Eater("free", 4, null, ("unread", Liking.Favourite)));

        var split = Plan(effort, night);

        var with = split.Combinations.Where(combination => combination.ToppingIds.Contains("unread")).Select(combination => combination.Letter).ToHashSet();
        Assert.All(split.Servings.Where(serving => with.Contains(serving.Letter)), serving => Assert.Equal("free", serving.EaterId));
        Assert.All(split.Pies.Where(pie => pie.IsOwnPie), pie => Assert.DoesNotContain(pie.Sectors, sector => with.Contains(sector.Letter)));
    }

    [Theory]
    [MemberData(nameof(Efforts))]
    public void Pins_that_contradict_one_another_are_left_out_one_by_one_and_named(int effort)
    {
        var night = ASplit.Night(AMenu.With(4), 1, ASplit.Eater("a", 4), ASplit.Eater("b", 4)) with
        {
            Pins =
            [
                new Pin(1, 2, "red", "blend", ["mushrooms"]),
                new Pin(1, 1, "red", "blend", ["onions"]),
                new Pin(9, 1, "red", "blend", []),
                new Pin(1, 0, "red", "blend", []),
            ],
        };

        var split = Plan(effort, night);

        Assert.Equal(
            [(1, PinFault.TooManyParts), (9, PinFault.NoSuchPie), (1, PinFault.TooManyParts)],
            split.Conflicts.OfType<PinLeftOut>().Select(pin => (pin.PieNumber, pin.Because)));
        Assert.Equal(["mushrooms"], Assert.Single(split.Combinations).ToppingIds);
    }

    [Fact]
    public void A_request_that_names_an_eater_twice_is_a_mistake() =>
        Assert.Throws<ArgumentException>(() => Plan(0, ASplit.Night(AMenu.With(3), 1, ASplit.Eater("a", 3), ASplit.Eater("a", 2))));

    [Fact]
    public void A_request_with_negative_slices_is_a_mistake() =>
        Assert.Throws<ArgumentException>(() => Plan(0, ASplit.Night(AMenu.With(3), 1, ASplit.Eater("a", -1))));

    [Theory]
    [InlineData(-1, 8)]
    [InlineData(201, 8)]
    [InlineData(1, 3)]
    [InlineData(1, 17)]
    public void A_request_out_of_range_is_a_mistake(int pies, int slicesPerPie) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Plan(0, ASplit.Night(AMenu.With(3), pies, ASplit.Eater("a", 3)) with { SlicesPerPie = slicesPerPie }));

    private static void AssertNothing(Menu menu, Allergen allergen, NothingPermittedBecause because)
    {
        var eater = ASplit.Eater("a", 3, new DietaryNeeds([], [allergen], []));

        var split = Plan(8, ASplit.Night(menu, 1, eater) with { Groups = [new MustNotGroup(["a"], eater.Needs, 4)] });

        Assert.Equal(new NothingPermitted("a", because), Assert.Single(split.Conflicts, conflict => conflict is not SplitRulesClash));
        Assert.Empty(split.Servings);
    }

    private static ToppingSplit Plan(int effort, SplitRequest night) =>
        SplitPlanner.For(night, new Effort(effort), TestContext.Current.CancellationToken);
}
