using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>From a guest's form to the pie card: what somebody wrote becomes a rule, and the rule reaches the oven.</summary>
public class NoteToPieTests(Site site)
{
    private const float Soon = 60_000;

    [Fact]
    public async Task A_note_holds_the_dough_becomes_a_rule_and_is_kept_at_the_pie()
    {
        var night = await site.NightAsync("Eva", "Rui", "Sol", "Luis");
        await night.AnswerAsync("Eva", ("presence", "Coming"), ("consent", "on"), ("note", "Mushrooms make me ill, please keep them away."), ("must0-Fish", "a"));
        foreach (var name in new[] { "Rui", "Sol", "Luis" })
        {
            await night.AnswerAsync(name, ("presence", "Coming"), ("companion1", "Adult"));
        }

        await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        await using var host = await site.HostScreenAsync();

        await host.GoLiveAsync(night.Path);
        await host.SeesAsync("Eva left a private note.");
        await host.Button("Commit the dough").ClickAsync();
        await host.SeesAsync("A guest’s private note is neither a rule nor set aside yet.");

        await host.GoLiveAsync($"{night.Path}/guests");
        await host.SeesAsync("note not settled");
        await host.Page.GetByLabel("Settle the note of Eva").ClickAsync();
        await host.Button("Settle the note").ClickAsync();
        await host.SeesAsync("Tick at least one rule, or choose a reason to set it aside.");
        await host.OpenEverythingAsync();
        await host.Page.Locator("section[aria-labelledby=note-title] .ticks").GetByText("Mushrooms", new() { Exact = true }).ClickAsync();
        await host.CheckLooksAsync("note-panel");
        await host.Button("Settle the note").ClickAsync();
        await host.SeesAsync("The note became rules.");
        await host.SeesAsync("no Mushrooms");

        await night.Host.PlanAsync(night.Id, TestContext.Current.CancellationToken);
        await host.GoLiveAsync($"{night.Path}/pies");
        await Expect(host.Page.Locator("p.working").First).ToHaveTextAsync("", new() { Timeout = Soon });
        await Expect(host.Page.GetByText("left a private note")).ToHaveCountAsync(0);
        var served = await host.Page.Locator("tr", new() { HasText = "Eva" }).Locator("td").First.InnerTextAsync();
        var letters = System.Text.RegularExpressions.Regex.Matches(served, @"\b[A-Z]{1,2}\b").Select(match => match.Value).ToHashSet();
        Assert.NotEmpty(letters);
        await host.GoLiveAsync($"{night.Path}/print/sheets?sheet=cards");
        await Expect(host.Page.Locator(".paper-card").First).ToBeVisibleAsync();
        foreach (var row in await host.Page.Locator(".paper-sectors li").AllAsync())
        {
            var onIt = await row.InnerTextAsync();
            Assert.False(letters.Contains(onIt.Split('\n', ' ')[0].Trim()) && onIt.Contains("Mushrooms", StringComparison.OrdinalIgnoreCase), onIt);
        }

        Assert.Empty(host.Faults);
    }
}
