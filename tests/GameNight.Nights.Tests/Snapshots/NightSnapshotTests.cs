using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Snapshots;

public sealed class NightSnapshotTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task A_full_answer_arrives_in_the_snapshot_as_it_was_given()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var topping = (await App.LookAsync(night.Link))!.Toppings[0].Id;
        var facts = new AnswerFacts(
            Presence.Coming, Remotely: false, Hunger.More, [new(PortionClass.Child), new(PortionClass.Teen)],
            new Dictionary<string, Liking> { [topping] = Liking.Never });
        var needs = new DietaryNeeds([Diet.Vegan], [Allergen.Nuts], [Allergen.Sesame]);
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote("", needs, DietaryNeeds.None) with { Facts = facts });

        var guest = (await SnapshotAsync(night)).Guests.Single(row => row.Id == night.Guest.ToString());

        Assert.Equal(AnswerState.Coming, guest.Answer);
        Assert.Equal(
            [$"{night.Guest}", $"{night.Guest}+1", $"{night.Guest}+2"], guest.Eaters.Select(eater => eater.Id));
        Assert.Equal([PortionClass.Adult, PortionClass.Child, PortionClass.Teen], guest.Eaters.Select(eater => eater.Portion));
        Assert.Equal([Hunger.More, Hunger.AsUsual, Hunger.AsUsual], guest.Eaters.Select(eater => eater.Hunger));
        Assert.Equal(Liking.Never, guest.Eaters[0].Of(topping));
        Assert.Equal(PlanJson.Canonical(needs), PlanJson.Canonical(guest.Eaters[0].Needs));
        Assert.All(guest.Eaters.Skip(1), eater => Assert.True(eater.Needs.IsNone && eater.Likes.Count == 0));
        Assert.All(guest.Eaters, eater => Assert.True(eater.EatsHere));
    }

    [Theory]
    [InlineData(Presence.Undecided, AnswerState.Undecided)]
    [InlineData(Presence.NotComing, AnswerState.NotComing)]
    public async Task Other_answers_count_as_what_they_are(Presence presence, AnswerState state)
    {
        var night = await App.OpenNightForOneGuestAsync();
        var answer = Answers.Coming();
        await App.AnswerAsync(night.Link, answer with { Facts = answer.Facts with { Presence = presence } });

        Assert.Equal(state, (await SnapshotAsync(night)).Guests.Single(row => row.Id == night.Guest.ToString()).Answer);
    }

    [Fact]
    public async Task Without_an_answer_a_guest_is_open_and_the_host_is_there()
    {
        var night = await App.OpenNightForOneGuestAsync();

        var guests = (await SnapshotAsync(night)).Guests;

        Assert.Equal([AnswerState.Host, AnswerState.NoAnswer], guests.Select(guest => guest.Answer).Order());
    }

    [Fact]
    public async Task A_host_can_say_that_they_do_not_eat()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var host = (await App.ViewAsync(night.Group, night.Night)).Guests.Single(guest => guest.IsHost);
        await App.AnswerAsync(await App.LinkAsync(night.Group, night.Night, host.Id), Answers.NotComing());

        Assert.Equal(
            AnswerState.NotComing, (await SnapshotAsync(night)).Guests.Single(guest => guest.Id == host.Id.ToString()).Answer);
    }

    [Fact]
    public async Task Who_joins_from_elsewhere_eats_nothing_here()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var answer = Answers.Coming(companions: 1);
        await App.AnswerAsync(night.Link, answer with { Facts = answer.Facts with { Remotely = true } });

        Assert.All(
            (await SnapshotAsync(night)).Guests.Single(row => row.Id == night.Guest.ToString()).Eaters,
            eater => Assert.False(eater.EatsHere));
    }

    [Fact]
    public async Task Night_kitchen_dough_and_numbers_by_hand_arrive_unchanged()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var (kitchen, _) = await App.Kitchen.KitchenAsync(night.Group.Access, Cancellation);
        var facts = (await App.ViewAsync(night.Group, night.Night)).Facts;
        var dough = (await App.Kitchen.RecipesAsync(night.Group.Access, Cancellation)).Single(row => row.Id == facts.Formula);
        var mixAt = Instant.FromUtc(2026, 12, 10, 17, 0);
        await App.Nights.OverruleAsync(
            night.Group.Access, night.Night, numbers => numbers.With(Overridable.Pies, 9) with { MixAt = mixAt }, Cancellation);

        var snapshot = await SnapshotAsync(night);

        Assert.Equal(Instant.FromUtc(2026, 12, 12, 18, 30), snapshot.ServeAt);
        Assert.Equal(kitchen.Kitchen, snapshot.Kitchen);
        Assert.Equal((dough.Formula, dough.Shape), (snapshot.Formula, snapshot.Shape));
        Assert.Equal(
            new ColdFerment(Duration.FromHours(40), Duration.FromHours(48), Duration.FromHours(72)), snapshot.ColdFerment);
        Assert.Equal(ByHand.Nothing with { Pies = new PieCount(9), MixAt = mixAt }, snapshot.ByHand);
        Assert.Equal(SharedFolder.Tables.Menu.Items.Count, snapshot.Menu.Items.Count);
        Assert.Empty(new SnapshotCheck(SharedFolder.Tables).Problems(snapshot));
    }

    [Fact]
    public async Task The_sauce_and_the_blend_of_the_group_arrive_unchanged()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var before = await SnapshotAsync(night);
        var (kitchen, version) = await App.Kitchen.KitchenAsync(night.Group.Access, Cancellation);
        var (baseId, cheeseId) = (before.Menu.Items.First(item => item.Role == MenuRole.Base).Id, before.Menu.Items.First(item => item.Role == MenuRole.Cheese).Id);
        var tables = SharedFolder.Tables;
        var sauce = new HouseSauce(
            baseId, tables.Sauces.Formula(tables.Sauces.Formulas.Single(row => row.Id == "deep-pot")) with { TinSalt = new Share(0.002), WineIsVegan = true },
            [new Grams(411), new Grams(794)]);
        var cheese = new HouseCheese(cheeseId, tables.Cheese.Blends.Single(row => row.Id == "fresh-strips").Blend with { HardIsVegetarian = true });
        Assert.IsType<SaveResult.Saved>(await App.Kitchen.SetKitchenAsync(
            night.Group.Access, kitchen with { Sauce = sauce, CheeseBlend = cheese }, version, Cancellation));

        var snapshot = await SnapshotAsync(night);

        Assert.Null(before.Sauce);
        Assert.Null(before.CheeseBlend);
        Assert.Equal(PlanJson.Canonical(sauce), PlanJson.Canonical(snapshot.Sauce!));
        Assert.Equal(cheese, snapshot.CheeseBlend);
        Assert.Empty(new SnapshotCheck(tables).Problems(snapshot));
    }

    [Fact]
    public async Task Sleep_over_the_night_the_clock_changes_keeps_its_local_hours()
    {
        var night = await App.OpenNightForOneGuestAsync(
            facts => facts with { ServeAt = new LocalDateTime(2027, 3, 28, 19, 30) });

        var away = (await SnapshotAsync(night)).Away;

        Assert.Contains(new HostAway(Instant.FromUtc(2027, 3, 26, 22, 0), Instant.FromUtc(2027, 3, 27, 6, 0)), away);
        Assert.Contains(new HostAway(Instant.FromUtc(2027, 3, 27, 22, 0), Instant.FromUtc(2027, 3, 28, 5, 0)), away);
        Assert.Contains(new HostAway(Instant.FromUtc(2027, 3, 28, 21, 0), Instant.FromUtc(2027, 3, 29, 5, 0)), away);
    }

    [Fact]
    public async Task Work_is_away_on_its_days_and_sleep_after_midnight_on_its_own_day()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var (kitchen, version) = await App.Kitchen.KitchenAsync(night.Group.Access, Cancellation);
        var hours = new HostHours(60, 540, [new(IsoDayOfWeek.Thursday, 9 * 60, 17 * 60)]);
        await App.Kitchen.SetKitchenAsync(night.Group.Access, kitchen with { Hours = hours }, version, Cancellation);

        var away = (await SnapshotAsync(night)).Away;

        Assert.Equal(
            [new HostAway(Instant.FromUtc(2026, 12, 10, 8, 0), Instant.FromUtc(2026, 12, 10, 16, 0))],
            away.Where(window => window.Until - window.From == Duration.FromHours(8)
                && window.From >= Instant.FromUtc(2026, 12, 10, 1, 0) && window.From < Instant.FromUtc(2026, 12, 11, 0, 0)));
        Assert.Contains(new HostAway(Instant.FromUtc(2026, 12, 12, 0, 0), Instant.FromUtc(2026, 12, 12, 8, 0)), away);
    }

    [Fact]
    public async Task What_is_not_offered_is_not_planned_with()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var gone = (await App.Kitchen.MenuAsync(night.Group.Access, Cancellation))[^1];
        await App.Kitchen.SetMenuItemAsync(
            night.Group.Access, gone.Id, gone.Name, gone.GramsPerCm2, gone.WaterShare, gone.Composition, null, false, gone.Version, Cancellation);

        Assert.DoesNotContain(gone.Id.ToString(), (await SnapshotAsync(night)).Menu.Items.Select(item => item.Id));
    }

    [Fact]
    public async Task What_the_menu_says_of_an_items_water_is_in_the_snapshot()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var wet = (await App.Kitchen.MenuAsync(night.Group.Access, Cancellation)).First(item => item.Role == MenuRole.Topping);
        await App.Kitchen.SetMenuItemAsync(
            night.Group.Access, wet.Id, wet.Name, wet.GramsPerCm2, 0.35, wet.Composition, new PantryStock(250, 125), true, wet.Version, Cancellation);

        var seen = (await SnapshotAsync(night)).Menu.Items;

        Assert.Equal(0.35, seen.Single(item => item.Id == wet.Id.ToString()).WaterShare?.Value);
    }

    [Fact]
    public async Task No_name_note_or_address_is_in_a_snapshot()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote("Secret allergy", Answers.Avoiding(Allergen.Milk)));

        var text = PlanJson.Canonical(await SnapshotAsync(night));

        Assert.All(
            new[] { "Ines", "Hana", "Secret", "Elm Street", "tiles", "Thursday" },
            word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
    }

    private async Task<NightSnapshot> SnapshotAsync(GuestNight night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation);
        return (await App.Get<NightSnapshots>().LoadAsync(session, night.Night, Cancellation))!;
    }
}
