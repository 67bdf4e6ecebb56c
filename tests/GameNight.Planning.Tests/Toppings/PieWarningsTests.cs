using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class PieWarningsTests
{
    private static readonly DietaryNeeds MilkMustNotTouch = new([], [], [Allergen.Milk]);

    [Fact]
    public void An_own_pie_says_for_whom_it_is_and_what_must_not_touch_it()
    {
        var warning = Assert.IsType<KeptApart>(Assert.Single(Of(1, ("rui", MilkMustNotTouch))));

        Assert.Equal(["rui"], warning.EaterIds);
        Assert.Equal([Allergen.Milk], warning.MustNotTouch);
    }

    [Fact]
    public void A_pie_that_holds_or_may_hold_it_is_kept_from_the_own_pie()
    {
        foreach (var number in new[] { 2, 3 })
        {
            var warning = Assert.IsType<KeptFromOwnPies>(Assert.Single(Of(number, ("rui", MilkMustNotTouch))));

            Assert.Equal([1], warning.PieNumbers);
            Assert.Equal([Allergen.Milk], warning.Allergens);
        }

        Assert.Empty(Of(3, ("rui", new DietaryNeeds([], [], [Allergen.Nuts]))));
    }

    [Fact]
    public void A_half_is_kept_clear_of_what_its_eaters_must_not_have_from_the_other()
    {
        var warning = Assert.IsType<PartKeptClear>(Assert.Single(Of(2, ("ana", new DietaryNeeds([Diet.NoPork], [Allergen.Fish], [])))));

        Assert.Equal(("C", "B"), (warning.Letter, warning.OtherLetter));
        Assert.Equal([Allergen.Fish], warning.Allergens);
        Assert.Empty(warning.Diets);
    }

    [Fact]
    public void A_half_is_kept_clear_of_what_does_not_keep_its_eaters_diets()
    {
        var warning = Assert.IsType<PartKeptClear>(Assert.Single(Of(2, ("eva", new DietaryNeeds([Diet.NoPork], [Allergen.Sulphites], [])))));

        Assert.Equal(("B", "C"), (warning.Letter, warning.OtherLetter));
        Assert.Equal([Allergen.Sulphites], warning.Allergens);
        Assert.Equal([Diet.NoPork], warning.Diets);
    }

    [Fact]
    public void A_half_is_kept_clear_of_an_item_that_is_kept_off_its_eaters_slices()
    {
        var warning = Assert.IsType<PartKeptClear>(Assert.Single(Of(2, ("ana", DietaryNeeds.None with { KeptOff = ["anchovies", "mushrooms"] }))));

        Assert.Equal(("C", "B"), (warning.Letter, warning.OtherLetter));
        Assert.Equal(["anchovies"], warning.ItemIds);
    }

    [Fact]
    public void What_is_not_on_the_menu_any_more_counts_as_holding_everything()
    {
        var items = ATable.Items.Where(item => item.Key != "anchovies").ToDictionary();
        var needs = new Dictionary<string, DietaryNeeds> { ["ana"] = new([Diet.Vegan], [Allergen.Lupin], []) };
        var warnings = new PieWarnings(ATable.Split, needs, items);

        var warning = Assert.IsType<PartKeptClear>(Assert.Single(warnings.Of(ATable.Split.Pies[1])));

        Assert.Equal([Allergen.Lupin], warning.Allergens);
        Assert.Equal([Diet.Vegan], warning.Diets);
    }

    [Fact]
    public void A_pie_of_the_second_dough_says_what_it_lies_on_and_is_kept_from_an_own_pie_that_its_dough_must_not_touch()
    {
        var split = ATable.Split with { Pies = [ATable.Split.Pies[0], ATable.Split.Pies[1] with { OnSecondDough = true }, ATable.Split.Pies[2]] };
        var needs = new Dictionary<string, DietaryNeeds> { ["rui"] = new([], [], [Allergen.Soybeans]) };

        var warnings = new PieWarnings(split, needs, ATable.Items, AMenu.Maize);

        Assert.Equal(new OnAnotherDough(SecondDoughOn.BakingPaper, new Celsius(230)), warnings.Of(split.Pies[1])[0]);
        Assert.Equal([Allergen.Soybeans], Assert.IsType<KeptFromOwnPies>(warnings.Of(split.Pies[1])[1]).Allergens);
        Assert.Empty(warnings.Of(split.Pies[2]));
    }

    [Fact]
    public void Nobody_with_must_nots_means_no_warnings() =>
        Assert.All([2, 3], number => Assert.Empty(Of(number)));

    private static IReadOnlyList<PieWarning> Of(int number, params (string Id, DietaryNeeds Needs)[] needs) =>
        new PieWarnings(ATable.Split, needs.ToDictionary(one => one.Id, one => one.Needs), ATable.Items)
            .Of(ATable.Split.Pies[number - 1]);
}
