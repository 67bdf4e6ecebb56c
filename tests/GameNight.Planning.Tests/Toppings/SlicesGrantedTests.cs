using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class SlicesGrantedTests
{
    [Fact]
    public void Grants_all_that_is_wanted_when_there_is_enough() =>
        Assert.Equal([3, 0, 4], SlicesGranted.From(available: 8, [3, 0, 4]));

    [Fact]
    public void Cuts_everybody_by_largest_remainder() =>
        Assert.Equal([2, 3, 3], SlicesGranted.From(available: 8, [3, 4, 5]));

    [Fact]
    public void Grants_nothing_from_nothing() =>
        Assert.Equal([0, 0], SlicesGranted.From(available: 0, [3, 4]));

    [Fact]
    public void Gives_an_equal_remainder_to_the_earlier_one() =>
        Assert.Equal([2, 1, 1], SlicesGranted.From(available: 4, [3, 3, 3]));
}
