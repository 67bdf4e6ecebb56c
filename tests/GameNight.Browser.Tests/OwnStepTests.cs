using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>A host puts a step of their own among those of the night, sees it everywhere, changes it and takes it out.</summary>
public class OwnStepTests(Site site)
{
    /// <summary>A plan is made anew in between.</summary>
    private const float Soon = 60_000;

    [Fact]
    public async Task A_step_of_ones_own_is_in_list_chart_print_calendar_and_on_the_night()
    {
        var night = await site.NightAsync("Rui", "Eva", "Tomek");
        foreach (var name in night.Guests.Keys)
        {
            await night.AnswerAsync(name, ("presence", "Coming"));
        }

        await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync($"{night.Path}/timeline");
        await host.Page.Locator("summary", new() { HasText = "Add a step of your own" }).ClickAsync();
        await host.Field("What you do").FillAsync("Light the garden");
        await host.Field("Minutes it takes").FillAsync("20");
        await host.Field("When").SelectOptionAsync("BetweenSteps");
        await host.Field("After").SelectOptionAsync("Preheat");
        await host.Field("Before").SelectOptionAsync("Serve");
        await host.Button("Add it").ClickAsync();

        await Expect(host.Page.Locator(".ownline")).ToContainTextAsync("planned ", new() { Timeout = Soon });
        await Expect(host.Page.Locator(".steplist")).ToContainTextAsync(["Light the garden"], new() { Timeout = Soon });
        await Expect(host.Page.Locator(".evening .lane-name").Last).ToHaveTextAsync("Light the garden");
        await host.CheckLooksAsync("timeline-own");

        await using var phone = await site.HostScreenAsync(Screen.Phone);
        await phone.GoLiveAsync($"{night.Path}/timeline");
        await phone.PictureAsync("timeline-own", Screen.Phone);
        await phone.GoLiveAsync($"{night.Path}/live");
        await phone.OpenEverythingAsync();
        await Expect(phone.Page.Locator(".livesteps")).ToContainTextAsync("Light the garden");
        await phone.GoLiveAsync($"{night.Path}/print/sheets");
        await phone.SeesAsync("Light the garden");
        var calendar = await host.Page.APIRequest.GetAsync(new Uri(new Uri(host.Page.Url), $"{night.Path}/steps.ics").ToString());
        Assert.Contains("Light the garden", await calendar.TextAsync(), StringComparison.Ordinal);

        await host.Button("Change “Light the garden”").ClickAsync();
        await host.Field("Minutes it takes").FillAsync("1800");
        await host.Button("Keep the change").ClickAsync();
        await host.SeesAsync("What takes longer than half a day is two steps");
        await host.Field("Minutes it takes").FillAsync("40");
        await host.Button("Keep the change").ClickAsync();
        await Expect(host.Page.Locator(".ownline")).ToContainTextAsync("40 min", new() { Timeout = Soon });

        await host.Button("Take out Light the garden").ClickAsync();
        await Expect(host.Page.Locator(".ownline")).ToHaveCountAsync(0, new() { Timeout = Soon });
        await Expect(host.Page.Locator(".evening .lane-name", new() { HasText = "Light the garden" })).ToHaveCountAsync(0, new() { Timeout = Soon });
        Assert.Empty(host.Faults);
    }

    [Fact]
    public async Task A_helper_has_a_name_a_skill_and_a_timeline_a_sheet_and_a_calendar_of_their_own()
    {
        var night = await site.NightAsync("Rui", "Eva", "Tomek", "Sol");
        foreach (var name in night.Guests.Keys)
        {
            await night.AnswerAsync(name, ("presence", "Coming"), ("companion1", "Adult"));
        }

        await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync($"{night.Path}/timeline");
        await host.Button("One more helper").ClickAsync();
        await host.Field("Who helper 1 is").SelectOptionAsync(new SelectOptionValue { Label = "Rui" });
        await Expect(host.Button("Rui does not help")).ToBeVisibleAsync(new() { Timeout = Soon });
        await host.Field("What helper 1 does").SelectOptionAsync("FetchAndClear");
        var whose = host.Page.Locator(".whose");
        await Expect(whose.GetByText("Rui")).ToBeVisibleAsync(new() { Timeout = Soon });
        await Expect(host.Page.Locator("p.working").First).ToHaveTextAsync("", new() { Timeout = Soon });
        await host.CheckLooksAsync("timeline-helpers");

        await whose.GetByText("Rui").ClickAsync();
        await Expect(host.Page.Locator(".steplist")).ToHaveCountAsync(1, new() { Timeout = Soon });
        await Expect(host.Page.Locator(".steplist")).ToContainTextAsync("serve");
        await Expect(host.Page.Locator(".steplist")).Not.ToContainTextAsync("your hands");
        await Expect(host.Page.Locator(".steplist")).Not.ToContainTextAsync("shape");
        await host.PictureAsync("timeline-of-helper", Screen.Desk);
        var calendar = await (await host.Page.APIRequest.GetAsync(new Uri(new Uri(host.Page.Url), $"{night.Path}/steps.ics?by=1").ToString())).TextAsync();
        Assert.Contains("serve pie", calendar, StringComparison.Ordinal);
        Assert.DoesNotContain("Shape", calendar, StringComparison.Ordinal);
        await host.GoLiveAsync($"{night.Path}/print/sheets?sheet=timeline&by=1");
        await host.SeesAsync("Only the steps of: Rui.");
        await host.PictureAsync("sheet-of-helper", Screen.Desk);
        Assert.Empty(host.Faults);
    }
}
