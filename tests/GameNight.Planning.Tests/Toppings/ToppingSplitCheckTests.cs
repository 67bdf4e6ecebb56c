using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class ToppingSplitCheckTests
{
    private static readonly SplitRequest Night = ASplit.Night(
        AMenu.With(5), 2, ASplit.Eater("a", 3, ASplit.NoNutsNear), ASplit.Eater("b", 4, ASplit.Vegetarian), ASplit.Eater("c", 4));

    private static readonly ToppingSplit Sound = new(
        [
            new Combination("A", "red", "blend", ["mushrooms"]),
            new Combination("B", "red", "blend", ["salami"]),
            new Combination("C", "red", "dairy-free", []),
        ],
        [
            new PieOrder(1, [new Sector("A", 8)], ["a"]),
            new PieOrder(2, [new Sector("B", 4), new Sector("C", 4)], []),
        ],
        [new Serving("a", 1, "A", 3), new Serving("b", 2, "C", 4), new Serving("c", 2, "B", 4)],
        [],
        SplitQuality.Quick,
        0,
        0,
        []);

    [Fact]
    public void Passes_a_sound_split() => Assert.Empty(ToppingSplitCheck.Breaches(Night, Sound));

    [Fact]
    public void Finds_a_slice_that_is_not_permitted() =>
        AssertBreach("must not have", Sound with { Servings = [new Serving("b", 2, "B", 4)] });

    [Fact]
    public void Finds_a_slice_on_dough_that_is_not_permitted()
    {
        var night = Night with { Menu = Night.Menu with { Dough = AMenu.Of([], []) } };

        Assert.Contains(ToppingSplitCheck.Breaches(night, Sound), breach => breach.Contains("b is served something they must not have"));
    }

    [Fact]
    public void Finds_a_must_not_touch_eater_at_an_open_pie() =>
        AssertBreach("not their own", Sound with
        {
            Pies = [new PieOrder(1, [new Sector("A", 8)], []), Sound.Pies[1]],
        });

    [Fact]
    public void Finds_a_forbidden_half_on_an_own_pie() =>
        AssertBreach("must not touch", Sound with
        {
            Pies = [new PieOrder(1, [new Sector("A", 4), new Sector("C", 4)], ["a"]), Sound.Pies[1]],
        });

    [Fact]
    public void Finds_more_slices_served_than_there_are() =>
        AssertBreach("More slices of C", Sound with { Servings = [new Serving("b", 2, "C", 4), new Serving("c", 2, "C", 1)] });

    [Fact]
    public void Finds_more_slices_served_than_wanted() =>
        AssertBreach("than wanted", Sound with { Servings = [new Serving("a", 1, "A", 4)] });

    [Fact]
    public void Finds_a_serving_for_a_stranger() =>
        AssertBreach("eats nothing here", Sound with { Servings = [new Serving("z", 1, "A", 1)] });

    [Fact]
    public void Finds_a_pie_in_parts_that_are_too_small() =>
        AssertBreach("made of whole parts", Sound with
        {
            Pies = [Sound.Pies[0], new PieOrder(2, [new Sector("B", 4), new Sector("C", 2), new Sector("C", 2)], [])],
        });

    [Fact]
    public void Finds_a_pie_with_slices_missing() =>
        AssertBreach("made of whole parts", Sound with { Pies = [Sound.Pies[0], new PieOrder(2, [new Sector("B", 4), new Sector("C", 3)], [])] });

    [Fact]
    public void Finds_an_own_pie_after_an_open_one() =>
        AssertBreach("out of order", Sound with
        {
            Pies = [Sound.Pies[1] with { Number = 1 }, Sound.Pies[0] with { Number = 2 }],
        });

    [Fact]
    public void Finds_a_letter_that_stands_for_nothing() =>
        AssertBreach("letters", Sound with { Combinations = [.. Sound.Combinations.Take(2)] });

    [Fact]
    public void Finds_a_letter_that_stands_for_two() =>
        AssertBreach("two combinations", Sound with { Combinations = [.. Sound.Combinations, new Combination("A", "red", "blend", [])] });

    [Fact]
    public void Finds_a_combination_that_is_not_on_the_menu() =>
        AssertBreach("not on the menu", Sound with
        {
            Combinations = [.. Sound.Combinations.Take(2), new Combination("C", "red", "dairy-free", ["gold"])],
        });

    [Fact]
    public void Throws_on_a_breach() =>
        Assert.Throws<InvalidOperationException>(() => ToppingSplitCheck.Demand(Night, Sound with { Servings = [new Serving("z", 1, "A", 1)] }));

    private static void AssertBreach(string words, ToppingSplit split) =>
        Assert.Contains(ToppingSplitCheck.Breaches(Night, split), breach => breach.Contains(words));
}
