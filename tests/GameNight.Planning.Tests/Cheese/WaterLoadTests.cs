using CsCheck;
using GameNight.Planning.Cheese;
using GameNight.Planning.Quantities;
using GameNight.Planning.Toppings;
using GameNight.TestKit;

namespace GameNight.Planning.Tests.Cheese;

public class WaterLoadTests
{
    private const double RoundOff = 1e-9;
    private const double AreaCm2 = 660;

    private static readonly WaterLoadTable Table = SharedFolder.Tables.Cheese.WaterLoad;

    private static readonly Gen<WetItem[]> Pies = Gen.Select(
        Gen.Enum<MenuRole>(), Gen.Double[0, 0.4], Gen.Double[0, 1].Nullable()).Array[1, 6].Select(rows => rows
            .Select((row, index) => new WetItem($"i{index}", row.Item1, row.Item2, row.Item3 is { } water ? new Share(water) : null))
            .ToArray());

    [Fact]
    public void More_of_anything_is_never_less_water() => Gen.Select(Pies, Gen.Int[0, 5], Gen.Double[0, 0.3]).Sample((items, at, more) =>
    {
        var fuller = items.ToArray();
        var index = at % items.Length;
        fuller[index] = fuller[index] with { GramsPerCm2 = fuller[index].GramsPerCm2 + more };
        var (before, after) = (For(items).GramsPerCm2, For(fuller).GramsPerCm2);

        Assert.True(after.Low >= before.Low - RoundOff && after.Expected >= before.Expected - RoundOff && after.High >= before.High - RoundOff);
    });

    [Fact]
    public void An_item_nobody_described_widens_the_band() => Pies.Sample(items =>
    {
        var load = For(items);
        var described = For([.. items.Select(item => item with { Water = item.Water ?? new Share(Table.Of(item.Role).Share) })]);

        Assert.Equal(described.GramsPerCm2.Expected, load.GramsPerCm2.Expected, RoundOff);
        Assert.True(load.GramsPerCm2.Low <= described.GramsPerCm2.Low + RoundOff);
        Assert.True(load.GramsPerCm2.High >= described.GramsPerCm2.High - RoundOff);
        Assert.Equal(items.Select(item => item.Water is null), load.Parts.Select(part => part.IsAssumed));
    });

    [Fact]
    public void Taking_less_as_it_says_brings_the_load_down_to_the_bound() => Pies.Sample(items =>
    {
        var load = For(items);
        var soggy = load.Because.OfType<SoggyMiddle>().SingleOrDefault();
        Assert.Equal(load.GramsPerCm2.Low > Table.BoundGramsPerCm2, soggy is not null);
        if (soggy is null)
        {
            return;
        }

        var less = soggy.TakeLessOf.ToDictionary(part => part.ItemId, part => part.PerPie.Value / AreaCm2);
        var lighter = For([.. items.Select(item => item with { GramsPerCm2 = Math.Max(0, item.GramsPerCm2 - less.GetValueOrDefault(item.ItemId)) })]);
        Assert.Equal(Table.BoundGramsPerCm2, lighter.GramsPerCm2.Expected, RoundOff);
        Assert.True(soggy.CookedFirstGramsPerCm2 <= soggy.LoadGramsPerCm2);
    });

    [Fact]
    public void Raw_mushrooms_on_a_full_pie_make_its_middle_soggy_and_are_what_to_take_less_of()
    {
        WetItem[] plain =
        [
            new("sauce", MenuRole.Base, 0.09, new Share(0.9)), new("cheese", MenuRole.Cheese, 0.12, new Share(0.4646)),
        ];
        WetItem mushrooms = new("mushrooms", MenuRole.Topping, 0.08, new Share(0.92));

        Assert.Empty(For(plain).Because);
        var soggy = Assert.IsType<SoggyMiddle>(Assert.Single(For([.. plain, mushrooms]).Because));

        // By hand: 0.081 + 0.0558 + 0.0736 = 0.2104 g/cm2, 0.0704 too much; of mushrooms that is 0.0765 g/cm2.
        Assert.Equal(0.2104, soggy.LoadGramsPerCm2, 1e-4);
        Assert.Equal(0.2104 - 0.0368, soggy.CookedFirstGramsPerCm2, 1e-4);
        var less = Assert.Single(soggy.TakeLessOf);
        Assert.Equal("mushrooms", less.ItemId);
        Assert.Equal(0.07647 * AreaCm2, less.PerPie.Value, 0.05);
    }

    private static WaterLoad For(params WetItem[] items) => WaterLoad.For("A", items, AreaCm2, Table);
}
