using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class WetnessTests
{
    private static readonly SplitEater[] Two =
    [
        ASplit.Eater("ana", 4, null, ("mushrooms", Liking.Favourite), ("peppers", Liking.Favourite)),
        ASplit.Eater("eva", 4, null, ("mushrooms", Liking.Like), ("peppers", Liking.Favourite)),
    ];

    private static readonly SplitRequest Night = ASplit.Night(AMenu.With(6), 1, Two);

    [Fact]
    public void What_would_stay_soggy_is_not_offered()
    {
        var wet = Rule(("red", 0.06), ("blend", 0.03), ("mushrooms", 0.04), ("peppers", 0.04), ("onions", 0.02));

        var split = SplitPlanner.For(Night with { Wetness = wet }, Effort.Usual, CancellationToken.None);

        Assert.All(split.Combinations, combination => Assert.True(
            combination.ItemIds.Sum(id => wet.AtLeastGramsPerCm2.GetValueOrDefault(id)) <= wet.BoundGramsPerCm2 + 1e-12));
        Assert.Contains(split.Combinations, combination => combination.ToppingIds.Count > 0);
    }

    [Fact]
    public void A_base_that_is_too_wet_by_itself_takes_nothing_from_anybody()
    {
        var wet = Rule(("red", 0.2), ("white", 0.2), ("mushrooms", 0.04));

        var split = SplitPlanner.For(Night with { Wetness = wet }, Effort.Usual, CancellationToken.None);

        Assert.All(split.Nearness(), nearness => Assert.True(nearness > 0.9));
    }

    private static WetnessRule Rule(params (string Id, double Grams)[] waters) =>
        new(0.14, waters.ToDictionary(water => water.Id, water => water.Grams));
}
