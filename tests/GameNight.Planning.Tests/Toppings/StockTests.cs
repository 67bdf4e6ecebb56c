using CsCheck;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

public class StockTests
{
    private static readonly SplitEater[] Six =
        [.. Enumerable.Range(0, 6).Select(index => ASplit.Eater($"e{index}", 4, null, ("mushrooms", Liking.Favourite), ("peppers", Liking.Like)))];

    private static readonly SplitRequest Night = ASplit.Night(AMenu.With(6), 3, Six);

    [Fact]
    public void What_is_gone_goes_on_no_pie_and_that_is_said()
    {
        var split = For(Night with { Stock = Of(("mushrooms", new ItemStock(new Grams(60), OnHand: default(Grams)))) });

        Assert.DoesNotContain(split.Combinations, combination => combination.ToppingIds.Contains("mushrooms"));
        Assert.Contains(split.Combinations, combination => combination.ToppingIds.Contains("peppers"));
        Assert.Equal(["mushrooms"], Assert.Single(split.Conflicts.OfType<NoneOnHand>()).ItemIds);
    }

    [Fact]
    public void Nobody_is_told_of_what_nobody_misses()
    {
        var split = For(Night with { Stock = Of(("ham", new ItemStock(new Grams(60), OnHand: default(Grams)))) });

        Assert.Empty(split.Conflicts);
    }

    [Fact]
    public void The_pies_take_no_more_than_there_is()
    {
        var split = For(Night with { Stock = Of(("mushrooms", new ItemStock(new Grams(60), OnHand: new Grams(95)))) });

        Assert.Equal(12, SlicesWith(split, "mushrooms"));
        Assert.Empty(split.Conflicts);
    }

    [Fact]
    public void With_every_base_gone_the_menu_is_incomplete_and_nothing_hangs()
    {
        var split = For(Night with { Stock = Of(("red", new ItemStock(new Grams(60), default(Grams))), ("white", new ItemStock(new Grams(60), default(Grams)))) });

        Assert.Empty(split.Pies);
        Assert.Equal(MenuRole.Base, Assert.Single(split.Conflicts.OfType<MenuIncomplete>()).Missing);
        Assert.Equal(["red", "white"], Assert.Single(split.Conflicts.OfType<NoneOnHand>()).ItemIds);
    }

    [Fact]
    public void Where_nothing_else_is_left_more_is_taken_than_there_is_and_said_how_much()
    {
        var menu = Night.Menu with { Items = [.. Night.Menu.Items.Where(item => item.Id != "white")] };

        var split = For(Night with { Menu = menu, Stock = Of(("red", new ItemStock(new Grams(60), new Grams(120)))) });

        var more = Assert.Single(split.Conflicts.OfType<MoreThanOnHand>());
        Assert.Equal(("red", 180, 120), (more.ItemId, more.Needed.Value, more.OnHand.Value));
        Assert.Equal(3, split.Pies.Count);
    }

    [Fact]
    public void A_settled_part_with_what_is_gone_is_left_out()
    {
        var split = For(Night with
        {
            Pins = [new Pin(1, 1, "red", "blend", ["ham"])],
            Stock = Of(("ham", new ItemStock(new Grams(60), default(Grams)))),
        });

        Assert.Equal(PinFault.NotOnMenu, Assert.Single(split.Conflicts.OfType<PinLeftOut>()).Because);
        Assert.Equal(["ham"], Assert.Single(split.Conflicts.OfType<NoneOnHand>()).ItemIds);
    }

    [Fact]
    public void Among_equals_the_fewest_packs_are_opened()
    {
        // Both are liked alike by all: a pack of mushrooms is enough for three pies, one of peppers for half a pie.
        SplitEater[] alike = [.. Enumerable.Range(0, 6).Select(index => ASplit.Eater($"e{index}", 4, null, ("mushrooms", Liking.Like), ("peppers", Liking.Like)))];

        foreach (var (few, many) in new[] { ("mushrooms", "peppers"), ("peppers", "mushrooms") })
        {
            var split = For(ASplit.Night(AMenu.With(6, mostToppings: 1), 3, alike) with
            {
                Stock = Of((few, new ItemStock(new Grams(60), Pack: new Grams(200))), (many, new ItemStock(new Grams(60), Pack: new Grams(30)))),
            });

            Assert.True(SlicesWith(split, few) > SlicesWith(split, many), $"{few}: {SlicesWith(split, few)} slices");
        }
    }

    [Fact]
    public void On_random_nights_with_random_stock_no_rule_is_broken() =>
        Gen.Select(ASplit.Nights(Gen.Int[0, 10]), Gen.Int[-1, 200].Array[24], Gen.Int[-1, 300].Array[24]).Sample(
            (night, onHand, packs) =>
            {
                var stock = night.Menu.Items.Select((item, index) => (item.Id, new ItemStock(
                    new Grams(item.GramsPerCm2 * 600), onHand[index] < 0 ? null : new Grams(onHand[index]), packs[index] <= 0 ? null : new Grams(packs[index]))));
                var request = night with { Stock = stock.ToDictionary(row => row.Id, row => row.Item2) };

                Assert.Empty(ToppingSplitCheck.Breaches(request, SplitPlanner.For(request, Effort.Quick, CancellationToken.None)));
                Assert.Empty(ToppingSplitCheck.Breaches(request, SplitPlanner.For(request, new Effort(1), CancellationToken.None)));
            },
            iter: 60);

    private static Dictionary<string, ItemStock> Of(params (string Id, ItemStock Stock)[] rows) => rows.ToDictionary(row => row.Id, row => row.Stock);

    private static ToppingSplit For(SplitRequest request) => SplitPlanner.For(request, Effort.Usual, CancellationToken.None);

    private static int SlicesWith(ToppingSplit split, string topping)
    {
        var letters = split.Combinations.Where(combination => combination.ToppingIds.Contains(topping)).Select(combination => combination.Letter).ToHashSet();
        return split.Pies.SelectMany(pie => pie.Sectors).Where(sector => letters.Contains(sector.Letter)).Sum(sector => sector.Slices);
    }
}
