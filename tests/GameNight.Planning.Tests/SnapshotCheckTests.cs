using GameNight.Planning.Appetite;
using GameNight.Planning.Cheese;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Tests.Toppings;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
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
        { "kitchen.place.surface.thicknessMillimetres", Place(place => place with { Surface = place.Surface with { ThicknessMillimetres = 100 } }) },
        { "kitchen.place.surface.widthCentimetres", Place(place => place with { Surface = place.Surface with { Width = default } }) },
        { "kitchen.place.ironAbove.thicknessMillimetres", Place(place => place with { IronAbove = place.Surface with { Kind = SurfaceKind.CastIron, ThicknessMillimetres = double.NaN } }) },
        { "kitchen.place.setPointCelsius", night => Place(place => place with { IronAbove = place.Surface with { Kind = SurfaceKind.Aluminium } })(night with { Kitchen = night.Kitchen with { Oven = new Celsius(400) } }) },
        { "kitchen.place.readings", Place(place => place with { Readings = [.. Enumerable.Repeat(new SurfaceReading(Duration.FromMinutes(9), new Celsius(90)), 201)] }) },
        { "kitchen.place.readings.afterSwitchOnMinutes", Place(place => place with { Readings = [new SurfaceReading(Duration.FromHours(7), new Celsius(90))] }) },
        { "kitchen.place.readings.topCelsius", Place(place => place with { Readings = [new SurfaceReading(Duration.FromHours(1), new Celsius(-20))] }) },
        { "shortageWeight", night => night with { ShortageWeight = 0.5 } },
        { "shortageWeight", night => night with { ShortageWeight = 1e9 } },
        { "shortageWeight", night => night with { ShortageWeight = double.NaN } },
        { "lengthMinutes", night => night with { Length = Duration.FromHours(30) } },
        { "courses", night => night with { Courses = [.. Enumerable.Repeat(new Course("dip", AppetiteTaken.ALittle), 13)] } },
        { "courses.name", night => night with { Courses = [new Course("", AppetiteTaken.Some)] } },
        { "guests[guest-0].household", Guest(guest => guest with { Household = "" }) },
        { "guests[guest-0].eaters[guest-0].stays", Guest(guest => guest with { Eaters = [guest.Eaters[0] with { Stays = new Share(1.5) }] }) },
        { "guests[guest-0].past", Past([.. Enumerable.Repeat(new PastEvening(1, AnswerState.Coming), 61)]) },
        { "guests[guest-0].past.nightsAgo", Past(new PastEvening(0, AnswerState.Coming)) },
        { "guests[guest-0].past.slices", Past(new PastEvening(1, AnswerState.Coming, true, -1)) },
        { "guests[guest-0].past.slices", Past(new PastEvening(1, AnswerState.Coming, true, double.NaN)) },
        { "guests[guest-0].past.sliceGrams", Past(new PastEvening(1, AnswerState.Coming, true, 3, default(Grams))) },
        { "guests[guest-0].past.served", Past(new PastEvening(1, AnswerState.Coming, true, Served: new Share(1.5))) },
        { "guests[guest-0].past.appetite", Past(new PastEvening(1, AnswerState.Coming, true, 3, Appetite: default(Share))) },
        { "late.ballsKept", night => night with { Late = new LateChoices(BallsKept: 0) } },
        { "late.redivided.balls", night => night with { Late = new LateChoices(new Redivided(default, new Centimetres(30), 0.3)) } },
        { "late.redivided.diameterCentimetres", night => night with { Late = new LateChoices(new Redivided(new PieCount(3), new Centimetres(1), 0.3)) } },
        { "late.redivided.thicknessGramsPerCm2", night => night with { Late = new LateChoices(new Redivided(new PieCount(3), new Centimetres(30), double.NaN)) } },
        { "late.rescue.balls", night => night with { Late = new LateChoices(Rescue: new RescueDough(default, Now, Now + Duration.FromHours(2))) } },
        { "late.rescue.ballAt", night => night with { Late = new LateChoices(Rescue: new RescueDough(new PieCount(1), Now, Now)) } },
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
        { "guests.eaters.needs.keptOff", Guest(guest => guest with { Eaters = [guest.Eaters[0] with { Needs = DietaryNeeds.None with { KeptOff = [.. Enumerable.Repeat("mushrooms", 61)] } }] }) },
        { "menu.items[mushrooms].onHandGrams", night => night with { Menu = night.Menu with { Items = [.. night.Menu.Items.Select(item => item.Id == "mushrooms" ? item with { OnHand = new Grams(60_000) } : item)] } } },
        { "menu.items[mushrooms].packGrams", night => night with { Menu = night.Menu with { Items = [.. night.Menu.Items.Select(item => item.Id == "mushrooms" ? item with { Pack = default(Grams) } : item)] } } },
        { "menu.secondDough.recipe.mixGrams", SecondDough(recipe => recipe with { Mix = default }) },
        { "menu.secondDough.recipe.waterGrams", SecondDough(recipe => recipe with { Water = new Grams(1001) }) },
        { "menu.secondDough.recipe.yeastGrams", SecondDough(recipe => recipe with { Yeast = new Grams(51) }) },
        { "menu.secondDough.recipe.oilGrams", SecondDough(recipe => recipe with { Oil = new Grams(201) }) },
        { "menu.secondDough.recipe.saltGrams", SecondDough(recipe => recipe with { Salt = new Grams(31) }) },
        { "menu.secondDough.recipe.riseMinutes", SecondDough(recipe => recipe with { Rise = Duration.FromHours(13) }) },
        { "menu.secondDough.recipe.paperUpToCelsius", SecondDough(recipe => recipe with { PaperUpTo = new Celsius(400) }) },
        { "menu.secondDough.recipe.paperUpToCelsius", SecondDough(recipe => recipe with { PaperUpTo = null }) },
        { "menu.mostToppings", night => night with { Menu = night.Menu with { MostToppings = 6 } } },
        { "menu.apart", night => night with { Menu = night.Menu with { Apart = [.. Enumerable.Range(0, 101).Select(index => new ToppingPair("a", $"b{index}"))] } } },
        { "menu.named", night => night with { Menu = night.Menu with { Named = [.. Enumerable.Range(0, 21).Select(index => new ToppingSet([$"b{index}"]))] } } },
        { "menu.named[0].toppings", night => night with { Menu = night.Menu with { Named = [new ToppingSet([])] } } },
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
        { "cheeseBlend.blend", night => night with { CheeseBlend = new HouseCheese("cheese-blend", new CheeseBlend(new Share(0.5), new Share(0.2), new Share(0.2), default)) } },
        { "cheeseBlend.blend.drained", night => night with { CheeseBlend = new HouseCheese("cheese-blend", new CheeseBlend(default, default, new Share(1), new Share(0.5))) } },
        { "byHand.split.slices", night => night with { ByHand = ByHand.Nothing with { Split = new SplitByHand(Slices: 201) } } },
        { "byHand.yeast", night => night with { ByHand = ByHand.Nothing with { Yeast = new Share(0) } } },
    };

    private static Func<NightSnapshot, NightSnapshot> Guest(Func<GuestSnapshot, GuestSnapshot> spoil) => night => night with
    {
        Guests = [spoil(night.Guests[0]), .. night.Guests.Skip(1)],
    };

    private static Func<NightSnapshot, NightSnapshot> SecondDough(Func<SecondDoughRecipe, SecondDoughRecipe> spoil) => night => night with
    {
        Menu = night.Menu with { SecondDough = AMenu.Maize with { Recipe = spoil(AMenu.Maize.Recipe) } },
    };

    private static Func<NightSnapshot, NightSnapshot> Past(params PastEvening[] past) => Guest(guest => guest with { Past = past });

    private static Func<NightSnapshot, NightSnapshot> Place(Func<BakingPlace, BakingPlace> spoil) => night => night with
    {
        Kitchen = night.Kitchen with { Place = spoil(BakingPlace.Assumed) },
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

    [Theory]
    [MemberData(nameof(Faults))]
    public void Each_range_that_is_not_kept_has_a_reason(string field, Func<NightSnapshot, NightSnapshot> spoil)
    {
        var problems = Check.Problems(spoil(ANight().WithGuests(2).Build())).Where(problem => problem.Field == field).ToList();

        Assert.NotEmpty(problems);
        Assert.All(
            problems.Where(problem => problem.Fault is SnapshotFault.OutOfRange or SnapshotFault.WrongCount),
            problem => Assert.NotNull(problem.Why));
    }

    [Fact]
    public void A_fridge_that_is_warmer_than_the_room_is_a_fault_of_its_own()
    {
        var night = ANight().But(night => night with { Kitchen = night.Kitchen with { Room = new Celsius(10), Fridge = new Celsius(12) } }).Build();

        var problem = Assert.Single(Check.Problems(night));

        Assert.Equal(("kitchen.fridgeCelsius", SnapshotFault.WarmerThanRoom, 12, 10), (problem.Field, problem.Fault, problem.Given, problem.High));
        Assert.Empty(Check.Problems(night with { Kitchen = night.Kitchen with { Fridge = new Celsius(10) } }));
    }

    [Fact]
    public void A_clock_that_goes_backwards_is_told_apart()
    {
        var begun = ANight().WithGuests(2).Build();
        var before = Now - Duration.FromHours(1);

        Assert.Empty(Check.Problems(Read(before, Now), Now));
        Assert.Equal([SnapshotFault.BackToFront], Check.Problems(Read(Now, before), Now).Select(problem => problem.Fault));
        Assert.Equal([SnapshotFault.InTheFuture], Check.Problems(Read(before, Now), before).Select(problem => problem.Fault));

        NightSnapshot Read(params Instant[] times) =>
            begun with { Readings = [.. times.Select(at => new DoughReading(at, new Celsius(20), null, null))] };
    }

    [Fact]
    public void A_dose_by_hand_is_more_than_none()
    {
        var problem = Assert.Single(Check.Problems(ByHand.Nothing with { Yeast = new Share(0) }));

        Assert.True(problem.IsAboveLow);
        Assert.Empty(Check.Problems(ByHand.Nothing with { Yeast = new Share(1e-6) }));
    }

    [Theory]
    [InlineData("night.kitchen.roomCelsius", RangeReason.RoomOfDough)]
    [InlineData("begun.dough.formula.salt", RangeReason.Salt)]
    [InlineData("sauce.formula.salt", RangeReason.SauceSalt)]
    [InlineData("formula.extras[3].water", RangeReason.PartOfAWhole)]
    [InlineData("formula.water", RangeReason.Water)]
    [InlineData("guests[guest-1].past.slices", RangeReason.PastSlices)]
    [InlineData("log.left-7", RangeReason.SlicesLeft)]
    [InlineData("guests[guest-1].stay.comesAfterMinutes", RangeReason.EveningLength)]
    [InlineData("players.most", RangeReason.Players)]
    [InlineData("byHand.split.pins[2].parts", RangeReason.PartsOfAPie)]
    [InlineData("title", null)]
    public void A_reason_is_found_by_the_end_of_the_path(string field, RangeReason? reason) => Assert.Equal(reason, RangeReasons.Of(field));

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
