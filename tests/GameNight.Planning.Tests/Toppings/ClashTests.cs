using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>Nights that cannot work say which rules clash, and nothing that has no part in it.</summary>
public class ClashTests
{
    private static readonly Menu NoPlain = AMenu.With(4) with
    {
        Items = [.. AMenu.With(4).Items.Where(item => item.Id is not ("no-cheese" or "dairy-free"))],
    };

    [Fact]
    public void A_menu_without_a_cheese_for_the_vegan_names_just_these_two_and_what_would_do()
    {
        var clash = Only(ASplit.Night(NoPlain, 2, ASplit.Eater("rui", 3, new DietaryNeeds([Diet.Vegan, Diet.NoPork], [Allergen.Fish], [])), ASplit.Eater("eva", 3)));

        Assert.Equal(["rui"], clash.EaterIds);
        Assert.Equal([(SplitRuleKind.KeepsDiet, (Diet?)Diet.Vegan), (SplitRuleKind.NoPlainCheese, null)], clash.Rules.Select(rule => (rule.Rule, rule.Diet)));
        Assert.Equal([SplitRuleKind.NoPlainCheese], clash.Nearest.Select(rule => rule.Rule));
    }

    [Fact]
    public void A_wheat_dough_and_somebody_who_avoids_it_clash_and_only_another_dough_helps()
    {
        var clash = Only(ASplit.Night(AMenu.With(4), 2, ASplit.Eater("rui", 3, ASplit.NoGluten), ASplit.Eater("eva", 3)));

        Assert.Equal([SplitRuleKind.Avoids, SplitRuleKind.Dough], clash.Rules.Select(rule => rule.Rule));
        Assert.Equal([SplitRuleKind.Dough], clash.Nearest.Select(rule => rule.Rule));
    }

    [Fact]
    public void Somebody_whom_the_dough_must_not_touch_is_not_offered_another_one_from_the_same_kitchen()
    {
        var clash = Only(ASplit.Night(AMenu.With(4), 2, ASplit.Eater("rui", 3, ASplit.NoGlutenNear), ASplit.Eater("eva", 3)));

        Assert.Equal([SplitRuleKind.MustNotTouch, SplitRuleKind.Dough], clash.Rules.Select(rule => rule.Rule));
        Assert.Empty(clash.Nearest);
    }

    [Fact]
    public void Two_own_pies_that_share_nothing_clash_with_one_pie()
    {
        var onlyMilk = AMenu.White with { Composition = AMenu.Of([Allergen.Milk], []) };
        var onlyNuts = AMenu.Red with { Composition = AMenu.Of([Allergen.Nuts], []) };

        var clash = Only(ASplit.Night(
            new Menu([onlyMilk, onlyNuts, AMenu.NoCheese], 0, AMenu.Wheat), 1,
            ASplit.Eater("ana", 3, ASplit.NoMilkNear), ASplit.Eater("rui", 3, ASplit.NoNutsNear)));

        Assert.Contains(clash.Nearest, rule => rule is { Rule: SplitRuleKind.NumberOfPies, Number: 2 });
        Assert.All(clash.Nearest, rule => Assert.False(rule.IsMustNot));
    }

    [Fact]
    public void What_is_settled_and_starves_somebody_is_named_by_its_pie()
    {
        var clash = Only(ASplit.Night(AMenu.With(4), 1, ASplit.Eater("rui", 4, ASplit.Vegetarian), ASplit.Eater("eva", 4)) with
        {
            Pins = [new Pin(1, 2, "red", "blend", ["salami"])],
        });

        Assert.Contains(clash.Rules, rule => rule is { Rule: SplitRuleKind.Settled, Number: 1 });
        Assert.Contains(clash.Nearest, rule => rule is { Rule: SplitRuleKind.Settled, Number: 1 });
    }

    [Fact]
    public void Too_little_of_the_only_cheese_they_may_have_is_named()
    {
        var menu = AMenu.With(4) with { Items = [.. AMenu.With(4).Items.Where(item => item.Id != "no-cheese")] };

        var clash = Only(ASplit.Night(menu, 2, ASplit.Eater("rui", 6, ASplit.Vegan), ASplit.Eater("eva", 6)) with
        {
            Stock = new Dictionary<string, ItemStock> { ["dairy-free"] = new(new Grams(180), new Grams(90)) },
        });

        Assert.Contains(clash.Rules, rule => rule is { Rule: SplitRuleKind.OnHand, ItemId: "dairy-free" });
        Assert.Contains(clash.Nearest, rule => rule is { Rule: SplitRuleKind.OnHand, ItemId: "dairy-free" });
    }

    [Fact]
    public void No_rule_of_a_clash_can_be_spared_and_the_quick_answer_looks_for_none()
    {
        var night = ASplit.Night(NoPlain, 2, ASplit.Eater("rui", 3, ASplit.Vegan), ASplit.Eater("eva", 3));

        Assert.Empty(SplitPlanner.For(night, Effort.Quick, CancellationToken.None).Conflicts.OfType<SplitRulesClash>());
        Assert.Equal(2, Only(night).Rules.Count);
        Assert.Empty(For(night with { Eaters = [ASplit.Eater("rui", 3), ASplit.Eater("eva", 3)] }).Conflicts);
        Assert.Empty(For(night with { Menu = NoPlain with { Items = [.. NoPlain.Items, AMenu.NoCheese] } }).Conflicts.OfType<NothingPermitted>());
    }

    private static SplitRulesClash Only(SplitRequest request) => Assert.Single(For(request).Conflicts.OfType<SplitRulesClash>());

    private static ToppingSplit For(SplitRequest request) => SplitPlanner.For(request, Effort.Usual, CancellationToken.None);
}
