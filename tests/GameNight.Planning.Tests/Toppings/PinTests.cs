using CsCheck;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>What a host settles by hand, and which toppings never meet.</summary>
public class PinTests
{
    private static readonly SplitEater[] Four =
    [
        ASplit.Eater("ana", 4, null, ("mushrooms", Liking.Favourite)),
        ASplit.Eater("eva", 4, null, ("salami", Liking.Favourite)),
        ASplit.Eater("luis", 4, null, ("onions", Liking.Favourite)),
        ASplit.Eater("rui", 4, ASplit.NoNutsNear),
    ];

    private static readonly SplitRequest Night = ASplit.Night(AMenu.With(5), 3, Four);

    [Theory]
    [InlineData(0)]
    [InlineData(8)]
    public void A_pinned_part_stands_on_its_pie_and_the_rest_is_made_around_it(int effort)
    {
        var split = Plan(Night with { Pins = [Ham(pie: 3, parts: 1)] }, effort);

        var ham = split.Combinations.Single(combination => combination.ToppingIds.SequenceEqual(["ham"])).Letter;
        Assert.Contains(split.Pies[2].Sectors, sector => sector.Letter == ham && sector.Slices >= 4);
        Assert.Empty(split.Conflicts);
        Assert.Equal(16, split.Servings.Sum(serving => serving.Slices));
    }

    [Fact]
    public void Every_pie_pinned_leaves_nothing_to_choose()
    {
        var split = Plan(Night with { Pins = [Plain(1, 2), Ham(2, 2), Ham(3, 1), Plain(3, 1)] }, 8);

        Assert.Equal(["8", "8", "4+4"], split.Pies.Select(pie => string.Join('+', pie.Sectors.Select(sector => sector.Slices))));
    }

    [Fact]
    public void Pins_that_cannot_hold_are_left_out_and_named()
    {
        var nuts = new Pin(1, 1, "red", "dairy-free", []);
        var split = Plan(Night with { Pins = [nuts, Ham(9, 1), Ham(2, 2), Plain(2, 1), Ham(3, 1) with { ToppingIds = ["truffle"] }] }, 0);

        Assert.Equal(
            [
                new PinLeftOut(1, PinFault.MustNotBeThere), new PinLeftOut(9, PinFault.NoSuchPie),
                new PinLeftOut(2, PinFault.TooManyParts), new PinLeftOut(3, PinFault.NotOnMenu),
            ],
            split.Conflicts.OfType<PinLeftOut>());
    }

    [Fact]
    public void Toppings_that_the_host_keeps_apart_never_meet() => ASplit.Nights(Gen.Int[1, 9], mostSlices: 4).Sample(
        night =>
        {
            var apart = night with { Menu = night.Menu with { Apart = [new("salami", "mushrooms"), new("onions", "olives")] } };
            foreach (var effort in new[] { 0, 1 })
            {
                Assert.DoesNotContain(Plan(apart, effort).Combinations, combination =>
                    (combination.ToppingIds.Contains("salami") && combination.ToppingIds.Contains("mushrooms"))
                    || (combination.ToppingIds.Contains("onions") && combination.ToppingIds.Contains("olives")));
            }
        },
        iter: 40);

    [Fact]
    public void A_pie_of_quarters_feeds_four_tastes()
    {
        string[] toppings = ["mushrooms", "salami", "onions", "olives"];
        var eaters = toppings.Select((topping, index) => ASplit.Eater(
            "e" + index, 2, null, [(topping, Liking.Favourite), .. toppings.Where(other => other != topping).Select(other => (other, Liking.Never))]));
        var night = ASplit.Night(AMenu.With(4, mostToppings: 1), 1, [.. eaters]);

        var (quarters, halves) = (Plan(night with { Parts = 4 }, 8), Plan(night, 8));

        Assert.Equal([2, 2, 2, 2], quarters.Pies.Single().Sectors.Select(sector => sector.Slices));
        Assert.All(quarters.Nearness(), nearness => Assert.Equal(1, nearness));
        Assert.True(halves.Nearness()[0] < 1);
    }

    [Fact]
    public void Random_pins_never_break_a_rule() => (
        from night in ASplit.Nights(Gen.Int[1, 9], mostSlices: 4).Where(night => night.Pies > 0)
        from pins in Gen.Select(Gen.Int[1, night.Pies], Gen.Int[1, 4], Gen.Bool, Gen.Int[0, 2]).Array[0, 4]
        select night with
        {
            Pins = [.. pins.Select(pin => new Pin(
                pin.Item1, pin.Item2, pin.Item3 ? "red" : "white", pin.Item4 == 0 ? "no-cheese" : "blend", []))],
        }).Sample(
        night =>
        {
            foreach (var effort in new[] { 0, 1 })
            {
                Assert.Empty(ToppingSplitCheck.Breaches(night, Plan(night, effort)));
            }
        },
        iter: 100);

    private static Pin Ham(int pie, int parts) => new(pie, parts, "red", "blend", ["ham"]);

    private static Pin Plain(int pie, int parts) => new(pie, parts, "red", "blend", []);

    private static ToppingSplit Plan(SplitRequest night, int slices) => SplitPlanner.For(night, new Effort(slices), CancellationToken.None);
}
