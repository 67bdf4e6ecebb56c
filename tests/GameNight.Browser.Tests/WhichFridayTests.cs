using System.Text.RegularExpressions;
using GameNight.TestKit.Running;
using Microsoft.Playwright;
using NodaTime;
using NodaTime.Text;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>A group from the question of which Friday to a committed dough and through three late changes.</summary>
public class WhichFridayTests(Site site)
{
    /// <summary>A plan is made anew in between.</summary>
    private const float Soon = 60_000;

    private static readonly string[] Friends = ["Ana", "Eva", "Luis", "Mira", "Rui", "Sol"];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_group_goes_from_which_Friday_to_a_committed_dough_and_through_three_late_changes()
    {
        await using var time = await AppInTime.StartAsync(site, Cancellation);
        foreach (var friend in Friends)
        {
            await time.Host.KnowAsync(friend, Cancellation);
        }

        await using var host = await time.HostScreenAsync();
        await AskWhichFridayAsync(host, time);
        foreach (var friend in Friends)
        {
            await AnswerDateAsync(time.App, await LinkAsync(host, friend));
        }

        await host.SeesAsync("6 of 6 have answered");
        await host.Page.Locator(".evenings > li").First.GetByRole(AriaRole.Button, new() { NameRegex = new("^Choose") }).ClickAsync();
        await host.Button("Make the night").ClickAsync();
        await host.SeesAsync("Everybody who was asked is invited: by mail where there is an address");
        await host.Page.GetByText("To the night", new() { Exact = true }).ClickAsync();
        await host.Page.WaitForURLAsync(new Regex("/n/[^/]+$"));
        var night = new Uri(host.Page.Url).AbsolutePath;

        foreach (var friend in Friends[..4])
        {
            await AnswerAsync(time.App, await InvitationAsync(host, night, friend), ("presence", "Coming"));
        }

        await host.GoLiveAsync(night);
        await RestedAsync(host);
        await EveryNumberIsExplainedAsync(host);
        await host.Button("Commit the dough").ClickAsync();
        await host.SeesAsync("The dough is committed");
        var pies = await PiesAsync(host);
        time.MoveTo(await MixingAsync(time) + Duration.FromHours(3));

        // One: many more than planned. Nothing moves by itself; a rescue dough is chosen.
        await AnswerAsync(
            time.App, await InvitationAsync(host, night, "Rui"), ("presence", "Coming"), ("companion1", "Adult"), ("companion2", "Adult"), ("hunger", "More"));
        await AnswerAsync(time.App, await InvitationAsync(host, night, "Sol"), ("presence", "Coming"), ("companion1", "Adult"), ("companion2", "Adult"));
        await host.GoLiveAsync(night);
        await RestedAsync(host);
        await host.SeesAsync("Rui answered: coming, 3 people,");
        Assert.Equal(pies, await PiesAsync(host));
        await ChooseAsync(host, "A rescue dough for");
        await host.SeesAsync("What to weigh for the rescue dough");
        await Expect(host.Page.Locator("section[aria-labelledby=pies-name] .numeral span")).Not.ToHaveTextAsync(pies, new() { Timeout = Soon });

        // Two: fewer. The dough that is there stays, and balls are kept.
        await host.Page.Locator(".late-options").First.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take back") }).First.ClickAsync();
        await RestedAsync(host);
        foreach (var friend in new[] { "Rui", "Sol", "Luis", "Mira" })
        {
            await AnswerAsync(time.App, await InvitationAsync(host, night, friend), ("presence", "NotComing"));
        }

        await host.GoLiveAsync(night);
        await RestedAsync(host);
        await host.SeesAsync("Luis does not come:");
        await ChooseAsync(host, "Keep ");
        await host.SeesAsync("stay unbaked.");

        // Three: a new must-not. The split keeps to it, the dough cannot.
        await AnswerAsync(
            time.App, await InvitationAsync(host, night, "Ana"), ("presence", "Coming"), ("consent", "on"), ("must0-Nuts", "t"));
        await host.GoLiveAsync(night);
        await RestedAsync(host);
        await host.SeesAsync("New must-not, Ana: must not touch");
        await host.SeesAsync("Own pie for Ana");
        await ChooseAsync(host, "Divide the dough into");
        await host.SeesAsync("The dough is divided into");
        await EveryNumberIsExplainedAsync(host);
        Assert.Empty(host.Faults);
    }

    private static async Task AskWhichFridayAsync(Screen host, AppInTime time)
    {
        var first = time.Now.InUtc().Date.PlusDays(8).Next(IsoDayOfWeek.Friday);
        await host.GoLiveAsync($"/g/{time.Host.Group}/dates/new");
        await host.Field("What it is called").FillAsync("Which Friday?");
        while (await host.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take out evening 3") }).CountAsync() > 0)
        {
            await host.Button("Take out evening 3").ClickAsync();
            await Task.Delay(200, Cancellation);
        }

        for (var evening = 1; evening <= 2; evening++)
        {
            await host.Field($"Evening {evening}, date").FillAsync(LocalDatePattern.Iso.Format(first.PlusWeeks(evening - 1)));
            await host.Field($"Evening {evening}, first pie on the table").FillAsync("19:30");
        }

        await host.Field("Answers are asked for until, date").FillAsync(LocalDatePattern.Iso.Format(first.PlusDays(-5)));
        await host.Field("Answers are asked for until, time").FillAsync("20:00");

        await host.Button("Ask them").ClickAsync();
        await Expect(host.Page.Locator(".evenings > li")).ToHaveCountAsync(2, new() { Timeout = Soon });
    }

    private static async Task<string> LinkAsync(Screen host, string name)
    {
        await host.Button($"Link of {name}").ClickAsync();
        var link = await host.Page.Locator("#link").InputValueAsync();
        await host.Button("Close").ClickAsync();
        await Expect(host.Page.Locator("#link")).ToHaveCountAsync(0);
        return new Uri(link).AbsolutePath;
    }

    private async Task AnswerDateAsync(RunningApp app, string link)
    {
        await using var guest = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Phone, withScript: false);
        await guest.GoAsync(link);
        await guest.Page.Locator("fieldset.ask").First.Locator("label.choice", new() { HasText = "works" }).ClickAsync();
        await guest.Button("Send my answer").ClickAsync();
        await guest.SeesAsync("What you said is kept.");
        Assert.Empty(guest.Faults);
    }

    private static async Task AnswerAsync(RunningApp app, string link, params IReadOnlyList<(string, string)> fields)
    {
        var page = await AnswerPage.OpenAsync(app.Client, link, Cancellation);
        Assert.Equal(System.Net.HttpStatusCode.SeeOther, (await page.SendAsync(Cancellation, fields)).StatusCode);
    }

    private static async Task<string> InvitationAsync(Screen host, string night, string name)
    {
        await host.GoLiveAsync($"{night}/guests");
        await host.Button($"Link of {name}").ClickAsync();
        await Expect(host.Page.GetByRole(AriaRole.Img, new() { Name = "QR code of the link" }).Locator("svg")).ToBeVisibleAsync();
        var link = await host.Page.Locator("#link").InputValueAsync();
        return new Uri(link).AbsolutePath;
    }

    private static Task RestedAsync(Screen host) =>
        Expect(host.Page.Locator("p.working")).ToHaveTextAsync("", new() { Timeout = Soon });

    private static async Task<string> PiesAsync(Screen host) =>
        await host.Page.Locator("section[aria-labelledby=pies-name] .numeral span").InnerTextAsync();

    private static async Task ChooseAsync(Screen host, string title)
    {
        await host.OpenEverythingAsync();
        await host.Page.Locator(".late-options li", new() { Has = host.Page.Locator("h3", new() { HasTextRegex = new("^" + title) }) })
            .First.GetByRole(AriaRole.Button, new() { NameRegex = new("^Choose") }).ClickAsync();
        await Expect(host.Page.Locator("#late-chosen")).ToBeVisibleAsync(new() { Timeout = Soon });
        await RestedAsync(host);
    }

    /// <summary>Behind each number of the night there is the working that led to it.</summary>
    private static async Task EveryNumberIsExplainedAsync(Screen host)
    {
        foreach (var figure in await host.Page.Locator(".figures section.figure").AllAsync())
        {
            var name = await figure.Locator("h3").InnerTextAsync();
            Assert.True(
                await figure.Locator("details, p.soft").CountAsync() > 0 && (await figure.InnerTextAsync()).Length > name.Length + 8,
                $"{name} is not explained.");
        }
    }

    private static async Task<Instant> MixingAsync(AppInTime time) => Instant.FromDateTimeUtc(DateTime.SpecifyKind(
        await HostAtWork.AskAsync<DateTime>(time.App, "select dough_commitment from plans limit 1", Cancellation), DateTimeKind.Utc));
}
