using GameNight.Nights.Records;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>The table, the waiting list, and who comes late, as guests and host see them.</summary>
public class SeatTests(Site site)
{
    /// <summary>The pies are divided anew for whoever is there.</summary>
    [Fact]
    public async Task Somebody_who_stays_away_or_comes_unannounced_is_two_taps()
    {
        var night = await site.NightAsync("Eva", "Rui", "Sol");
        await night.AnswerAsync("Eva", ("presence", "Coming"));
        await night.AnswerAsync("Rui", ("presence", "Coming"));
        await night.AnswerAsync("Sol", ("presence", "NotComing"));
        await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        await using var host = await site.HostScreenAsync(Screen.Phone);
        await host.GoLiveAsync($"{night.Path}/guests");

        await host.Button("Note an answer of Rui").ClickAsync();
        await host.Button("They stay away: note it").ClickAsync();
        await Expect(host.Button("Keep this answer")).ToHaveCountAsync(0);
        await host.Button("Note an answer of Sol").ClickAsync();
        await host.Button("They come: note it").ClickAsync();
        await Expect(host.Button("Keep this answer")).ToHaveCountAsync(0);

        var plan = await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        Assert.DoesNotContain(plan.Split.Servings, serving => serving.EaterId == night.Guests["Rui"].ToString());
        Assert.Contains(plan.Split.Servings, serving => serving.EaterId == night.Guests["Sol"].ToString());
        Assert.Empty(host.Faults);
    }

    /// <summary>On a small phone the question is there without scrolling, with everything that can stand above it.</summary>
    [Fact]
    public async Task A_small_phone_shows_the_first_answer_at_once_and_the_readers_own_time()
    {
        var night = await site.NightAsync("Eva", "Rui");
        await night.Host.ChangeAsync(
            night.Id,
            facts => facts with { Seats = 8, Bring = "something to drink", Played = new Played("A long game of trading and building") },
            TestContext.Current.CancellationToken);
        await night.AnswerAsync("Rui", ("presence", "Coming"), ("showsName", "on"));
        await using var guest = await site.GuestScreenAsync();
        await guest.Page.SetViewportSizeAsync(Screen.Phone, 667);
        var browser = await guest.Page.Context.NewCDPSessionAsync(guest.Page);
        await browser.SendAsync("Emulation.setTimezoneOverride", new() { ["timezoneId"] = "Asia/Tokyo" });

        await guest.GoAsync(await night.LinkAsync("Eva"));

        var sending = await guest.Page.Locator(".sendbar").BoundingBoxAsync();
        var coming = await guest.Page.Locator("label.choice", new() { HasText = "I am coming" }).BoundingBoxAsync();
        Assert.InRange(coming!.Y + coming.Height, 0, sending!.Y);
        await guest.SeesAsync("in Asia/Tokyo");
        await guest.CheckLooksAsync("invitation");
        await night.Host.ChangeAsync(night.Id, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) }, TestContext.Current.CancellationToken);
        await guest.Page.SetViewportSizeAsync(Screen.Phone, 667);
        await guest.GoAsync(await night.LinkAsync("Rui"));
        var confirm = await guest.Button("Yes, I am coming").BoundingBoxAsync();
        Assert.InRange(confirm!.Y + confirm.Height, 0, 667);
        var disown = await guest.Button("I am not Rui").BoundingBoxAsync();
        Assert.InRange(disown!.Y + disown.Height, 0, 667);
        await guest.CheckLooksAsync("invitation-moved");
        Assert.Empty(guest.Faults);
    }

    [Fact]
    public async Task A_guest_waits_and_moves_up_and_another_comes_late()
    {
        var night = await site.NightAsync("Eva", "Rui", "Sol");
        await night.Host.ChangeAsync(night.Id, facts => facts with { Seats = 3 }, TestContext.Current.CancellationToken);
        await using var late = await site.GuestScreenAsync();
        await late.GoAsync(await night.LinkAsync("Eva"));
        await late.Page.Locator("label.choice", new() { HasText = "I am coming" }).ClickAsync();
        await late.Page.Locator("label.chip:has(input[name=comes][value='21:00'])").ClickAsync();
        await late.Button("Send my answer").ClickAsync();
        await late.SeesAsync("You have a seat at the table.");
        await night.AnswerAsync("Rui", ("presence", "Coming"));
        await using var waiting = await site.GuestScreenAsync();
        await waiting.GoAsync(await night.LinkAsync("Sol"));
        await waiting.SeesAsync("The table is full.");
        await waiting.Page.Locator("label.choice", new() { HasText = "I am coming" }).ClickAsync();
        await waiting.Button("Send my answer").ClickAsync();
        await waiting.SeesAsync("you are on the waiting list, at place 1");

        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync($"{night.Path}/guests");
        await host.SeesAsync("3 of 3 seats are taken.");
        await host.SeesAsync("waits at place 1");
        await host.SeesAsync("from about 21:00");

        await host.Button("Note an answer of Rui").ClickAsync();
        await host.Field("Do they come?").SelectOptionAsync(Presence.NotComing.ToString());
        await host.Button("Keep this answer").ClickAsync();
        await Expect(host.Page.Locator("main")).Not.ToContainTextAsync("waits at place", new() { Timeout = 30_000 });
        await host.SeesAsync("(noted by a host)");
        await waiting.GoAsync(await night.LinkAsync("Sol"));
        await waiting.SeesAsync("You have a seat at the table.");

        await host.GoLiveAsync(night.Path);
        await host.SeesAsync("Eva comes at about 21:00");
        Assert.Empty(host.Faults);
        Assert.Empty(late.Faults);
        Assert.Empty(waiting.Faults);
    }
}
