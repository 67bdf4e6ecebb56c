using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class PalateTests
{
    private static readonly MenuLists Menu = new(AMenu.With(toppings: 4));

    [Theory]
    [InlineData(12, Liking.Favourite)]
    [InlineData(9, Liking.Like)]
    [InlineData(6, Liking.Fine)]
    [InlineData(2, Liking.RatherNot)]
    [InlineData(0, Liking.Never)]
    [InlineData(10, Liking.Favourite, Liking.Fine)]
    [InlineData(11, Liking.Favourite, Liking.Like)]
    [InlineData(8, Liking.Like, Liking.Fine)]
    [InlineData(10, Liking.Favourite, Liking.Fine, Liking.Fine)]
    [InlineData(4, Liking.Favourite, Liking.RatherNot)]
    [InlineData(0, Liking.Favourite, Liking.Never)]
    public void Scores_the_best_topping_and_the_mean_alike(int score, params Liking[] likings)
    {
        var likes = likings.Select((liking, topping) => (AMenu.Toppings[topping].Id, liking)).ToDictionary();
        var palate = new Palate(DietaryNeeds.None, likes, Menu);

        Assert.Equal(score, palate.Score(new MenuChoice(0, 0, [.. Enumerable.Range(0, likings.Length)])));
    }

    [Fact]
    public void Gives_plain_less_than_fine_and_more_than_rather_not()
    {
        var palate = new Palate(DietaryNeeds.None, ASplit.NoLikes, Menu);

        Assert.Equal(4, palate.Score(new MenuChoice(0, 0, [])));
    }

    [Fact]
    public void Takes_a_point_for_another_base_and_another_cheese()
    {
        var palate = new Palate(DietaryNeeds.None, ASplit.NoLikes, Menu);

        Assert.Equal(4, palate.Score(new MenuChoice(Base: 1, Cheese: 1, [0])));
    }

    [Fact]
    public void Takes_no_point_for_what_an_eater_needs()
    {
        var palate = new Palate(ASplit.Vegan, ASplit.NoLikes, Menu);

        Assert.Equal(6, palate.Score(new MenuChoice(Base: 0, Cheese: 1, [0])));
        Assert.Null(palate.Score(new MenuChoice(Base: 0, Cheese: 0, [0])));
    }

    [Fact]
    public void Has_no_score_for_a_topping_that_is_not_permitted()
    {
        var palate = new Palate(ASplit.Vegetarian, ASplit.NoLikes, Menu);

        Assert.Null(palate.Score(new MenuChoice(0, 0, [0, 1])));
    }

    [Fact]
    public void Knows_the_best_that_is_possible()
    {
        var palate = new Palate(
            ASplit.Vegetarian,
            new Dictionary<string, Liking> { ["salami"] = Liking.Favourite, ["onions"] = Liking.Like },
            Menu);

        Assert.Equal(9, palate.BestPossible);
    }
}
