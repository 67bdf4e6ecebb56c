using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>From an answer over the night to what guests and host say afterwards.</summary>
public class LookBackTests(Site site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_guest_answers_the_night_passes_and_guest_and_host_look_back()
    {
        var night = await site.NightAsync("Rui", "Eva", "Maximiliane-Theodora Longname of the Hills");
        await using var guest = await site.GuestScreenAsync(withScript: false);
        await AnswerAsync(guest, await night.LinkAsync("Rui"));
        await night.AnswerAsync("Eva", ("presence", "Coming"), ("companion1", "Adult"));
        await night.Host.PassAsync(night.Id, daysAgo: 1, Cancellation);

        await guest.GoAsync(await night.LinkAsync("Rui"));
        await guest.Page.GetByText("Look back on the night").ClickAsync();
        await guest.SeesAsync("Looking back as Rui.");
        await guest.Field("right").CheckAsync();
        await guest.Field("lovely").CheckAsync();
        await guest.Page.Locator("input[name=best]").First.CheckAsync();
        await guest.Field("Slices I ate").FillAsync("3,5");
        await guest.Field("A line for the host").FillAsync("Good crust");
        await guest.Button("Send").ClickAsync();
        await guest.SeesAsync("Thank you. It is kept, and you can still change it here.");

        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync($"{night.Path}/guests");
        await host.Button("Link of Rui").ClickAsync();
        await Expect(host.Page.Locator("#look-back-link")).ToHaveValueAsync(guest.Page.Url.Split('?')[0]);
        await host.Button("Close").ClickAsync();
        await host.Page.GetByRole(Microsoft.Playwright.AriaRole.Link, new() { Name = "Look back", Exact = true }).ClickAsync();
        await host.SeesAsync("Write down how it went");
        await host.SeesAsync("4 people came.");
        await host.Field("Pies baked").FillAsync("4");
        await host.Field("Slices left, in all").FillAsync("5");
        await host.Field("What to do otherwise next time").FillAsync("One pie fewer");
        await host.Page.GetByLabel("Eva", new() { Exact = true }).UncheckAsync();
        await host.Page.Locator(".winners input").First.CheckAsync();
        await host.Button("Write it down").ClickAsync();
        await host.SeesAsync("2 people came.");
        await host.SeesAsync("Won, as the host saw it: ");
        await host.SeesAsync("27 of 32 slices were eaten, about 13.5 each.");
        await host.SeesAsync("Rui: enough: right; the evening: lovely; 3.5 slices eaten;");
        await host.SeesAsync("“Good crust”");

        await host.Page.GetByText("All past nights").ClickAsync();
        await host.SeesAsync("27 slices eaten, 5 left.");
        Assert.Empty(host.Faults);
        Assert.Empty(guest.Faults);
    }

    [Fact]
    public async Task The_second_of_two_hosts_is_told_and_keeps_what_they_typed()
    {
        var night = await site.NightAsync("Rui");
        await night.Host.PassAsync(night.Id, daysAgo: 2, Cancellation);
        await using var first = await site.HostScreenAsync();
        await using var second = await site.HostScreenAsync();
        foreach (var host in new[] { first, second })
        {
            await host.GoLiveAsync($"{night.Path}/back");
            await host.Field("Pies baked").FillAsync(host == first ? "3" : "4");
        }

        await first.Button("Write it down").ClickAsync();
        await first.SeesAsync("Correct it");
        await second.Button("Write it down").ClickAsync();

        await second.SeesAsync("Another host wrote this down while you were typing.");
        await second.SeesAsync("Pies baked: they have 3, you have 4");
        Assert.Equal(3, await BakedAsync(night));

        await second.Button("Write it down").ClickAsync();

        await second.SeesAsync("Correct it");
        Assert.Equal(4, await BakedAsync(night));
        Assert.Empty(first.Faults);
        Assert.Empty(second.Faults);
    }

    [Fact]
    public async Task Pages_to_look_back_look_right()
    {
        var night = await site.NightAsync("Rui", "Eva", "Ana", "Maximiliane-Theodora Longname of the Hills");
        foreach (var name in night.Guests.Keys)
        {
            await night.AnswerAsync(name, ("presence", "Coming"), ("companion1", "Child"));
        }

        await night.Host.PassAsync(night.Id, daysAgo: 3, Cancellation);
        await using var guest = await site.GuestScreenAsync();
        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync($"{night.Path}/back");
        await Expect(host.Page.Locator("form")).ToBeVisibleAsync();
        await host.OpenEverythingAsync();
        await host.CheckLooksAsync("back-form");
        foreach (var name in night.Guests.Keys)
        {
            await guest.GoAsync(await night.Host.LookBackLinkAsync(night.Id, night.Guests[name], Cancellation));
            await guest.Field("too much").CheckAsync();
            await guest.Page.Locator("input[name=best]").First.CheckAsync();
            await guest.Field("A line for the host").FillAsync($"A line of {name}, as long as lines are when somebody has a lot to say about dough.");
            await guest.Button("Send").ClickAsync();
            await guest.SeesAsync("Thank you.");
        }

        await guest.CheckLooksAsync("look-back");
        await host.Button("Write it down").ClickAsync();
        await host.SeesAsync("Correct it");

        // Loaded anew: the message that it is written down has too little contrast while it fades.
        await host.GoLiveAsync($"{night.Path}/back");
        await host.SeesAsync("A line of Rui");
        await host.OpenEverythingAsync();
        await host.CheckLooksAsync("back-written");
        await host.GoLiveAsync($"{await site.GroupPathAsync()}/past");
        await Expect(host.Page.Locator(".pastchart")).ToBeVisibleAsync();
        await host.OpenEverythingAsync();
        await host.CheckLooksAsync("past");
        Assert.Empty(guest.Faults);
        Assert.Empty(host.Faults);
    }

    private static async Task AnswerAsync(Screen guest, string link)
    {
        await guest.GoAsync(link);
        await guest.Page.Locator("input[value=Coming]").CheckAsync();
        await guest.Button("Send my answer").ClickAsync();
        await guest.SeesAsync("Your answer is kept.");
    }

    private static async Task<int> BakedAsync(ANight night) =>
        (await night.Host.PastNightAsync(night.Id, Cancellation)).Log!.Baked!.Value.Value;
}
