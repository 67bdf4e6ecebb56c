using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class SnapshotCheckTests
{
    private static readonly SnapshotCheck Check = new(SharedFolder.Tables);

    public static TheoryData<string, Func<NightSnapshot, NightSnapshot>> Faults => new()
    {
        { "kitchen.roomCelsius", night => night with { Kitchen = night.Kitchen with { Room = new Celsius(50) } } },
        { "kitchen.fridgeCelsius", night => night with { Kitchen = night.Kitchen with { Room = new Celsius(10), Fridge = new Celsius(12) } } },
        { "kitchen.ovenCelsius", night => night with { Kitchen = night.Kitchen with { Oven = new Celsius(90) } } },
        { "kitchen.batchCapacityGrams", night => night with { Kitchen = night.Kitchen with { BatchCapacity = new Grams(10) } } },
        { "kitchen.piesPerBake", night => night with { Kitchen = night.Kitchen with { PiesPerBake = 0 } } },
        { "kitchen.hands", night => night with { Kitchen = night.Kitchen with { Hands = 0 } } },
        { "kitchen.altitudeMetres", night => night with { Kitchen = night.Kitchen with { AltitudeMetres = double.NaN } } },
        { "kitchen.bakeMinutes", night => night with { Kitchen = night.Kitchen with { Bake = Duration.FromHours(3) } } },
        { "formula.water", night => night with { Formula = night.Formula with { Water = new Share(1.5) } } },
        { "formula.salt", night => night with { Formula = night.Formula with { Salt = new Share(0.1) } } },
        { "shape.diameterCentimetres", night => night with { Shape = night.Shape with { Diameter = new Centimetres(80) } } },
        { "shape.rimCentimetres", night => night with { Shape = night.Shape with { Rim = new Centimetres(12) } } },
        { "shape.slicesPerPie", night => night with { Shape = night.Shape with { SlicesPerPie = 0 } } },
        { "runOutChance", night => night with { RunOutChance = new Share(0) } },
        { "coldFerment", night => night with { ColdFerment = new ColdFerment(Duration.FromHours(72), Duration.FromHours(48), Duration.FromHours(40)) } },
        { "away", night => night with { Away = [new HostAway(Now, Now)] } },
        { "menu.items", night => night with { Menu = night.Menu with { Items = [.. night.Menu.Items, night.Menu.Items[0]] } } },
        { "byHand.ballGrams", night => night with { ByHand = ByHand.Nothing with { Ball = new Grams(5000) } } },
        { "byHand.yeast", night => night with { ByHand = ByHand.Nothing with { Yeast = new Share(0) } } },
    };

    [Fact]
    public void A_plain_night_has_no_problems() => Assert.Empty(Check.Problems(ANight().WithGuests(9).Build()));

    [Theory]
    [MemberData(nameof(Faults))]
    public void Each_fault_is_named_with_its_field(string field, Func<NightSnapshot, NightSnapshot> spoil) =>
        Assert.Contains(Check.Problems(spoil(ANight().WithGuests(2).Build())), problem => problem.Field == field);

    [Fact]
    public void Two_eaters_of_one_id_are_named()
    {
        var night = ANight().With(AnswerState.Coming, AnEater("same")).With(AnswerState.Coming, AnEater("same")).Build();

        Assert.Contains(Check.Problems(night), problem => problem.Fault == SnapshotFault.Repeated);
    }

    [Fact]
    public void A_guest_without_anybody_is_named()
    {
        var night = ANight().Build() with { Guests = [new GuestSnapshot("empty", AnswerState.Coming, [])] };

        Assert.Contains(Check.Problems(night), problem => problem.Field == "guests[empty].eaters");
    }
}
