using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Cheese;
using GameNight.Planning.Contract;
using GameNight.Planning.Dough;
using GameNight.Planning.Foods;
using GameNight.Planning.Guests;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.ForHosts;

public sealed class KitchenDeskTests(ClassDatabase database) : NightsTest(database)
{
    public static TheoryData<string, Func<KitchenFacts, KitchenFacts>> Kitchens => new()
    {
        { "kitchen.fridgeCelsius", facts => facts with { Kitchen = facts.Kitchen with { Room = new Celsius(8), Fridge = new Celsius(9) } } },
        { "kitchen.roomCelsius", facts => facts with { Kitchen = facts.Kitchen with { Room = new Celsius(50) } } },
        { "kitchen.ovenCelsius", facts => facts with { Kitchen = facts.Kitchen with { Oven = new Celsius(80) } } },
        { "kitchen.place.surface.thicknessMillimetres", facts => On(facts, BakingPlace.Assumed with { Surface = BakingPlace.Assumed.Surface with { ThicknessMillimetres = 100 } }) },
        { "kitchen.place.readings.topCelsius", facts => On(facts, BakingPlace.Assumed with { Readings = [new(Duration.FromMinutes(30), new Celsius(-10))] }) },
        { "kitchen.piesPerBake", facts => facts with { Kitchen = facts.Kitchen with { PiesPerBake = 0 } } },
        { "menu.mostToppings", facts => facts with { Menu = new HouseMenu(MostToppings: 6) } },
        { "menu.apart[0]", facts => facts with { Menu = new HouseMenu(Apart: [new ToppingPair("same", "same")]) } },
        { "menu.named[0].name", facts => facts with { Menu = new HouseMenu(Named: [new NamedToppings(" ", ["any"])]) } },
        { "menu.secondDough.name", facts => facts with { Menu = new HouseMenu(SecondDough: Maize with { Name = " " }) } },
        { "menu.secondDough.recipe.mixGrams", facts => facts with { Menu = new HouseMenu(SecondDough: With(recipe => recipe with { Mix = new Grams(19) })) } },
        { "menu.secondDough.recipe.paperUpToCelsius", facts => facts with { Menu = new HouseMenu(SecondDough: With(recipe => recipe with { PaperUpTo = null })) } },
        { "menu.named[0].toppings", facts => facts with { Menu = new HouseMenu(Named: [new NamedToppings("Empty", [])]) } },
        { "menu.named.name", facts => facts with { Menu = new HouseMenu(Named: [new NamedToppings("Garden", ["a"]), new NamedToppings("garden", ["b"])]) } },
        { "menu.named.toppings", facts => facts with { Menu = new HouseMenu(Named: [new NamedToppings("Garden", ["a", "b"]), new NamedToppings("Field", ["b", "a"])]) } },
        { "sleep", facts => facts with { Hours = facts.Hours with { SleepUntilMinute = 1440 } } },
        { "sleep", facts => facts with { Hours = facts.Hours with { SleepFromMinute = -1 } } },
        { "work", facts => facts with { Hours = facts.Hours with { Work = [new(IsoDayOfWeek.Monday, 540, 1440)] } } },
        { "work", facts => facts with { Hours = facts.Hours with { Work = [new(IsoDayOfWeek.Monday, 1000, 540)] } } },
        { "work", facts => facts with { Hours = facts.Hours with { Work = [.. Enumerable.Repeat(new WorkingHours(IsoDayOfWeek.Monday, 540, 600), 22)] } } },
        { "sauce.formula.parts[garlic].grams", facts => facts with { Sauce = Sauce(formula => formula with { Parts = [new(Food.Garlic, new Grams(3000))] }) } },
        { "sauce.formula.tomatoGrams", facts => facts with { Sauce = Sauce(formula => formula with { Tomato = new Grams(0), Parts = [] }) } },
        { "sauce.baseId", facts => facts with { Sauce = Sauce(formula => formula) with { BaseId = "" } } },
        { "cheeseBlend.blend", facts => facts with { CheeseBlend = new HouseCheese("any", new CheeseBlend(new Share(0.8), new Share(0.1), default, default)) } },
        { "cheeseBlend.blend.drained", facts => facts with { CheeseBlend = new HouseCheese("any", new CheeseBlend(default, default, new Share(1), new Share(0.5))) } },
    };

    [Theory]
    [MemberData(nameof(Kitchens))]
    public async Task A_kitchen_that_cannot_be_is_refused_with_its_field(string field, Func<KitchenFacts, KitchenFacts> but)
    {
        var group = await App.FoundGroupAsync();
        var (facts, version) = await App.Kitchen.KitchenAsync(group.Access, Cancellation);

        var result = await App.Kitchen.SetKitchenAsync(group.Access, but(facts), version, Cancellation);

        Assert.Equal(field, Assert.Single(Assert.IsType<SaveResult.Refused>(result).Problems).Field);
        Assert.Equal(version, (await App.Kitchen.KitchenAsync(group.Access, Cancellation)).Version);
    }

    private static HouseSauce Sauce(Func<SauceFormula, SauceFormula> but) =>
        new("any", but(SharedFolder.Tables.Sauces.Formula(SharedFolder.Tables.Sauces.Formulas[0])));

    [Fact]
    public async Task What_is_baked_on_and_what_was_measured_of_it_are_kept()
    {
        var group = await App.FoundGroupAsync();
        var (facts, version) = await App.Kitchen.KitchenAsync(group.Access, Cancellation);
        var reading = new SurfaceReading(Duration.FromMinutes(40), new Celsius(210));

        var result = await App.Kitchen.SetKitchenAsync(
            group.Access, On(facts, BakingPlace.Assumed with { Lead = SoakLead.Model, Readings = [reading] }), version, Cancellation);

        Assert.IsType<SaveResult.Saved>(result);
        var place = (await App.Kitchen.KitchenAsync(group.Access, Cancellation)).Facts.Kitchen.Place!;
        Assert.Equal(SoakLead.Model, place.Lead);
        Assert.Equal(reading, Assert.Single(place.Readings!));
    }

    [Fact]
    public async Task Of_two_hosts_who_change_the_kitchen_the_second_is_told_and_the_firsts_values_stand()
    {
        var group = await App.FoundGroupAsync();
        var (facts, version) = await App.Kitchen.KitchenAsync(group.Access, Cancellation);

        var first = await App.Kitchen.SetKitchenAsync(
            group.Access, facts with { Kitchen = facts.Kitchen with { Room = new Celsius(23) } }, version, Cancellation);
        var second = await App.Kitchen.SetKitchenAsync(
            group.Access, facts with { Kitchen = facts.Kitchen with { Hands = 2 } }, version, Cancellation);

        Assert.IsType<SaveResult.Saved>(first);
        Assert.IsType<SaveResult.ChangedMeanwhile>(second);
        var (kept, _) = await App.Kitchen.KitchenAsync(group.Access, Cancellation);
        Assert.Equal((23, 1), (kept.Kitchen.Room.Value, kept.Kitchen.Hands));
    }

    [Fact]
    public async Task A_change_to_the_kitchen_asks_for_plans_of_the_nights_to_come()
    {
        var group = await App.FoundGroupAsync();
        var (past, coming) = (await App.OpenNightAsync(group, []), NightId.New());
        App.Clock.AdvanceDays(10);
        var facts = await App.NightFactsAsync(group);
        await App.Nights.OpenNightAsync(
            group.Access, coming, facts with { ServeAt = facts.ServeAt.PlusDays(14) }, [], Cancellation);
        await Storage.Rows.TellAsync(Database.AdminConnectionString, $"delete from replan_queue where group_id = '{group.Id.Value}'");
        var (kitchen, version) = await App.Kitchen.KitchenAsync(group.Access, Cancellation);

        await App.Kitchen.SetKitchenAsync(group.Access, kitchen with { Kitchen = kitchen.Kitchen with { Hands = 2 } }, version, Cancellation);

        Assert.Equal([$"{coming.Value}"], await Storage.Rows.ReadAsync(
            Database.AdminConnectionString, $"select night_id from replan_queue where group_id = '{group.Id.Value}'"));
        Assert.NotEqual(past, coming);
    }

    [Fact]
    public async Task A_dough_is_added_once_changed_by_its_version_and_checked()
    {
        var group = await App.FoundGroupAsync();
        var house = (await App.Kitchen.RecipesAsync(group.Access, Cancellation))[0];
        var id = FormulaId.New();

        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => App.Kitchen.AddRecipeAsync(
            group.Access, id, " Ours ", house.Formula, house.Shape, Cancellation)));
        var added = Assert.Single(await App.Kitchen.RecipesAsync(group.Access, Cancellation), dough => dough.Id == id);
        var first = await SetAsync("First", added.Version);
        var second = await SetAsync("Second", added.Version);
        var tooWet = await App.Kitchen.AddRecipeAsync(
            group.Access, FormulaId.New(), "Soup", house.Formula with { Water = new Share(3) }, house.Shape, Cancellation);

        Assert.Equal("Ours", added.Name);
        Assert.IsType<SaveResult.Saved>(first);
        Assert.IsType<SaveResult.ChangedMeanwhile>(second);
        Assert.IsType<SaveResult.Refused>(tooWet);

        Task<SaveResult> SetAsync(string name, uint version) => App.Kitchen.SetRecipeAsync(
            group.Access, id, name, house.Formula, house.Shape, version, Cancellation);
    }

    [Fact]
    public async Task A_menu_item_is_added_once_and_checked()
    {
        var group = await App.FoundGroupAsync();
        var id = MenuItemId.New();

        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => AddAsync(id, "Capers", 0.02)));

        Assert.Single(await App.Kitchen.MenuAsync(group.Access, Cancellation), item => item.Id == id);
        Assert.IsType<SaveResult.Refused>(await AddAsync(MenuItemId.New(), " ", 0.02));
        Assert.IsType<SaveResult.Refused>(await AddAsync(MenuItemId.New(), "Lead", 2));
        Assert.IsType<SaveResult.Refused>(await AddAsync(MenuItemId.New(), "Wetter than water", 0.1, 1.1));
        Assert.IsType<SaveResult.Refused>(await AddAsync(MenuItemId.New(), "Owed", 0.1, stock: new PantryStock(OnHandGrams: -1)));
        Assert.IsType<SaveResult.Refused>(await AddAsync(MenuItemId.New(), "Dust", 0.1, stock: new PantryStock(PackGrams: 0)));

        Task<SaveResult> AddAsync(MenuItemId item, string name, double grams, double? water = null, PantryStock? stock = null) => App.Kitchen.AddMenuItemAsync(
            group.Access, item, name, MenuRole.Topping, grams, water, Composition.Nothing, stock, Cancellation);
    }

    [Fact]
    public async Task How_toppings_go_together_is_kept_by_changes_that_do_not_undo_each_other_and_reaches_the_snapshot()
    {
        var group = await App.FoundGroupAsync();
        var night = await App.OpenNightAsync(group, []);
        string[] toppings = [.. (await App.Kitchen.MenuAsync(group.Access, Cancellation)).Where(item => item.Role == MenuRole.Topping).Select(item => item.Id.ToString())];
        Func<HouseMenu, HouseMenu>[] changes =
        [
            house => house.KeepingApart(toppings[0], toppings[1]),
            house => house.KeepingApart(toppings[1], toppings[0]),
            house => house.Naming(new NamedToppings("Garden", [toppings[2], toppings[3]])),
            house => house.With(mostToppings: 2),
        ];

        var results = await Task.WhenAll(changes.Select(change => App.Kitchen.SetHouseMenuAsync(group.Access, change, Cancellation)));

        Assert.All(results, result => Assert.IsType<SaveResult.Saved>(result));
        await using var session = await App.Get<GroupSessions>().OpenAsync(group.Access, Cancellation);
        var menu = (await App.Get<NightSnapshots>().LoadAsync(session, night, Cancellation))!.Menu;
        var pair = Assert.Single(menu.Apart!);
        Assert.Equal(toppings[..2].Order(), new[] { pair.FirstId, pair.SecondId }.Order());
        Assert.Equal(2, menu.MostToppings);
        Assert.Equal([toppings[2], toppings[3]], Assert.Single(menu.Named!).ToppingIds);
        await App.Kitchen.SetHouseMenuAsync(group.Access, house => house.LettingMeet(toppings[0], toppings[1]).Forgetting("GARDEN").With(3), Cancellation);
        Assert.Null((await App.Kitchen.KitchenAsync(group.Access, Cancellation)).Facts.Menu);
    }

    [Fact]
    public async Task A_second_dough_is_kept_and_reaches_the_snapshot_without_its_name_until_it_is_removed()
    {
        var group = await App.FoundGroupAsync();
        var night = await App.OpenNightAsync(group, []);

        Assert.IsType<SaveResult.Saved>(await App.Kitchen.SetHouseMenuAsync(group.Access, house => house with { SecondDough = Maize }, Cancellation));

        var kept = (await App.Kitchen.KitchenAsync(group.Access, Cancellation)).Facts.Menu!.SecondDough!;
        Assert.Equal((Maize.Name, Maize.Dough.Recipe), (kept.Name, kept.Dough.Recipe));
        Assert.Equal([Allergen.Soybeans], kept.Dough.Composition.MayContain);
        await using var session = await App.Get<GroupSessions>().OpenAsync(group.Access, Cancellation);
        var snapshot = (await App.Get<NightSnapshots>().LoadAsync(session, night, Cancellation))!;
        Assert.Equal(Maize.Dough.Recipe, snapshot.Menu.SecondDough!.Recipe);
        Assert.DoesNotContain(Maize.Name, PlanJson.Canonical(snapshot), StringComparison.Ordinal);
        Assert.Equal(Maize.Name, (await App.Get<PlanDesk>().PlanAsync(group.Access, night, Cancellation))!.SecondDough);
        await App.Kitchen.SetHouseMenuAsync(group.Access, house => house with { SecondDough = null }, Cancellation);
        Assert.Null((await App.Kitchen.KitchenAsync(group.Access, Cancellation)).Facts.Menu);
    }

    private static HouseSecondDough Maize => new("Maize dough", new SecondDough(
        new Composition([], [Allergen.Soybeans], [], [Diet.Vegan]),
        new SecondDoughRecipe(
            new Grams(160), new Grams(125), new Grams(2.5), new Grams(8), new Grams(3), Duration.FromMinutes(60), SecondDoughOn.BakingPaper, new Celsius(230))));

    private static HouseSecondDough With(Func<SecondDoughRecipe, SecondDoughRecipe> but) =>
        Maize with { Dough = Maize.Dough with { Recipe = but(Maize.Dough.Recipe) } };

    [Fact]
    public async Task Kitchens_doughs_and_menus_of_another_group_are_gone()
    {
        var (theirs, ours) = (await App.FoundGroupAsync(), await App.FoundGroupAsync("Sam"));
        var dough = (await App.Kitchen.RecipesAsync(theirs.Access, Cancellation))[0];
        var item = (await App.Kitchen.MenuAsync(theirs.Access, Cancellation))[0];

        Assert.IsType<SaveResult.Gone>(await App.Kitchen.SetRecipeAsync(
            ours.Access, dough.Id, "Taken", dough.Formula, dough.Shape, dough.Version, Cancellation));
        Assert.IsType<SaveResult.Gone>(await App.Kitchen.SetMenuItemAsync(
            ours.Access, item.Id, "Taken", 0.1, null, item.Composition, null, true, item.Version, Cancellation));
    }

    [Fact]
    public async Task Out_of_range_is_told_with_the_range()
    {
        var group = await App.FoundGroupAsync();
        var (facts, version) = await App.Kitchen.KitchenAsync(group.Access, Cancellation);

        var result = await App.Kitchen.SetKitchenAsync(
            group.Access, facts with { Kitchen = facts.Kitchen with { Fridge = new Celsius(20) } }, version, Cancellation);

        Assert.Equal(
            new SnapshotProblem("kitchen.fridgeCelsius", SnapshotFault.OutOfRange, 20, -1, 14),
            Assert.Single(Assert.IsType<SaveResult.Refused>(result).Problems));
    }

    private static KitchenFacts On(KitchenFacts facts, BakingPlace place) => facts with { Kitchen = facts.Kitchen with { Place = place } };
}
