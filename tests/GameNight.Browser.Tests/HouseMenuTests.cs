using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>A host says how toppings go together, gives a combination its name, looks for a fairer split and shares the pies.</summary>
public class HouseMenuTests(Site site)
{
    private const float Soon = 90_000;

    [Fact]
    public async Task Rules_and_names_of_the_menu_reach_the_pies_and_the_picture()
    {
        var night = await site.NightAsync("Eva", "Rui", "Sol");
        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync(await site.GroupPathAsync() + "/menu");
        var panel = host.Page.Locator("section[aria-labelledby=together-title]");

        await host.Field("Never").SelectOptionAsync(new Microsoft.Playwright.SelectOptionValue { Label = "Mushrooms" });
        await host.Field("together with").SelectOptionAsync(new Microsoft.Playwright.SelectOptionValue { Label = "Olives" });
        await host.Button("Keep them apart").ClickAsync();
        await Expect(panel).ToContainTextAsync("Mushrooms and Olives", new() { Timeout = Soon });
        await host.Field("Name of the combination").FillAsync("Woodland");
        await panel.Locator(".ticks").GetByText("Mushrooms", new() { Exact = true }).ClickAsync();
        await panel.Locator(".ticks").GetByText("Olives", new() { Exact = true }).ClickAsync();
        await host.Button("Give it the name").ClickAsync();
        await host.SeesAsync("Mushrooms and Olives never go together: untick one, or let them meet first.");
        await panel.Locator(".ticks").GetByText("Olives", new() { Exact = true }).ClickAsync();
        await panel.Locator(".ticks").GetByText("Red onion", new() { Exact = true }).ClickAsync();
        await host.Button("Give it the name").ClickAsync();
        await Expect(panel.Locator(".rows").Last).ToContainTextAsync("Woodland", new() { Timeout = Soon });
        await host.CheckLooksAsync("menu-rules");

        foreach (var name in night.Guests.Keys)
        {
            await night.AnswerAsync(name, ("presence", "Coming"), ("companion1", "Adult"));
        }

        await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        await host.GoLiveAsync($"{night.Path}/pies");
        await Expect(host.Page.Locator("p.working").First).ToHaveTextAsync("", new() { Timeout = Soon });
        var first = host.Page.Locator(".byhand-pies > li").First;
        await first.Locator("button.piepart").First.ClickAsync();
        await host.Page.GetByLabel("something else from tonight’s menu").CheckAsync();
        var ticked = host.Page.Locator(".chooser .ticks input:checked");
        while (await ticked.CountAsync() > 0)
        {
            await ticked.First.UncheckAsync();
        }

        await host.Page.Locator(".chooser .ticks").GetByText("Mushrooms", new() { Exact = true }).ClickAsync();
        await host.Page.Locator(".chooser .ticks").GetByText("Red onion", new() { Exact = true }).ClickAsync();
        await host.Button("Settle it").ClickAsync();
        await Expect(first).ToContainTextAsync("Woodland: ", new() { Timeout = Soon });
        await Expect(host.Page.Locator("p.working").First).ToHaveTextAsync("", new() { Timeout = Soon });

        await host.Button("Look for a fairer one").ClickAsync();
        await Expect(host.Page.Locator("section[aria-labelledby=better-title]")).ToContainTextAsync("slices of computing time", new() { Timeout = Soon });
        // The search may end by itself just then.
        await host.Button("That will do").EvaluateAllAsync<int>("buttons => { buttons.forEach(button => button.click()); return buttons.length; }");

        await Expect(host.Button("Look for a fairer one")).ToBeVisibleAsync(new() { Timeout = Soon });
        await host.CheckLooksAsync("pies-fairer");
        var download = await host.Page.RunAndWaitForDownloadAsync(() => host.Page.GetByText("Download the picture").ClickAsync());
        await download.SaveAsAsync(Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../../screens/pies-picture.png")));
        var bytes = await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        Assert.Equal("PNG"u8, bytes.AsSpan(1, 3));

        // The group is shared with other tests.
        await host.GoLiveAsync(await site.GroupPathAsync() + "/menu");
        await host.Page.GetByLabel("Let them meet: Mushrooms and Olives").ClickAsync();
        await Expect(panel).ToContainTextAsync("Any topping may meet any other.", new() { Timeout = Soon });
        await host.Page.GetByLabel("Remove Woodland").ClickAsync();
        await Expect(panel).Not.ToContainTextAsync("Woodland", new() { Timeout = Soon });
        Assert.Empty(host.Faults);
    }
}
