using GameNight.Planning.Guests;

namespace GameNight.Planning.Tests.Guests;

public class UsAllergenTests
{
    private static readonly Allergen[] Fourteen = Enum.GetValues<Allergen>();

    [Fact]
    public void Each_of_the_nine_stands_for_just_one_of_the_fourteen()
    {
        var nine = Enum.GetValues<UsAllergen>();

        Assert.Equal(9, nine.Length);
        Assert.All(nine, us => Assert.Single(Fourteen, allergen => UsAllergens.Of(allergen) == us));
    }

    [Fact]
    public void What_is_not_among_the_nine_is_said_to_be_so_and_nothing_else_is() =>
        Assert.All(Fourteen, allergen => Assert.Equal(UsAllergens.Of(allergen) is null, UsAllergens.MatchOf(allergen) == UsMatch.NotAmongThem));

    [Fact]
    public void Five_are_named_in_Europe_only() => Assert.Equal(
        [Allergen.Celery, Allergen.Mustard, Allergen.Sulphites, Allergen.Lupin, Allergen.Molluscs],
        Fourteen.Where(allergen => UsAllergens.Of(allergen) is null));

    [Fact]
    public void Eight_tree_nuts_are_named_in_Annex_II_and_pine_nuts_are_not()
    {
        Assert.Equal(8, Enum.GetValues<TreeNut>().Count(TreeNuts.IsAmongTheFourteen));
        Assert.False(TreeNuts.IsAmongTheFourteen(TreeNut.PineNut));
    }
}
