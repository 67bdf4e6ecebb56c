using GameNight.Nights.Records;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>A host who may cook and no more.</summary>
public class CookTests(Site site)
{
    [Fact]
    public async Task A_cook_is_offered_only_what_a_cook_may_do()
    {
        var night = await site.NightAsync("Rui");
        var link = await night.Host.AskToHostAsync("Noor", HostRole.Cook, TestContext.Current.CancellationToken);
        await using var cook = await site.GuestScreenAsync();
        await cook.GoAsync(link);
        await cook.Field("E-mail").FillAsync($"noor-{Guid.NewGuid():N}@example.org");
        await cook.Field("New password").FillAsync("a sentence of its own");
        await cook.Button("Make an account and join").ClickAsync();
        await cook.LiveAsync();

        await Expect(cook.Page.GetByText("Past nights")).ToBeVisibleAsync();
        await Expect(cook.Page.GetByText("Set up the next night")).ToHaveCountAsync(0);
        foreach (var (path, seen) in new[]
        {
            (night.Path + "/guests", "Rui"), ($"/g/{night.Host.Group}/people", "Rui"), ($"/g/{night.Host.Group}/menu", "Olives"),
            (night.Path + "/change", "An organiser or owner"),
        })
        {
            await cook.GoLiveAsync(path);
            await Expect(cook.Page.Locator("main").GetByText(seen).First).ToBeVisibleAsync();
            Assert.Equal(0, await cook.Page.Locator("main button:visible").CountAsync());
        }

        Assert.Empty(cook.Faults);
    }
}
