using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>From a host's description of another dough and a guest's form to the pie on it, its card and what to weigh.</summary>
public class SecondDoughTests(Site site)
{
    private const float Soon = 90_000;

    [Fact]
    public async Task A_guest_who_must_not_have_the_dough_gets_a_pie_on_another_that_is_weighed_and_named()
    {
        var night = await site.NightAsync("Eva", "Rui", "Sol");
        await using var host = await site.HostScreenAsync();
        await host.GoLiveAsync(await site.GroupPathAsync() + "/menu");
        var panel = host.Page.Locator("section[aria-labelledby=second-dough-title]");
        await Expect(panel).ToContainTextAsync("not fit for coeliacs");
        await host.Button("Describe another dough").ClickAsync();
        await host.Field("What you call it").FillAsync("Maize dough");
        foreach (var (field, grams) in new[] { ("Flour or mix, g", "160"), ("Water, g", "125"), ("Yeast, g", "2.5"), ("Oil, g", "8"), ("Salt, g", "3") })
        {
            await panel.GetByLabel(field).FillAsync(grams);
        }

        await panel.GetByLabel("Baked", new() { Exact = true }).SelectOptionAsync("BakingPaper");
        await panel.GetByLabel("The maker of the paper allows").FillAsync("500");
        await panel.GetByText("Save", new() { Exact = true }).ClickAsync();
        await Expect(panel).ToContainTextAsync("Makers of baking paper name limits in between.", new() { Timeout = Soon });
        await panel.GetByLabel("The maker of the paper allows").FillAsync("230");
        foreach (var label in await panel.Locator("select[id^=second-a-]").AllAsync())
        {
            await label.SelectOptionAsync("Nothing");
        }

        await host.CheckLooksAsync("second-dough-menu");
        await panel.GetByText("Save", new() { Exact = true }).ClickAsync();
        await Expect(panel.Locator(".rowline")).ToContainTextAsync("on baking paper whose maker allows 230 °C", new() { Timeout = Soon });
        await host.CheckLooksAsync("second-dough-kept");

        await night.AnswerAsync("Eva", ("presence", "Coming"), ("consent", "on"), ("must0-GlutenCereals", "a"));
        foreach (var name in new[] { "Rui", "Sol" })
        {
            await night.AnswerAsync(name, ("presence", "Coming"), ("companion1", "Adult"));
        }

        await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        await host.GoLiveAsync($"{night.Path}/pies");
        var first = host.Page.Locator(".byhand-pies > li").First;
        await Expect(first).ToContainTextAsync("On Maize dough: on its own board, away from other flour.", new() { Timeout = Soon });
        await Expect(host.Page.Locator("tr", new() { HasText = "Eva" }).Locator("td").First).ToContainTextAsync("1");
        await host.CheckLooksAsync("second-dough-pies");

        await host.GoLiveAsync($"{night.Path}/dough");
        var weights = host.Page.Locator("section[aria-labelledby=second-dough]");
        await Expect(weights).ToContainTextAsync("Flour or mix");
        await Expect(weights.Locator("tbody tr").First).ToContainTextAsync("160");
        await Expect(weights).ToContainTextAsync("not fit for coeliacs");
        await host.CheckLooksAsync("second-dough-weights");

        await host.GoLiveAsync($"{night.Path}/print/sheets?sheet=plan&sheet=cards&sheet=table&sheet=shopping");
        var card = host.Page.Locator(".paper-card").First;
        await Expect(card).ToContainTextAsync("On Maize dough: on its own board, away from other flour.");
        await Expect(card).ToContainTextAsync("on baking paper whose maker allows 230 °C");
        await Expect(host.Page.Locator(".paper-served").First.Locator(".contains")).Not.ToContainTextAsync("gluten");
        await Expect(host.Page.Locator("table.paper-amounts", new() { HasText = "Flour or mix" })).ToBeVisibleAsync();
        await host.CheckLooksAsync("second-dough-sheets");

        // The group is shared with other tests.
        await host.GoLiveAsync(await site.GroupPathAsync() + "/menu");
        await host.Page.GetByLabel("Remove Maize dough").ClickAsync();
        await Expect(panel).ToContainTextAsync("There is none", new() { Timeout = Soon });
        Assert.Empty(host.Faults);
    }
}
