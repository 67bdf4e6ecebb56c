using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class PieAllergensTests
{
    private static readonly IReadOnlyList<PieAllergens> Table = PieAllergens.Of(ATable.Split, ATable.Items, ATable.Dough);

    [Fact]
    public void Contained_is_what_the_dough_and_anything_on_either_half_contains()
    {
        Assert.Equal([Allergen.GlutenCereals], Table[0].Contains);
        Assert.Equal([Allergen.GlutenCereals, Allergen.Fish, Allergen.Milk], Table[1].Contains);
        Assert.Equal([Allergen.GlutenCereals], Table[2].Contains);
    }

    [Fact]
    public void A_warning_on_a_label_is_no_more_and_no_less_than_that()
    {
        Assert.Equal([Allergen.Soybeans], Table[0].MayContain);
        Assert.Equal([Allergen.Soybeans, Allergen.Mustard], Table[1].MayContain);
        Assert.Equal([Allergen.Soybeans, Allergen.Milk, Allergen.Mustard], Table[2].MayContain);
    }

    [Fact]
    public void What_is_on_another_pie_may_be_on_this_one_too()
    {
        Assert.Equal([Allergen.Fish, Allergen.Milk, Allergen.Mustard], Table[0].SharedMayContain);
        Assert.Empty(Table[1].SharedMayContain);
        Assert.Equal([Allergen.Fish], Table[2].SharedMayContain);
    }

    [Fact]
    public void Unknown_stays_unknown_beside_a_warning_but_not_beside_what_is_contained()
    {
        Assert.Empty(Table[0].Unknown);
        Assert.Equal([Allergen.Sulphites], Table[1].Unknown);
        Assert.Equal([Allergen.Milk, Allergen.Sulphites], Table[2].Unknown);
    }

    [Fact]
    public void What_is_unknown_of_another_pie_is_no_better_known_of_this_one()
    {
        Assert.Equal([Allergen.Milk, Allergen.Sulphites], Table[0].SharedUnknown);
        Assert.Empty(Table[1].SharedUnknown);
        Assert.Empty(Table[2].SharedUnknown);
    }

    [Fact]
    public void Every_allergen_stands_somewhere_on_every_pie() => Assert.All(Table, pie => Assert.Equal(
        Enum.GetValues<Allergen>(),
        pie.Contains.Concat(pie.MayContain).Concat(pie.SharedMayContain).Concat(pie.Unknown)
            .Concat(pie.SharedUnknown).Concat(pie.NotNamed).Distinct().Order()));

    [Fact]
    public void A_pie_of_the_second_dough_holds_what_that_dough_holds_and_may_hold_what_is_in_the_kitchen()
    {
        var split = ATable.Split with { Pies = [ATable.Split.Pies[0] with { OnSecondDough = true }, .. ATable.Split.Pies.Skip(1)] };

        var table = PieAllergens.Of(split, ATable.Items, ATable.Dough, AMenu.Rich.Composition);

        Assert.Equal([Allergen.Eggs, Allergen.Milk], table[0].Contains);
        Assert.Contains(Allergen.GlutenCereals, table[0].SharedMayContain);
        Assert.Equal([Allergen.Nuts], table[0].Unknown);
        Assert.Equal(Table[1].Contains, table[1].Contains);
        Assert.Contains(Allergen.Eggs, table[1].SharedMayContain);
        Assert.Equal(Enum.GetValues<Allergen>(), PieAllergens.Of(split, ATable.Items, ATable.Dough)[0].Unknown);
    }

    [Fact]
    public void Of_what_is_not_on_the_menu_any_more_everything_is_unknown()
    {
        var items = ATable.Items.Where(item => item.Key != "sausage").ToDictionary();

        var whole = PieAllergens.Of(ATable.Split, items, ATable.Dough)[2];

        Assert.Equal([Allergen.GlutenCereals], whole.Contains);
        Assert.Equal(Enum.GetValues<Allergen>().Length - 1, whole.Unknown.Count);
        Assert.Empty(whole.NotNamed);
    }

    [Fact]
    public void Without_pies_there_is_nothing_to_say() =>
        Assert.Empty(PieAllergens.Of(ATable.Split with { Pies = [] }, ATable.Items, ATable.Dough));
}
