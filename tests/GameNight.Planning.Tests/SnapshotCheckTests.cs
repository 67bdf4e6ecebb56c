using GameNight.Planning.Dough;
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
        { "formula.water", night => night with { Formula = night.Formula with { Extras = [new ExtraIngredient("milk", new Share(0.5), new Share(0.88))] } } },
        { "formula.extras[0].name", night => night with { Formula = night.Formula with { Extras = [new ExtraIngredient(" ", new Share(0.1), default)] } } },
        { "formula.extras[0].ofFlour", night => night with { Formula = night.Formula with { Extras = [new ExtraIngredient("milk", new Share(10), new Share(10))] } } },
        { "formula.extras", night => night with { Formula = night.Formula with { Extras = [.. Enumerable.Repeat(new ExtraIngredient("spice", default, default), 13)] } } },
        { "formula.flours", night => night with { Formula = night.Formula with { Flours = [AFlour(0), AFlour(0)] } } },
        { "formula.flours", night => night with { Formula = night.Formula with { Flours = [AFlour(0.7), AFlour(0.2)] } } },
        { "formula.flours[0].protein", night => night with { Formula = night.Formula with { Flours = [AFlour(1) with { Protein = new Share(0.5) }] } } },
        { "formula.preferment.ofFlour", night => night with { Formula = night.Formula with { Preferment = ABatter(0.95) } } },
        { "formula.preferment.waterPerFlour", night => night with { Formula = night.Formula with { Preferment = ABatter(0.6) } } },
        { "formula.preferment.beforeMinutes", night => night with { Formula = night.Formula with { Preferment = ABatter(0.2) with { Before = Duration.Zero } } } },
        { "formula.preferment.ofYeast", night => night with { Formula = night.Formula with { Preferment = ABatter(0.2) with { OfYeast = new Share(2) } } } },
        { "formula.soaker.waterPerFlour", night => night with { Formula = night.Formula with { Soaker = new Soaker("seeds", new Share(0.3), new Share(3)) } } },
        { "formula.kneader.stayedOut", night => night with { Formula = night.Formula with { Kneader = new KneadersCorrection(new Share(1)) } } },
        { "kitchen.flour.roomHumidity", night => night with { Kitchen = night.Kitchen with { Flour = new KitchenFlour(WheatKind.Hard, FlourKept.Paper, new Share(0.99)) } } },
        { "kitchen.flour.moisture", night => night with { Kitchen = night.Kitchen with { Flour = new KitchenFlour(WheatKind.Hard, FlourKept.Paper, null, new Share(0.3)) } } },
        { "kitchen.scale.coarseGrams", night => night with { Kitchen = night.Kitchen with { Scale = new KitchenScale(default, default) } } },
        { "kitchen.scale.fineGrams", night => night with { Kitchen = night.Kitchen with { Scale = new KitchenScale(new Grams(1), new Grams(2)) } } },
        { "kitchen.frictionKelvin", night => night with { Kitchen = night.Kitchen with { FrictionKelvin = double.NaN } } },
        { "byHand.ballGrams", night => night with { ByHand = ByHand.Nothing with { Ball = new Grams(20) } } },
        { "shape.oilInsetCentimetres", night => night with { Shape = night.Shape with { OilInset = new Centimetres(40) } } },
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
    public void Every_part_at_once_is_no_problem() => Assert.Empty(Check.Problems(ANight().WithGuests(2).But(night => night with
    {
        Formula = night.Formula with
        {
            Salt = default,
            Extras = [new ExtraIngredient("milk", new Share(0.2), new Share(0.88))],
            Flours = [AFlour(0.75), AFlour(0.25)],
            Preferment = ABatter(0.3),
            Soaker = new Soaker("seeds", new Share(0.05), new Share(2)),
            Kneader = new KneadersCorrection(new Share(0.04)),
        },
        Kitchen = night.Kitchen with
        {
            Flour = new KitchenFlour(WheatKind.Soft, FlourKept.Paper, new Share(0.5), new Share(0.12)),
            Scale = new KitchenScale(new Grams(1), new Grams(0.01)),
            FrictionKelvin = 9,
        },
    }).Build()));

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

    private static FlourPart AFlour(double share) => new("flour", new Share(share), new Share(0.6), new Share(0.12));

    private static Preferment ABatter(double share) => new("batter", new Share(share), new Share(1), Duration.FromHours(12), new Share(0.5));
}
