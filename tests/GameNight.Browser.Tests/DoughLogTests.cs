using NodaTime;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>The days of a dough that is begun, on a phone.</summary>
public class DoughLogTests(Site site)
{
    private const float Soon = 20_000;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_measured_and_seen_moves_the_course_and_what_the_kneader_found_is_remembered()
    {
        await using var time = await AppInTime.StartAsync(site, Cancellation);
        var night = await ANight.OpenAsync(time.App, time.Host, ["Rui", "Eva"]);
        var plan = await time.Host.PlanAsync(night.Id, Cancellation);
        await using var host = await time.HostScreenAsync(Screen.Phone);
        await host.GoLiveAsync(night.Path);
        await host.Button("Commit the dough").ClickAsync();
        await host.SeesAsync("The dough is committed");

        time.MoveTo(plan.Timeline.DoughCommitment!.Value + Duration.FromHours(8));
        await host.GoLiveAsync(night.Path + "/dough");
        var lead = host.Page.Locator("section p.lead").First;
        var before = await lead.InnerTextAsync();
        await host.Field("Fridge, in a glass of water, °C").FillAsync("12");
        await host.Button("Write it down").ClickAsync();

        await Expect(host.Page.Locator("ul.readings li")).ToHaveCountAsync(1, new() { Timeout = Soon });
        await Expect(lead).Not.ToHaveTextAsync(before, new() { Timeout = Soon });
        await host.SeesAsync("earlier than the serving time asks");

        await host.Field("Flour that stayed out, g").FillAsync("20");
        await host.Button("Keep it for the next dough").ClickAsync();
        await host.SeesAsync("of the flour stays out");
        Assert.Contains(await time.Host.RecipesAsync(Cancellation), recipe => recipe.Formula.Kneader is { StayedOut.Value: > 0 });

        await host.Page.Locator("ul.readings button").ClickAsync();
        await Expect(lead).ToHaveTextAsync(before, new() { Timeout = Soon });
        Assert.Empty(host.Faults);
    }
}
