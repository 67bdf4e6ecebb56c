using GameNight.TestKit.Running;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>From a fresh installation to a plan that an answer has changed.</summary>
public class WholePathTests(Site site)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_host_sets_up_a_night_and_a_guest_answers_on_a_phone_without_script()
    {
        await site.Chromium.BrowserAsync();
        await using var app = await RunningApp.StartAsync(Cancellation);
        await using var host = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Desk);
        await host.GoAsync("/");
        await host.SeesAsync("You are the first host");
        await host.CheckLooksAsync("first");
        await FirstAccount.MakeAsync(host, app.FirstAccountCode);
        await host.SeesAsync("Three things, then the first plan stands.");
        await host.CheckLooksAsync("nights-empty");

        await MeasureFridgeAsync(host);
        await NamePeopleAsync(host, "Rui", "Eva", "Ana", "Zoe");
        await OpenNightAsync(host);
        var slicesBefore = await SlicesAsync(host);
        var link = await LinkOfAsync(host, "Rui");

        await using var guest = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Phone, withScript: false);
        await AnswerAsync(guest, link);

        await host.SeesAsync("2 coming with 1 along, 0 undecided, 0 not coming, 3 without an answer.");
        await host.SeesAsync("coming, with child");
        await host.SeesAsync("vegetarian, must not touch nuts");
        await host.SeesAsync("I bring the dice");
        await ClickLinkAsync(host, "Plan");
        await Expect(host.Page.Locator(".working")).ToBeEmptyAsync();
        Assert.NotEqual(slicesBefore, await SlicesAsync(host));
        await Expect(host.Page.Locator("#care").Locator("xpath=..")).ToContainTextAsync("nuts");
        Assert.Empty(host.Faults);
        Assert.Empty(guest.Faults);
    }

    private static async Task MeasureFridgeAsync(Screen host)
    {
        await ClickLinkAsync(host, "Look at your kitchen");
        await host.Field("Fridge, °C").FillAsync("5");
        await host.Button("Save the kitchen").ClickAsync();
        await host.SeesAsync("The kitchen is saved; plans of nights to come follow.");
    }

    private static async Task NamePeopleAsync(Screen host, params string[] names)
    {
        await ClickLinkAsync(host, "People");
        foreach (var name in names)
        {
            await host.Field("Name").FillAsync(name);
            await host.Button("Add to the group").ClickAsync();
            await Expect(host.Page.Locator(".rowline").Filter(new() { HasText = name })).ToBeVisibleAsync();
            await Expect(host.Field("Name")).ToHaveValueAsync("");
        }
    }

    private static async Task OpenNightAsync(Screen host)
    {
        await ClickLinkAsync(host, "Nights");
        await ClickLinkAsync(host, "Set up the first night");
        var later = DateTime.UtcNow.AddDays(12).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        await host.Field("Date").FillAsync(later);
        await host.Field("Address, shown to those who come").FillAsync("Rua das Flores 7");
        await host.Button("Open the night").ClickAsync();
        await Expect(host.Page.Locator("#pies-name")).ToBeVisibleAsync();
        await Expect(host.Page.Locator("svg.pie").First).ToBeVisibleAsync();
    }

    private static async Task<string> SlicesAsync(Screen host) => await host.Page.Locator("#slices-name + .numeral span").InnerTextAsync();

    private static async Task<string> LinkOfAsync(Screen host, string name)
    {
        await ClickLinkAsync(host, "Guests");
        await host.Button($"Link of {name}").ClickAsync();
        var link = await host.Page.Locator("#link").InputValueAsync();
        await host.CheckLooksAsync("link");
        await host.Page.Locator(".mud-dialog").GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();
        await Expect(host.Page.Locator("#link")).ToHaveCountAsync(0);
        return link;
    }

    private static async Task AnswerAsync(Screen guest, string link)
    {
        await guest.GoAsync(link);
        await guest.SeesAsync("Answering as Rui.");
        await guest.Page.Locator("input[value=Coming]").CheckAsync();
        await guest.Page.GetByText("Bringing somebody?").ClickAsync();
        await guest.Field("Companion 1").SelectOptionAsync("Child");
        await guest.Page.GetByText("Toppings: what I like").ClickAsync();
        await guest.Field("Mushrooms").SelectOptionAsync("Favourite");
        await guest.Page.GetByText("What I must not eat").ClickAsync();
        await guest.Page.Locator("input[name=consent]").CheckAsync();
        await guest.Page.Locator("input[name=diet0-Vegetarian]").CheckAsync();
        await guest.Page.GetByText("Allergies", new() { Exact = true }).ClickAsync();
        await guest.Page.Locator("#must0-Nuts").SelectOptionAsync("t");
        await guest.Field("A private note to the host").FillAsync("I bring the dice");
        await guest.Button("Send my answer").ClickAsync();
        await guest.SeesAsync("Thank you, Rui. Your answer is kept.");
        await guest.SeesAsync("Rua das Flores 7");
    }

    private static async Task ClickLinkAsync(Screen host, string name)
    {
        await host.Page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true }).ClickAsync();
        await host.LiveAsync();
    }
}
