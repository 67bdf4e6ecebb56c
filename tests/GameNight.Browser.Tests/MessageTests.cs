using System.Text.RegularExpressions;
using GameNight.TestKit.Running;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

public class MessageTests(Site site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_host_sends_invitations_with_one_tap_and_a_guest_ends_them_with_one()
    {
        // The browser first: without one the test is skipped before an app is started for nothing.
        await site.Chromium.BrowserAsync();
        await using var sink = MailSink.Open();
        await using var app = await RunningApp.StartAsync(Cancellation, settings: sink.Settings);
        await using var host = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Desk);
        var group = await FirstAccount.MakeAsync(host, app.FirstAccountCode);
        await using var work = await HostAtWork.EnterAsync(app, group, Cancellation);
        await host.GoLiveAsync($"/g/{group}/people");
        await host.Field("Name").FillAsync("Rui");
        await host.Field("E-mail address, if they agreed").FillAsync("rui@example.org");
        await host.Button("Add to the group").ClickAsync();
        await host.SeesAsync("rui@example.org");
        var night = await ANight.OpenAsync(app, work, ["Eva"]);
        await host.GoLiveAsync($"{night.Path}/guests");
        await host.Page.Locator("#invite").SelectOptionAsync("Rui");
        await host.Button("Invite").ClickAsync();
        await Expect(host.Page.Locator("li.rowline")).ToHaveCountAsync(3);

        await host.GoLiveAsync($"{night.Path}/messages");
        await host.SeesAsync("Invited by mail, as they have an address: 1. The others get a text for you to pass on: 1.");
        await host.Button("Send 1 invitation").ClickAsync();
        await Expect(host.Page.Locator("textarea")).ToHaveValueAsync(new Regex("^Hello Eva,"));
        await Expect(host.Page.Locator("body")).ToContainTextAsync(new Regex(@"Invitation\s*sent \w"), new() { Timeout = 30_000 });

        var mail = Assert.Single(sink.Mails);
        Assert.Equal("rui@example.org", mail.To.Mailboxes.Single().Address);
        await using var guest = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Phone, withScript: false);
        await guest.GoAsync(new Uri(mail.Headers["List-Unsubscribe"]!.Trim('<', '>')).AbsolutePath);
        await guest.Button("No more messages").ClickAsync();
        await guest.SeesAsync("Rui gets no more messages");
        await host.GoLiveAsync($"/g/{group}/people");
        await host.SeesAsync("wants no messages");
        Assert.Empty(host.Faults);
        Assert.Empty(guest.Faults);
    }

    [Fact]
    public async Task Without_a_mail_server_there_are_texts_to_pass_on()
    {
        var night = await site.NightAsync("Rui", "Eva");
        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync($"{night.Path}/messages");
        await host.SeesAsync("This installation sends no mail");
        await host.Button("Write 2 texts to pass on").ClickAsync();

        await host.Page.Locator("summary", new() { HasText = "Rui" }).ClickAsync();
        var text = await host.Field("Text for Rui").InputValueAsync();
        Assert.Contains(await night.LinkAsync("Rui"), text, StringComparison.Ordinal);
        await host.Button("I passed on the text for Rui").ClickAsync();

        await host.SeesAsync("passed on by hand");
        await Expect(host.Page.Locator("textarea")).ToHaveCountAsync(1);
        Assert.Empty(host.Faults);
    }

    [Fact]
    public async Task A_guest_puts_their_nights_into_a_calendar_without_script()
    {
        var night = await site.NightAsync("Rui");
        await using var guest = await site.GuestScreenAsync(withScript: false);
        await guest.GoAsync(await night.LinkAsync("Rui"));
        await guest.Page.GetByText("All my nights as a calendar that keeps itself up to date").ClickAsync();
        await guest.Button("Make my calendar link").ClickAsync();

        var feed = await guest.Field("Or copy this address into your calendar program").InputValueAsync();

        Assert.Contains("STATUS:TENTATIVE", await night.App.Client.GetStringAsync(new Uri(feed).AbsolutePath, Cancellation), StringComparison.Ordinal);
        Assert.StartsWith("webcal://", await guest.Page.GetByText("Into my calendar", new() { Exact = true }).GetAttributeAsync("href"), StringComparison.Ordinal);
    }
}
