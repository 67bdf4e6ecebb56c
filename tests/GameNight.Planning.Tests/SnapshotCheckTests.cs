using GameNight.Planning.Cheese;
using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
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
        { "menu.items[mushrooms].waterShare", night => night with { Menu = night.Menu with { Items = [.. night.Menu.Items.Select(item => item with { WaterShare = new Share(1.2) })] } } },
        { "sauce.formula.tomatoGrams", Sauce(formula => formula with { Tomato = default }) },
        { "sauce.formula.parts[garlic].grams", Sauce(formula => formula with { Parts = [new FoodPart(Food.Garlic, new Grams(3000))] }) },
        { "sauce.formula.parts[salt].grams", Sauce(formula => formula with { Parts = [new FoodPart(Food.Salt, new Grams(5))] }) },
        { "sauce.formula.parts", Sauce(formula => formula with { Parts = [.. formula.Parts, formula.Parts[0]] }) },
        { "sauce.formula.simmerMinutes", Sauce(formula => formula with { Simmer = Duration.FromHours(9) }) },
        { "sauce.formula.simmerMinutes", Sauce(formula => formula with { Simmer = Duration.FromMinutes(-1) }) },
        { "sauce.formula.salt", Sauce(formula => formula with { Salt = new Share(0.1) }) },
        { "sauce.formula.tinSalt", Sauce(formula => formula with { TinSalt = new Share(0.2) }) },
        { "sauce.formula.pot.diameterCentimetres", Sauce(formula => formula with { Pot = formula.Pot with { Diameter = new Centimetres(3) } }) },
        { "sauce.formula.pot.holdsGrams", Sauce(formula => formula with { Pot = formula.Pot with { Holds = default } }) },
        { "sauce.formula.pot.evaporationGramsPerMinutePerCm2", Sauce(formula => formula with { Pot = formula.Pot with { EvaporationGramsPerMinutePerCm2 = 1 } }) },
        { "sauce.tins", night => Sauce(formula => formula)(night) is var with ? with with { Sauce = with.Sauce! with { Tins = [] } } : night },
        { "sauce.tins", night => Sauce(formula => formula)(night) is var with ? with with { Sauce = with.Sauce! with { Tins = [new Grams(5)] } } : night },
        { "cheeseBlend.blend", night => night with { CheeseBlend = new HouseCheese("cheese-blend", new CheeseBlend(new Share(0.5), new Share(0.2), new Share(0.2))) } },
        { "cheeseBlend.blend.drained", night => night with { CheeseBlend = new HouseCheese("cheese-blend", new CheeseBlend(default, default, new Share(1), new Share(0.5))) } },
        { "byHand.yeast", night => night with { ByHand = ByHand.Nothing with { Yeast = new Share(0) } } },
    };

    private static Func<NightSnapshot, NightSnapshot> Sauce(Func<SauceFormula, SauceFormula> spoil) => night => night with
    {
        Sauce = new HouseSauce("tomato-sauce", spoil(SharedFolder.Tables.Sauces.Formula(SharedFolder.Tables.Sauces.Formulas[0]))),
    };

    [Fact]
    public void A_plain_night_has_no_problems() => Assert.Empty(Check.Problems(ANight().WithGuests(9).Build()));

    [Fact]
    public void The_starting_formulas_of_sauce_and_cheese_have_no_problems()
    {
        var tables = SharedFolder.Tables;
        foreach (var sauce in tables.Sauces.Formulas)
        {
            foreach (var blend in tables.Cheese.Blends)
            {
                Assert.Empty(Check.Problems(ANight().Build() with
                {
                    Sauce = new HouseSauce("tomato-sauce", tables.Sauces.Formula(sauce)),
                    CheeseBlend = new HouseCheese("cheese-blend", blend.Blend),
                }));
            }
        }
    }

    [Fact]
    public void Three_kilograms_of_garlic_are_refused_with_what_is_allowed()
    {
        var night = Sauce(formula => formula with { Parts = [new FoodPart(Food.Garlic, new Grams(3000))] })(ANight().Build());

        var problem = Assert.Single(Check.Problems(night));
        Assert.Equal((3000, 0, 100), (problem.Given, problem.Low, problem.High));
    }

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
