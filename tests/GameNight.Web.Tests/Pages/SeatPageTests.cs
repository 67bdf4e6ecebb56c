using System.Net;
using GameNight.Nights.Records;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.TestKit.Running;
using NodaTime;

namespace GameNight.Web.Tests.Pages;

/// <summary>Seats, times, game and household on a guest's page.</summary>
public class SeatPageTests(SharedApp site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task One_tap_says_when_a_guest_comes_and_leaves_and_it_is_there_again()
    {
        var invited = await site.InviteAsync(but: Until(23));

        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"), ("comes", "21:00"), ("leaves", "22:00"), ("hunger", "Less"));

        var seen = await invited.SeenByHostAsync();
        Assert.Equal((21 * 60, 22 * 60, Hunger.Less), (seen.Answer!.ComesAtMinute, seen.Answer.LeavesAtMinute, seen.Answer.Hunger));
        var document = await (await invited.App.Client.GetAsync(invited.Link, Cancellation)).DocumentAsync();
        Assert.True(document.QuerySelector("input[name=comes][value='21:00']")!.HasAttribute("checked"));
        Assert.True(document.QuerySelector("input[name=leaves][value='22:00']")!.HasAttribute("checked"));
        Assert.True(document.QuerySelector("input[name=hunger][value=Less]")!.HasAttribute("checked"));
    }

    [Theory]
    [InlineData("23:30", "", "The evening is over at 23:00: choose an earlier time.")]
    [InlineData("", "19:00", "The first pie is on the table at 19:30")]
    [InlineData("22:00", "21:00", "That is before you come")]
    public async Task Times_that_do_not_fit_are_told_at_their_field_and_nothing_typed_is_lost(string comes, string leaves, string said)
    {
        var invited = await site.InviteAsync(but: Until(23));

        var refused = await (await invited.OpenAsync()).SendAsync(
            Cancellation, ("presence", "Coming"), ("comes", comes), ("leaves", leaves), ("companion1", "Teen"), ("note", "typed"));

        var document = await refused.DocumentAsync();
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        var problem = Assert.Single(document.QuerySelectorAll("p.problem"));
        Assert.Contains(said, problem.TextContent, StringComparison.Ordinal);
        Assert.NotNull(problem.Closest("fieldset")!.QuerySelector(leaves.Length > 0 ? "input[name=leaves]" : "input[name=comes]"));
        Assert.Equal("typed", document.QuerySelector("#note")!.TextContent);
        Assert.True(document.QuerySelector("#companion1 option[value=Teen]")!.HasAttribute("selected"));
        Assert.True(document.QuerySelector($"input[name={(leaves.Length > 0 ? "leaves" : "comes")}][value='{(leaves.Length > 0 ? leaves : comes)}']")!.HasAttribute("checked"));
        Assert.Null((await invited.SeenByHostAsync()).Answer);
    }

    [Fact]
    public async Task Too_many_companions_are_told_at_their_field()
    {
        var invited = await site.InviteAsync();
        var page = await invited.OpenAsync();
        await invited.Host.ChangeAsync(invited.Night, facts => facts with { MostCompanions = 1 }, Cancellation);

        var refused = await (await page.SendAsync(Cancellation, ("presence", "Coming"), ("companion1", "Adult"), ("companion2", "Child"))).DocumentAsync();

        var problem = Assert.Single(refused.QuerySelectorAll("p.problem"));
        Assert.True(problem.Closest("details")!.HasAttribute("open"));
        Assert.Contains("up to 1", problem.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_waits_reads_their_own_place_and_who_sits_reads_nothing_of_who_waits()
    {
        var host = await site.HostAsync();
        var (app, first, second) = (await site.AppAsync(), await host.KnowAsync("Seated Sam", Cancellation), await host.KnowAsync("Waiting Wil", Cancellation));
        var night = await host.OpenNightAsync([first, second], Cancellation, facts => facts with { Seats = 2, Played = new Played("Lantern lanes", new PlayersWanted(2, 4)) });
        var (sits, waits) = (await host.LinkAsync(night, first, Cancellation), await host.LinkAsync(night, second, Cancellation));
        Assert.Contains("There is 1 seat left at the table.", await TextAsync(app, sits), StringComparison.Ordinal);

        await (await AnswerPage.OpenAsync(app.Client, sits, Cancellation)).SendAsync(Cancellation, ("presence", "Coming"));
        Assert.Contains("The table is full. Say all the same", await TextAsync(app, waits), StringComparison.Ordinal);
        await (await AnswerPage.OpenAsync(app.Client, waits, Cancellation)).SendAsync(Cancellation, ("presence", "Coming"));

        var (seated, waiting) = (await TextAsync(app, sits), await TextAsync(app, waits));
        Assert.Contains("You have a seat at the table.", seated, StringComparison.Ordinal);
        Assert.DoesNotContain("waiting list", seated, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("you are on the waiting list, at place 1,", waiting, StringComparison.Ordinal);
        Assert.Contains("Look at this page again: it tells you so.", waiting, StringComparison.Ordinal);
        Assert.DoesNotContain("a message does", waiting, StringComparison.Ordinal);
        Assert.DoesNotContain("Rua das Flores", waiting, StringComparison.Ordinal);
        Assert.Contains("Played: Lantern lanes (2 to 4 players)", waiting, StringComparison.Ordinal);

        await (await AnswerPage.OpenAsync(app.Client, sits, Cancellation)).SendAsync(Cancellation, ("presence", "NotComing"));
        Assert.Contains("You have a seat at the table.", await TextAsync(app, waits), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_sits_is_refused_more_companions_than_there_are_seats_at_the_field()
    {
        var invited = await site.InviteAsync(but: facts => facts with { Seats = 2 });
        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"));

        var refused = await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"), ("companion1", "Adult"));

        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("There is no seat for a companion now.", (await refused.DocumentAsync()).QuerySelector("p.problem")!.TextContent, StringComparison.Ordinal);
        Assert.Empty((await invited.SeenByHostAsync()).Answer!.Companions);
    }

    [Fact]
    public async Task The_first_of_two_devices_is_told_as_well_that_the_last_one_counts()
    {
        var invited = await site.InviteAsync();
        var phone = await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "Coming"));
        Assert.DoesNotContain("another device", await invited.App.Client.GetStringAsync(phone.Headers.Location, Cancellation), StringComparison.Ordinal);

        await (await invited.OpenAsync()).SendAsync(Cancellation, ("presence", "NotComing"));

        var again = await invited.App.Client.GetStringAsync(phone.Headers.Location, Cancellation);
        Assert.Contains("another answer arrived, from another device perhaps: not coming.", WebUtility.HtmlDecode(again), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_for_the_household_is_said_so_and_shows_nothing_of_theirs()
    {
        var host = await site.HostAsync();
        var (app, one, other) = (await site.AppAsync(), await host.KnowAsync("Home Hal", Cancellation), await host.KnowAsync("Home Hedy", Cancellation));
        await host.HouseholdAsync("Hearth", [one, other], Cancellation);
        var night = await host.OpenNightAsync([one, other], Cancellation);
        var link = await host.LinkAsync(night, one, Cancellation);
        Assert.Contains("the same for Home Hedy", await TextAsync(app, link), StringComparison.Ordinal);
        Assert.DoesNotContain("Hearth", await TextAsync(app, link), StringComparison.Ordinal);

        await (await AnswerPage.OpenAsync(app.Client, link, Cancellation)).SendAsync(Cancellation, ("presence", "Coming"), ($"same-{other}", "on"));

        Assert.Contains("Somebody of your household gave this answer for you.", await TextAsync(app, await host.LinkAsync(night, other, Cancellation)), StringComparison.Ordinal);
        Assert.Equal(SaidBy.Household, (await host.NightAsync(night, Cancellation)).Guests.Single(guest => guest.Id == other).SaidBy);
    }

    private static Func<NightFacts, NightFacts> Until(int hour) => facts => facts with { EndsAt = facts.ServeAt.Date.At(new LocalTime(hour, 0)) };

    private static async Task<string> TextAsync(RunningApp app, string link) =>
        (await (await app.Client.GetAsync(link, Cancellation)).DocumentAsync()).Body!.TextContent;
}
