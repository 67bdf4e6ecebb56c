using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

public class PlanPageTests(Site site)
{
    /// <summary>How long a host may look at numbers that an answer has overtaken.</summary>
    private const float Soon = 10_000;

    private const string Working = "Split and timeline are being redone, and the yeast follows their hours: weigh nothing before this line is gone.";

    [Fact]
    public async Task An_answer_changes_the_open_plan_by_itself_and_the_page_says_what_is_still_being_redone()
    {
        var night = await site.NightAsync("Rui", "Eva", "Ana", "Luis");
        await using var host = await site.HostScreenAsync();
        await OpenAsync(host, night);
        var (slices, pies) = (await Number(host, "slices").InnerTextAsync(), await host.Page.Locator("svg.pie").CountAsync());
        await host.Page.EvaluateAsync(
            """
            () => {
              window.neverReloaded = true;
              window.said = [];
              new MutationObserver(() => window.said.push(document.querySelector(".working")?.textContent ?? ""))
                .observe(document.querySelector("main"), { subtree: true, childList: true, characterData: true });
            }
            """);

        await night.AnswerAsync("Rui", ("presence", "Coming"), ("hunger", "More"), ("companion1", "Adult"), ("companion2", "Adult"));

        await Expect(Number(host, "slices")).Not.ToHaveTextAsync(slices, new() { Timeout = Soon });
        await Expect(host.Page.Locator("svg.pie")).Not.ToHaveCountAsync(pies, new() { Timeout = Soon });
        await Expect(host.Page.Locator(".working")).ToBeEmptyAsync(new() { Timeout = Soon });
        Assert.Contains(Working, await host.Page.EvaluateAsync<string[]>("() => window.said"));
        Assert.True(await host.Page.EvaluateAsync<bool>("() => window.neverReloaded === true"));
        await host.SeesAsync("before ");
        await host.SeesAsync("Rui answered: coming, 3 people,");
        Assert.Empty(host.Faults);
    }

    [Fact]
    public async Task A_number_set_by_hand_with_the_keyboard_sticks_and_can_be_taken_back()
    {
        var night = await site.NightAsync("Rui", "Eva");
        await using var host = await site.HostScreenAsync();
        await OpenAsync(host, night);
        var proposed = await Number(host, "pies").InnerTextAsync();

        await host.TabToAsync("section[aria-labelledby=pies-name] summary");
        await host.Page.Keyboard.PressAsync("Enter");
        await host.TabToAsync("#pies-hand");
        await host.Page.Keyboard.TypeAsync("7");
        await host.Page.Keyboard.PressAsync("Enter");

        await Expect(Number(host, "pies")).ToHaveTextAsync("7");
        await host.SeesAsync($"Set by hand; the plan says {proposed}.");
        await host.Page.ReloadAsync();
        await host.LiveAsync();
        await Expect(Number(host, "pies")).ToHaveTextAsync("7");
        await Expect(host.Page.Locator("svg.pie")).ToHaveCountAsync(7, new() { Timeout = Soon });

        await host.TabToAsync(".byhand button");
        await host.Page.Keyboard.PressAsync("Enter");

        await Expect(Number(host, "pies")).ToHaveTextAsync(proposed);
        await Expect(host.Page.Locator(".byhand")).ToHaveCountAsync(0);
        Assert.Empty(host.Faults);
    }

    [Fact]
    public async Task A_number_that_cannot_be_is_refused_with_its_range()
    {
        var night = await site.NightAsync("Rui");
        await using var host = await site.HostScreenAsync();
        await OpenAsync(host, night);
        foreach (var (figure, typed, sentence) in new[]
        {
            ("pies", "500", "A night has 0 to 200 pies."), ("dough", "5", "This is 5; it can be"),
            ("yeast", "50", "This is 50; it can be more than 0, up to 5."), ("sauce", "-1", "Type a number from 0"),
        })
        {
            var before = await Number(host, figure).InnerTextAsync();

            await host.OpenEverythingAsync();
            await host.Page.Locator($"#{figure}-hand").FillAsync(typed);
            await host.Page.Locator($"#{figure}-hand").PressAsync("Enter");

            await Expect(host.Page.Locator("[role=alert]").Filter(new() { HasText = sentence })).ToBeVisibleAsync();
            await Expect(Number(host, figure)).ToHaveTextAsync(before);
        }

        await Expect(host.Page.Locator(".byhand")).ToHaveCountAsync(0);
        Assert.Empty(host.Faults);
    }

    private static async Task OpenAsync(Screen host, ANight night)
    {
        await host.GoLiveAsync(night.Path);
        await Expect(host.Page.Locator("svg.pie").First).ToBeVisibleAsync();
        await Expect(host.Page.Locator(".working")).ToBeEmptyAsync();
    }

    private static ILocator Number(Screen host, string figure) => host.Page.Locator($"#{figure}-name + .numeral span");
}
