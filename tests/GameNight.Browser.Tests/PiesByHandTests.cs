using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>A host lays out pies by hand, with a pointer and with the keyboard.</summary>
public class PiesByHandTests(Site site)
{
    /// <summary>A plan is made anew in between.</summary>
    private const float Soon = 60_000;

    [Fact]
    public async Task A_part_is_changed_settled_dragged_and_let_go_of_and_the_rest_is_made_around_it()
    {
        var night = await site.NightAsync("Eva", "Rui", "Sol", "Luis");
        foreach (var name in night.Guests.Keys)
        {
            await night.AnswerAsync(name, ("presence", "Coming"), ("companion1", "Adult"));
        }

        await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync($"{night.Path}/pies");
        var first = host.Page.Locator(".byhand-pies > li").First;
        await first.Locator("button.piepart").First.FocusAsync();
        await host.Page.Keyboard.PressAsync("Enter");
        await host.Page.GetByLabel("something else from tonight’s menu").CheckAsync();
        await Expect(host.Page.Locator(".chooser .ticks input").First).ToBeVisibleAsync();
        foreach (var tick in await host.Page.Locator(".chooser .ticks input").AllAsync())
        {
            await tick.UncheckAsync();
        }

        await Expect(host.Page.Locator(".chooser .ticks input:checked")).ToHaveCountAsync(0);

        await host.Field("How much of the pie").SelectOptionAsync("2");
        await host.Button("Settle it").ClickAsync();
        await Expect(first).ToContainTextAsync("Settled by you.", new() { Timeout = Soon });
        await Expect(host.Page.Locator("p.working").First).ToHaveTextAsync("", new() { Timeout = Soon });
        await host.SeesAsync("1 part is settled by hand.");

        await Expect(host.Page.Locator("p.working").First).ToHaveTextAsync("", new() { Timeout = Soon });
        var second = host.Page.Locator(".byhand-pies > li").Nth(1).Locator("button.piepart").First;
        var (carried, replaced) = (await first.Locator("button.piepart small").First.InnerTextAsync(), await second.Locator("small").InnerTextAsync());
        Assert.NotEqual(carried, replaced);
        await first.Locator("button.piepart").First.DragToAsync(second);
        await host.SeesAsync("2 parts are settled by hand.");
        await Expect(second.Locator("small")).ToHaveTextAsync(carried, new() { Timeout = Soon });
        await Expect(first.Locator("button.piepart small").First).ToHaveTextAsync(replaced, new() { Timeout = Soon });

        await Expect(host.Page.Locator("p.working").First).ToHaveTextAsync("", new() { Timeout = Soon });
        await host.Page.Locator("section[aria-labelledby=other-title] button").ClickAsync();
        await Expect(host.Page.Locator("section[aria-labelledby=other-title] dd").First).ToContainTextAsync("Whoever fares worst gets", new() { Timeout = Soon });
        await host.CheckLooksAsync("pies");
        await host.Field("A pie is divided into at most").SelectOptionAsync("4");
        await host.SeesAsync("2 parts are settled by hand.");
        await Expect(host.Page.Locator("p.working").First).ToHaveTextAsync("", new() { Timeout = Soon });
        await host.CheckLooksAsync("pies-in-quarters");
        await host.Button("Let go of everything").ClickAsync();
        await host.SeesAsync("Nothing is settled by hand.");
        Assert.Empty(host.Faults);
    }
}
