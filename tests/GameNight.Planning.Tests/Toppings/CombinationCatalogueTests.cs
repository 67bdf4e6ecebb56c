using CsCheck;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class CombinationCatalogueTests
{
    [Fact]
    public void Holds_the_plain_house_choice_and_thirty_choices_on_a_usual_night()
    {
        var catalogue = CatalogueFor(AMenu.With(toppings: 12), ASplit.Eater("a", 3), ASplit.Eater("b", 3, ASplit.Vegan));

        Assert.Equal(new MenuChoice(0, 0, []).ToString(), catalogue[0].ToString());
        Assert.Equal(30, catalogue.Count);
    }

    [Fact]
    public void Holds_every_choice_of_a_small_menu_that_makes_a_difference()
    {
        var catalogue = CatalogueFor(AMenu.With(toppings: 3, mostToppings: 1), ASplit.Eater("a", 3));

        Assert.Equal(4, catalogue.Count);
    }

    [Fact]
    public void Holds_something_permitted_for_every_eater() =>
        ASplit.Nights(Gen.Int[1, 30]).Sample(
            night =>
            {
                var basis = Seating.For(night, CancellationToken.None);

                Assert.All(basis.Eaters, eater => Assert.Contains(basis.Catalogue, eater.Palate.Permits));
            },
            iter: 100);

    [Fact]
    public void Stays_small_on_a_menu_of_forty_toppings()
    {
        var toppings = Enumerable.Range(0, 40)
            .Select(index => new MenuItem("t" + index, MenuRole.Topping, 0.1, Composition.Nothing));
        var menu = new Menu([AMenu.Red, AMenu.Blend, .. toppings], MostToppings: 5, AMenu.Wheat);

        var catalogue = CatalogueFor(menu, ASplit.Eater("a", 3, null, ("t39", Liking.Favourite)), ASplit.Eater("b", 3));

        Assert.Equal(30, catalogue.Count);
        Assert.Contains(catalogue, choice => choice.Toppings.Contains(39));
    }

    [Fact]
    public void Holds_what_has_a_name_wherever_the_menu_allows_it()
    {
        var toppings = Enumerable.Range(0, 40)
            .Select(index => new MenuItem("t" + index, MenuRole.Topping, 0.1, Composition.Nothing));
        var menu = new Menu([AMenu.Red, AMenu.Blend, .. toppings], MostToppings: 3, AMenu.Wheat)
        {
            Named = [new ToppingSet(["t30", "t7"]), new ToppingSet(["t31", "t8"]), new ToppingSet(["t1", "t2", "t3", "t4"]), new ToppingSet(["t1", "gone"])],
            Apart = [new ToppingPair("t8", "t31")],
        };

        var catalogue = CatalogueFor(menu, ASplit.Eater("a", 3, null, ("t30", Liking.Never)), ASplit.Eater("b", 3));

        Assert.Contains(catalogue, choice => choice.Toppings.SequenceEqual([7, 30]));
        Assert.DoesNotContain(catalogue, choice => choice.Toppings.SequenceEqual([8, 31]) || choice.Toppings.Count > 3);
    }

    [Fact]
    public void Leaves_out_what_has_a_name_when_nobody_may_have_it()
    {
        var menu = AMenu.With(4) with { Named = [new ToppingSet(["salami"])] };

        Assert.DoesNotContain(
            CatalogueFor(menu, ASplit.Eater("a", 3, ASplit.Vegetarian)),
            choice => choice.Toppings.Any(topping => AMenu.Toppings[topping].Id == "salami"));
    }

    private static IReadOnlyList<MenuChoice> CatalogueFor(Menu menu, params SplitEater[] eaters) =>
        Seating.For(ASplit.Night(menu, 2, eaters), CancellationToken.None).Catalogue;
}
