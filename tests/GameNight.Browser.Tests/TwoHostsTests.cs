using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

public class TwoHostsTests(Site site)
{
    [Fact]
    public async Task The_second_of_two_who_change_a_night_is_told_what_changed_and_keeps_what_they_typed()
    {
        var night = await site.NightAsync("Rui");
        await using var first = await site.HostScreenAsync();
        await using var second = await site.HostScreenAsync();
        await first.GoLiveAsync(night.Path + "/change");
        await second.GoLiveAsync(night.Path + "/change");

        await second.Field("To bring").FillAsync("A chair");
        await first.Field("Name of the night").FillAsync("Chess evening");
        await first.Button("Save the night").ClickAsync();
        await first.SeesAsync("The night is saved.");
        await second.Button("Save the night").ClickAsync();

        await second.SeesAsync("Another host changed this night while you were typing.");
        await second.SeesAsync("Name: Board games is now Chess evening");
        await Expect(second.Field("To bring")).ToHaveValueAsync("A chair");
        Assert.Equal("Dice", await BringAsync(night));

        await second.Button("Save the night").ClickAsync();

        await second.SeesAsync("The night is saved.");
        Assert.Equal("A chair", await BringAsync(night));
        Assert.Empty(first.Faults);
        Assert.Empty(second.Faults);
    }

    [Fact]
    public async Task Numbers_that_two_set_by_hand_do_not_undo_each_other()
    {
        var night = await site.NightAsync("Rui");
        await using var first = await site.HostScreenAsync();
        await using var second = await site.HostScreenAsync();
        foreach (var (host, figure, typed) in new[] { (first, "pies", "6"), (second, "sauce", "80") })
        {
            await host.GoLiveAsync(night.Path);
            await Expect(host.Page.Locator("svg.pie").First).ToBeVisibleAsync(new() { Timeout = 30_000 });
            await host.OpenEverythingAsync();
            await host.Page.Locator($"#{figure}-hand").FillAsync(typed);
        }

        await first.Page.Locator("#pies-hand").PressAsync("Enter");
        await second.Page.Locator("#sauce-hand").PressAsync("Enter");

        foreach (var host in new[] { first, second })
        {
            await Expect(host.Page.Locator(".byhand")).ToHaveCountAsync(2);
            await Expect(host.Page.Locator("#pies-name + .numeral span")).ToHaveTextAsync("6");
            await host.SeesAsync("80 g a pie");
        }
    }

    private static async Task<string> BringAsync(ANight night) =>
        (await night.Host.NightAsync(night.Id, TestContext.Current.CancellationToken)).Facts.Bring;
}
