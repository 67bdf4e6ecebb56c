using GameNight.Planning.Toppings;

namespace GameNight.Planning.Tests.Toppings;

/// <summary>What becomes of a pie that a host changes by hand.</summary>
public class PieEditTests
{
    private static readonly Pin Anchovies = PieEdit.PinOf(ATable.Split, ATable.Split.Pies[1], ATable.Split.Pies[1].Sectors[0], 4);
    private static readonly Pin Sausage = PieEdit.PinOf(ATable.Split, ATable.Split.Pies[1], ATable.Split.Pies[1].Sectors[1], 4);
    private static readonly Pin WholeSausage = PieEdit.PinOf(ATable.Split, ATable.Split.Pies[2], ATable.Split.Pies[2].Sectors[0], 4);

    [Fact]
    public void A_sector_is_read_as_what_is_on_it_and_how_much_of_the_pie()
    {
        Assert.Equal((2, 1, "blend"), (Anchovies.Pie, Anchovies.Parts, Anchovies.CheeseId));
        Assert.Equal(["anchovies"], Anchovies.ToppingIds);
        Assert.Equal((3, 2), (WholeSausage.Pie, WholeSausage.Parts));
    }

    [Fact]
    public void Another_combination_takes_the_place_of_the_one_before_and_the_other_half_stays_settled()
    {
        var plain = Anchovies with { ToppingIds = [] };
        var settled = new SplitByHand().Settling(2, [Anchovies, Sausage]);

        Assert.Equal([plain, Sausage], PieEdit.Changed(settled, Anchovies, plain, partsPerPie: 2));
    }

    [Fact]
    public void What_fills_the_whole_pie_leaves_no_room_for_what_was_settled()
    {
        var whole = Anchovies with { Parts = 2 };
        var settled = new SplitByHand().Settling(2, [Sausage]);

        Assert.Equal([whole], PieEdit.Changed(settled, Anchovies, whole, partsPerPie: 2));
    }

    [Fact]
    public void Two_parts_change_places_between_pies_as_far_as_both_reach()
    {
        var swapped = PieEdit.Swapped(null, Anchovies, WholeSausage, partsPerPie: 2);

        var there = Assert.Single(swapped.Pins!, pin => pin.Pie == 2);
        var here = Assert.Single(swapped.Pins!, pin => pin.Pie == 3);
        Assert.Equal(("sausage", 1), (there.ToppingIds[0], there.Parts));
        Assert.Equal(("anchovies", 1), (here.ToppingIds[0], here.Parts));
    }

    [Fact]
    public void In_parts_of_another_size_pins_cover_as_much_and_what_cannot_be_had_is_let_go_of()
    {
        var quarter = Anchovies with { Parts = 1 };
        var halves = new SplitByHand().Settling(2, [Anchovies]);

        Assert.Equal([Anchovies with { Parts = 2 }], PieEdit.Parted(halves, from: 2, to: 4).Pins);
        Assert.Null(PieEdit.Parted(new SplitByHand(Parts: 4).Settling(2, [quarter]), from: 4, to: 2).Pins);
    }

    [Fact]
    public void What_is_let_go_of_is_settled_no_more()
    {
        var settled = new SplitByHand().Settling(2, [Anchovies, Sausage]);
        Assert.True(PieEdit.IsSettled(settled, Anchovies));

        var after = settled.Settling(2, PieEdit.LetGo(settled, Anchovies));

        Assert.False(PieEdit.IsSettled(after, Anchovies));
        Assert.True(PieEdit.IsSettled(after, Sausage));
        Assert.True(after.Settling(2, []).IsNothing);
    }
}
