using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.ForHosts;

public sealed class HouseholdTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task Members_of_a_household_come_in_the_snapshot_as_one_under_a_number()
    {
        var home = await LiveAsync("The Elms");

        var snapshot = await SnapshotAsync(home);

        Assert.Equal(
            ["household-1", "household-1", null],
            home.Guests.Select(guest => snapshot.Guests.Single(row => row.Id == guest.ToString()).Household));
        Assert.DoesNotContain("Elms", System.Text.Json.JsonSerializer.Serialize(snapshot, Planning.Contract.PlanJson.Options), StringComparison.Ordinal);
        Assert.Equal("The Elms", (await App.InvitedAsync(home.Group, home.Night, home.Guests[0])).Household);
    }

    [Fact]
    public async Task Letters_large_or_small_are_the_same_household_and_one_alone_is_none()
    {
        var home = await LiveAsync("The Elms");
        Assert.IsType<SaveResult.Saved>(await App.GuestList.HouseholdAsync(home.Group.Access, [home.Guests[2]], " the elms ", Cancellation));
        Assert.All(
            (await App.GuestList.GuestsAsync(home.Group.Access, Cancellation)).Where(line => !line.IsHost),
            line => Assert.Equal("The Elms", line.Household));

        await App.GuestList.HouseholdAsync(home.Group.Access, [home.Guests[1], home.Guests[2]], "", Cancellation);
        Assert.All((await SnapshotAsync(home)).Guests, guest => Assert.Null(guest.Household));
    }

    [Fact]
    public async Task A_name_that_is_too_long_and_a_guest_who_is_gone_change_nothing()
    {
        var home = await LiveAsync("The Elms");

        Assert.IsType<SaveResult.Refused>(await App.GuestList.HouseholdAsync(
            home.Group.Access, [home.Guests[0]], new string('e', Guest.LongestHousehold + 1), Cancellation));
        Assert.IsType<SaveResult.Gone>(await App.GuestList.HouseholdAsync(
            home.Group.Access, [home.Guests[2], GuestId.New()], "Elsewhere", Cancellation));
        Assert.Null((await App.GuestList.GuestsAsync(home.Group.Access, Cancellation)).Single(line => line.Id == home.Guests[2]).Household);
    }

    [Fact]
    public async Task One_answers_whether_and_when_for_the_other_who_has_not_answered_and_never_over_their_own()
    {
        var home = await LiveAsync("The Elms");
        var link = await LinkAsync(home, 0);
        Assert.Equal(["Guest 1"], (await App.LookAsync(link))!.Household.Select(fellow => fellow.Name));
        var answer = Answers.Coming(companions: 1).WithNote("mine", Answers.Avoiding(Allergen.Nuts));

        await App.AnswerAsync(link, answer with { Facts = answer.Facts with { ComesAtMinute = 21 * 60, Hunger = Hunger.More }, SameFor = [home.Guests[1]] });

        var fellow = (await App.LookAsync(await LinkAsync(home, 1)))!;
        Assert.Equal((SaidBy.Household, Presence.Coming, 21 * 60, Hunger.AsUsual), (fellow.SaidBy, fellow.Answer!.Presence, fellow.Answer.ComesAtMinute, fellow.Answer.Hunger));
        Assert.Empty(fellow.Answer.Companions);
        Assert.Empty(fellow.Needs);

        await App.AnswerAsync(await LinkAsync(home, 1), Answers.NotComing(revision: 1));
        await App.AnswerAsync(link, Answers.Coming(revision: 1) with { SameFor = [home.Guests[1]] });
        Assert.Equal((null, Presence.NotComing), ((await App.LookAsync(await LinkAsync(home, 1)))!.SaidBy, (await App.LookAsync(await LinkAsync(home, 1)))!.Answer!.Presence));
    }

    [Fact]
    public async Task Nobody_answers_for_somebody_of_another_household()
    {
        var home = await LiveAsync("The Elms");

        await App.AnswerAsync(await LinkAsync(home, 0), Answers.Coming() with { SameFor = [home.Guests[2]] });

        Assert.Null((await App.LookAsync(await LinkAsync(home, 2)))!.Answer);
        Assert.Empty((await App.LookAsync(await LinkAsync(home, 2)))!.Household);
    }

    private async Task<Home> LiveAsync(string name)
    {
        var group = await App.FoundGroupAsync();
        List<GuestId> guests = [];
        for (var number = 0; number < 3; number++)
        {
            guests.Add(await App.AddGuestAsync(group, $"Guest {number}"));
        }

        var night = await App.OpenNightAsync(group, guests);
        Assert.IsType<SaveResult.Saved>(await App.GuestList.HouseholdAsync(group.Access, [guests[0], guests[1]], name, Cancellation));
        return new Home(group, night, guests);
    }

    private Task<LinkToken> LinkAsync(Home home, int guest) => App.LinkAsync(home.Group, home.Night, home.Guests[guest]);

    private async Task<NightSnapshot> SnapshotAsync(Home home)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(home.Group.Access, Cancellation);
        return (await App.Get<NightSnapshots>().LoadAsync(session, home.Night, Cancellation))!;
    }

    private sealed record Home(FoundedGroup Group, NightId Night, IReadOnlyList<GuestId> Guests);
}
