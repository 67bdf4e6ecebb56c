using GameNight.Planning.Foods;
using GameNight.Planning.Quantities;
using GameNight.TestKit;

namespace GameNight.Planning.Tests.Foods;

public class FoodTableTests
{
    private static readonly FoodTable Foods = SharedFolder.Tables.Foods;

    public static TheoryData<Food> All => [.. Enum.GetValues<Food>()];

    /// <summary>Kilocalories per gram: Regulation (EU) 1169/2011, Annex XIV.</summary>
    [Theory]
    [MemberData(nameof(All))]
    public void Energy_is_about_what_the_factors_make_of_the_row(Food food)
    {
        var row = Foods.Of(food);
        var byFactors = (4 * (row.Protein + row.Carbohydrate)) + (9 * row.Fat) + (7 * (row.Alcohol ?? 0));

        // The tables use factors of each food, fibre gives less, and the acid of vinegar is in no column.
        Assert.InRange(byFactors - row.Kilocalories, -0.05 * row.Kilocalories - 20, 0.05 * row.Kilocalories + 75);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void No_row_holds_more_than_its_hundred_grams(Food food)
    {
        var row = Foods.Of(food);
        Assert.InRange(
            row.Water + row.Fat + row.Protein + row.Carbohydrate + (row.Alcohol ?? 0) + (row.SodiumMilligrams / 1000), 0, 100.5);
    }

    [Fact]
    public void Parts_add_up()
    {
        var sum = Foods.Sum([new FoodPart(Food.OliveOil, new Grams(10)), new FoodPart(Food.Salt, new Grams(2))]);

        Assert.Equal(12, sum.Mass.Value, 1e-9);
        Assert.Equal(88.4, sum.Kilocalories, 1e-9);
        Assert.Equal(2 * 0.38758 * 2.5, sum.Salt.Value, 1e-3);
    }
}
