using System.Globalization;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;
using GameNight.TestKit.Running;
using Microsoft.Playwright;
using NodaTime;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests.Printing;

/// <summary>
/// Two nights to print, on an app of their own because their menu is: a usual one, and one with 60 guests whose names, like
/// those of the toppings and of the night, are as long as they may be. Started by the first test that needs it.
/// </summary>
public sealed class PrintedNights : IAsyncDisposable
{
    public const string HostName = "Ines";
    public const string FamilyName = "Lindenbergsdorf";
    public const string LongTitle = "The long table of everybody who ever came, with the cousins from across the sea";

    private const float Patience = 60_000;

    private static readonly Composition Pesto = new(
        [Allergen.Nuts, Allergen.Milk], [Allergen.Peanuts, Allergen.Sesame], [Allergen.Lupin], [Diet.Vegetarian, Diet.NoPork, Diet.NoAlcohol]);

    private Task<Nights>? _nights;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>What the browser's own PDF of these sheets is, on this paper.</summary>
    public async Task<byte[]> PdfAsync(Chromium chromium, bool isLong, string format, ColorScheme light, params IReadOnlyList<string> sheets)
    {
        await using var screen = await OpenAsync(chromium, isLong, sheets);
        await screen.Page.EmulateMediaAsync(new() { ColorScheme = light });
        var pdf = await screen.Page.PdfAsync(new PagePdfOptions { Format = format });
        Assert.Empty(screen.Faults);
        return pdf;
    }

    /// <summary>The page of these sheets, with the plan that is there to stay.</summary>
    public async Task<Screen> OpenAsync(Chromium chromium, bool isLong, params IReadOnlyList<string> sheets)
    {
        await chromium.BrowserAsync();
        var nights = await (_nights ??= MakeAsync(chromium));
        var screen = await Screen.OpenAsync(chromium, nights.App.Address, Screen.Desk, state: nights.SignedIn);
        await screen.GoLiveAsync($"{(isLong ? nights.Long : nights.Usual).Path}/print/sheets?{string.Join('&', sheets.Select(sheet => $"sheet={sheet}"))}");
        await Expect(screen.Page.Locator(".paper").First).ToBeVisibleAsync(new() { Timeout = Patience });
        await Expect(screen.Page.Locator(".working")).ToBeEmptyAsync(new() { Timeout = Patience });
        return screen;
    }

    public async ValueTask DisposeAsync()
    {
        if (_nights is not null)
        {
            var nights = await _nights;
            await nights.Host.DisposeAsync();
            await nights.App.DisposeAsync();
        }
    }

    private static async Task<Nights> MakeAsync(Chromium chromium)
    {
        var app = await RunningApp.StartAsync(CancellationToken.None, solverSlices: 0);
        await using var screen = await Screen.OpenAsync(chromium, app.Address, Screen.Desk);
        var host = await HostAtWork.EnterAsync(app, await FirstAccount.MakeAsync(screen, app.FirstAccountCode), CancellationToken.None);
        await host.OfferAsync("Pesto of the first basil, with cashews and aged hard cheese", Pesto, Cancellation);
        return new Nights(app, host, await UsualAsync(app, host), await LongAsync(app, host), await screen.StateAsync());
    }

    private static async Task<ANight> UsualAsync(RunningApp app, HostAtWork host)
    {
        var night = await ANight.OpenAsync(app, host, ["Rui " + FamilyName, "Eva", "Ana", "Luis"]);
        await night.AnswerAsync("Rui " + FamilyName, ("presence", "Coming"), ("consent", "on"), ("must0-Milk", "t"), ("must0-Nuts", "t"));
        await night.AnswerAsync("Eva", ("presence", "Coming"), ("consent", "on"), ("diet0-Vegetarian", "on"), ("companion1", "Adult"));
        await night.AnswerAsync("Ana", ("presence", "Coming"), ("companion1", "Adult"), ("companion2", "Teen"));
        await night.AnswerAsync("Luis", ("presence", "Coming"), ("hunger", "More"));
        return night;
    }

    private static async Task<ANight> LongAsync(RunningApp app, HostAtWork host)
    {
        var names = Enumerable.Range(1, 60)
            .Select(number => string.Create(CultureInfo.InvariantCulture, $"Person{number:00} Bartholomea-Maximiliane of {FamilyName}"))
            .ToList();
        var night = await ANight.OpenAsync(app, host, names, facts => facts with { Title = LongTitle, ServeAt = facts.ServeAt.Date.At(new LocalTime(11, 30)) });
        var toppings = (await host.MenuAsync(Cancellation)).Where(item => item.Role == MenuRole.Topping).ToList();
        foreach (var (index, name) in names.Index())
        {
            var favourite = $"like-{toppings[index % toppings.Count].Id}";
            await night.AnswerAsync(name, [("presence", "Coming"), ("hunger", "Less"), (favourite, "Favourite"), .. (index % 12) switch
            {
                0 => [("consent", "on"), ("must0-Fish", "t")],
                1 => [("consent", "on"), ("diet0-Vegetarian", "on")],
                2 => [("consent", "on"), ("must0-Mustard", "a")],
                _ => Array.Empty<(string, string)>(),
            }]);
        }

        return night;
    }

    private sealed record Nights(RunningApp App, HostAtWork Host, ANight Usual, ANight Long, string SignedIn);
}
