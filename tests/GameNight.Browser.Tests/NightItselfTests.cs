using System.Globalization;
using GameNight.Planning.Timeline;
using Microsoft.Playwright;
using NodaTime;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>A whole night against a clock that the test moves, on the host's phone and on a tablet beside it.</summary>
public class NightItselfTests(Site site)
{
    private const float Soon = 20_000;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_night_is_led_through_slips_undo_a_lost_connection_a_restart_and_a_late_guest()
    {
        await using var time = await AppInTime.StartAsync(site, Cancellation);
        var night = await ANight.OpenAsync(time.App, time.Host, ["Rui", "Eva", "Tomek"]);
        foreach (var name in new[] { "Rui", "Eva" })
        {
            await night.AnswerAsync(name, ("presence", "Coming"));
        }

        var plan = await time.Host.PlanAsync(night.Id, Cancellation);
        await using var phone = await time.HostScreenAsync(Screen.Phone);
        await phone.GoLiveAsync(night.Path);
        await phone.Button("Commit the dough").ClickAsync();
        await phone.SeesAsync("The dough is committed");
        plan = await time.Host.PlanAsync(night.Id, Cancellation);
        var steps = plan.Timeline.Steps.ToDictionary(step => step.Id);

        // The afternoon: preparations by whole rows, balls out, oven on, each as its time comes.
        await using var tablet = await time.HostScreenAsync(Screen.Desk);
        time.MoveTo(steps["temper-1"].Start - Duration.FromHours(4));
        await phone.GoLiveAsync(night.Path + "/live");
        await tablet.GoLiveAsync(night.Path + "/live");
        var begin = time.Now;
        var afternoon = plan.Timeline.Steps.Where(IsTapped).TakeWhile(step => step.Kind != StepKind.Shape).Where(step => step.Start > begin).OrderBy(TapAt).ToList();
        Assert.Contains(afternoon, step => step.Kind == StepKind.Preheat);
        foreach (var step in afternoon)
        {
            time.MoveTo(TapAt(step));
            await TapStepAsync(phone, step);
            await Expect(RowOf(tablet, step)).ToContainTextAsync(step.Kind is StepKind.Temper or StepKind.Preheat ? "running" : "done", new() { Timeout = Soon });
        }

        // The first pie goes in; its clock runs on both, and is taken back and set again by an undo.
        var first = steps["top-1"];
        time.MoveTo(first.End);
        await phone.Page.ReloadAsync();
        await phone.LiveAsync();
        await Expect(phone.Page.Locator(".nextstep h2")).ToHaveTextAsync("Shape and top pie 1");
        await phone.PictureAsync("live-shape", Screen.Phone);
        await phone.Button("Done, it is in").ClickAsync();
        await Expect(ClockOf(phone, "PieOut-1")).ToBeVisibleAsync(new() { Timeout = Soon });
        await Expect(ClockOf(tablet, "PieOut-1")).ToBeVisibleAsync(new() { Timeout = Soon });
        await tablet.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Undo:" }).ClickAsync();
        await Expect(ClockOf(phone, "PieOut-1")).ToHaveCountAsync(0, new() { Timeout = Soon });
        await phone.Button("Done, it is in").ClickAsync();
        await Expect(ClockOf(tablet, "PieOut-1")).ToBeVisibleAsync(new() { Timeout = Soon });

        await Expect(ClockOf(phone, "PieOut-1")).ToBeVisibleAsync(new() { Timeout = Soon });

        // The connection is lost: the clocks go on, ring, and what was tapped elsewhere is there when it is back.
        await phone.GoOfflineAsync(true);
        time.MoveTo(steps["bake-1"].End + Duration.FromMinutes(1));
        await tablet.Page.ReloadAsync();
        await tablet.LiveAsync();
        await Expect(ClockOf(tablet, "PieOut-1")).ToHaveClassAsync(new System.Text.RegularExpressions.Regex("rung"), new() { Timeout = Soon });
        await tablet.PictureAsync("live-rings", Screen.Desk);
        await Expect(ClockOf(phone, "PieOut-1").Locator(".digits")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("[0-9]:[0-9]{2}"));
        await ClockOf(tablet, "PieOut-1").ClickAsync();
        await Expect(ClockOf(tablet, "PieOut-1")).ToHaveCountAsync(0, new() { Timeout = Soon });
        await phone.GoOfflineAsync(false);
        await Expect(ClockOf(phone, "PieOut-1")).ToHaveCountAsync(0, new() { Timeout = 60_000 });

        // A quarter of an hour late: the rest moves and says so on both.
        await phone.LiveAsync();
        await UnfoldAsync(phone, "I am late", phone.Button("15 min"));
        await phone.Button("15 min").ClickAsync();
        await Expect(tablet.Page.Locator("body")).ToContainTextAsync("later than planned", new() { Timeout = Soon });
        await Expect(phone.Page.Locator("body")).ToContainTextAsync("later than planned", new() { Timeout = Soon });

        // The power goes: app and clocks are back as they were.
        await UnfoldAsync(tablet, "A clock of your own", tablet.Field("What for"));
        await tablet.Field("What for").FillAsync("Peppers");
        await tablet.Field("Minutes, 1 to 600").FillAsync("30");
        await tablet.Button("Start it").ClickAsync();
        await tablet.SeesAsync("Peppers");
        await time.App.KillAsync();
        await time.App.RestartAsync(Cancellation);
        await phone.GoLiveAsync(night.Path + "/live");
        await phone.SeesAsync("Peppers");
        await phone.SeesAsync("later than planned");

        // Somebody comes unannounced: two taps, and the night goes on with the steps that are done.
        await phone.GoLiveAsync(night.Path + "/guests");
        await phone.PictureAsync("live-guests", Screen.Phone);
        await night.AnswerAsync("Tomek", ("presence", "Coming"));
        await phone.GoLiveAsync(night.Path + "/live");
        await Expect(phone.Page.Locator(".nextstep")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(phone.Page.Locator(".livesteps li.done").Filter(new() { HasText = "Take pie 1 out" })).ToHaveCountAsync(1, new() { Timeout = Soon });

        // Every pie is served.
        for (var pie = 1; pie <= plan.Split.Pies.Count; pie++)
        {
            await TapRowAsync(phone, $"Cut and serve pie {pie.ToString(CultureInfo.InvariantCulture)}");
        }

        await phone.PictureAsync("live-end", Screen.Phone);
        Assert.DoesNotContain(tablet.Faults, fault => !IsOfTheNetwork(fault));
        Assert.DoesNotContain(phone.Faults, fault => !IsOfTheNetwork(fault));
    }

    [Fact]
    public async Task When_a_helper_leaves_another_order_is_offered_taken_and_taken_back()
    {
        await using var time = await AppInTime.StartAsync(site, Cancellation);
        string[] names = ["Rui", "Eva", "Tomek", "Yara", "Ishaan", "Maren", "Ada", "Linus"];
        var night = await ANight.OpenAsync(time.App, time.Host, names);
        foreach (var name in names)
        {
            await night.AnswerAsync(name, ("presence", "Coming"));
        }

        await using var phone = await time.HostScreenAsync(Screen.Phone);
        await phone.GoLiveAsync($"/g/{time.Host.Group}/kitchen");
        await phone.Field("Hands: you and helpers").FillAsync("2");
        await phone.Field("Pies at a time").FillAsync("2");
        await phone.Button("Save the kitchen").ClickAsync();
        await phone.SeesAsync("The kitchen is saved");
        var plan = await time.Host.PlanAsync(night.Id, Cancellation);
        var steps = plan.Timeline.Steps.ToDictionary(step => step.Id);

        // Two pies are in, and one who was to top the next ones goes home.
        time.MoveTo(steps["top-2"].End);
        await phone.GoLiveAsync(night.Path + "/live");
        await Expect(phone.Page.Locator(".nextstep")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await TapRowAsync(phone, "Pie\u00a01: shape");
        await TapRowAsync(phone, "Pie\u00a02: shape");
        time.MoveTo(steps["serve-1"].End + Duration.FromMinutes(5));
        await phone.Button("A helper left").ClickAsync();
        await phone.SeesAsync("One pair of hands is reckoned with");

        var offer = phone.Page.Locator(".neworder");
        await Expect(offer).ToContainTextAsync("sooner", new() { Timeout = Soon });
        await phone.PictureAsync("live-new-order", Screen.Phone);
        await phone.Button("Go on like this").ClickAsync();
        await Expect(offer).ToHaveCountAsync(0, new() { Timeout = Soon });
        var undo = phone.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Undo: the new order" });
        await undo.ClickAsync();
        await Expect(offer).ToHaveCountAsync(1, new() { Timeout = Soon });
        await phone.Button("Keep the old order").ClickAsync();
        await Expect(offer).ToHaveCountAsync(0, new() { Timeout = Soon });
        Assert.Empty(phone.Faults);
    }

    /// <summary>What comes in above moves everything down: a tap that was meant for what was there is tried again, as people do.</summary>
    private static async Task UnfoldAsync(Screen screen, string summary, ILocator shows)
    {
        const int mostTaps = 5;
        for (var taps = 1; ; taps++)
        {
            await screen.Page.Locator(".liveactions summary", new() { HasText = summary }).ClickAsync();
            try
            {
                await Expect(shows).ToBeVisibleAsync(new() { Timeout = 3_000 });
                return;
            }
            catch (PlaywrightException) when (taps < mostTaps)
            {
                // Not there yet.
            }
        }
    }

    private static Instant TapAt(TimelineStep step) => step.Kind is StepKind.Temper or StepKind.Preheat ? step.Start : step.End;

    private static bool IsTapped(TimelineStep step) =>
        step.Kind is not (StepKind.Rack or StepKind.Soak or StepKind.BulkRest or StepKind.ColdFerment or StepKind.SecondRise or StepKind.PutAway or StepKind.Bake);

    private static bool IsOfTheNetwork(string fault) =>
        fault.Contains("ERR_", StringComparison.Ordinal) || fault.Contains("WebSocket", StringComparison.Ordinal) || fault.Contains("onnection", StringComparison.Ordinal)
        || fault.Contains("Failed to fetch", StringComparison.Ordinal);

    private static Microsoft.Playwright.ILocator ClockOf(Screen screen, string id) => screen.Page.Locator($"[data-clock={id}]");

    private static Microsoft.Playwright.ILocator RowOf(Screen screen, TimelineStep step) => Row(screen, Words(step));

    private static Microsoft.Playwright.ILocator Row(Screen screen, string words) => screen.Page.Locator(".livesteps li").Filter(new() { HasText = words });

    private static Task TapStepAsync(Screen screen, TimelineStep step) => TapRowAsync(screen, Words(step));

    private static async Task TapRowAsync(Screen screen, string words)
    {
        await screen.OpenEverythingAsync();
        await Row(screen, words).First.Locator("button").ClickAsync();
        await Expect(Row(screen, words).First.Locator("button")).ToBeDisabledAsync(new() { Timeout = Soon });
    }

    private static string Words(TimelineStep step) => step.Kind switch
    {
        StepKind.Sauce => "Make the sauce",
        StepKind.GrateCheese => "Grate the cheese",
        StepKind.PrepareToppings => "Prepare the toppings",
        StepKind.Temper when step.Number > 1 => $"Take out the balls of wave {step.Number.ToString(CultureInfo.InvariantCulture)}",
        StepKind.Temper => "Take the balls out of the fridge",
        StepKind.Preheat => "Oven on",
        _ => step.Kind.ToString(),
    };
}
