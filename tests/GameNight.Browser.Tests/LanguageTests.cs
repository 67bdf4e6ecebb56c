using System.Text.RegularExpressions;
using GameNight.Nights.Records;
using GameNight.TestKit.Running;
using GameNight.WideLetters;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>A browser that prefers another language reads it on every page, and nothing else.</summary>
public partial class LanguageTests(Site site)
{
    private static readonly string[] Given =
    [
        "GameNight", "Rui", "Eva", "Ines", "Thursday table", "Board games", "Europe/Lisbon", "Rua das Flores 7", "Dice",
        "Maximiliane-Theodora Longname of the Hills", "Bring my own cheese?", FirstAccount.Email, "Good crust",
    ];

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_page_says_all_in_the_language_that_the_browser_prefers()
    {
        // Before an app is started for nothing: without Chromium the test is skipped.
        await site.Chromium.BrowserAsync();

        // A group of its own, whose every name is known.
        await using var app = await RunningApp.StartAsync(Cancellation, settings: new Dictionary<string, string?>
        {
            ["DOTNET_STARTUP_HOOKS"] = typeof(PseudoLanguage).Assembly.Location,
        });
        await using var first = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Desk);
        var group = await FirstAccount.MakeAsync(first, app.FirstAccountCode);
        await using var work = await HostAtWork.EnterAsync(app, group, Cancellation);
        var night = await AnsweredAsync(app, work);
        var past = await AnsweredAsync(app, work);
        await work.PassAsync(past.Id, daysAgo: 1, Cancellation);
        var question = await work.AskForDateAsync([.. night.Guests.Values], Cancellation);
        await work.MeetAsync(new Rhythm(NodaTime.IsoDayOfWeek.Friday, 1170, 2, null, new NodaTime.LocalDate(2026, 1, 1), [], []), Cancellation);
        var given = await GivenAsync(work);
        var foreign = new List<string>();
        await using (var host = await Screen.OpenAsync(
            site.Chromium, app.Address, Screen.Desk, state: await first.StateAsync(), language: PseudoLanguage.Culture.Name))
        {
            foreach (var (name, path) in PageList.OfHosts($"/g/{group}", night.Path).Concat(PageList.OfQuestions($"/g/{group}", question.ToString())).Append(("looking-back", past.Path + "/back")))
            {
                await host.GoLiveAsync(path);
                await Expect(host.Page.Locator(".working:not(:empty)")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
                foreign.AddRange(await ForeignAsync(host, name, given));
            }

            foreach (var (name, path) in PageList.OfAccounts.Concat(PageList.OfOwners($"/g/{group}")))
            {
                await host.GoAsync(path);
                foreign.AddRange(await ForeignAsync(host, name, given));
            }
        }

        await using var guest = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Phone, language: PseudoLanguage.Culture.Name);
        foreach (var (name, path) in PageList.OfEverybody(
            await night.LinkAsync("Rui"), await night.LinkAsync("Eva"), await work.LookBackLinkAsync(past.Id, past.Guests["Rui"], Cancellation)))
        {
            await guest.GoAsync(path);
            foreign.AddRange(await ForeignAsync(guest, name, given));
        }

        await guest.GoAsync($"{await work.DateLinkAsync(question, night.Guests["Rui"], Cancellation)}?zone=Asia/Tokyo");
        foreign.AddRange(await ForeignAsync(guest, "dates", [.. given, "Asia/Tokyo"]));
        Assert.True(foreign.Count == 0, string.Join('\n', foreign.Distinct()));
    }

    private static async Task<ANight> AnsweredAsync(RunningApp app, HostAtWork work)
    {
        var night = await ANight.OpenAsync(app, work, ["Rui", "Eva", "Maximiliane-Theodora Longname of the Hills"]);
        await night.AnswerAsync("Rui", ("presence", "Coming"), ("companion1", "Adult"), ("hunger", "More"));
        await night.AnswerAsync(
            "Eva", ("presence", "Coming"), ("consent", "on"), ("diet0-Vegetarian", "on"), ("must0-Nuts", "t"), ("note", "Bring my own cheese?"));
        return night;
    }

    /// <summary>What the page shows or reads out in another language, each with the name of the page.</summary>
    private static async Task<IEnumerable<string>> ForeignAsync(Screen screen, string page, IReadOnlyList<string> given)
    {
        await screen.AssertWholeAsync();
        var said = await screen.Page.EvaluateAsync<string[]>(
            """
            () => {
                const seen = [document.title];
                const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT,
                    node => ["SCRIPT", "STYLE", "TEMPLATE"].includes(node.nodeName) ? NodeFilter.FILTER_REJECT : NodeFilter.FILTER_ACCEPT);
                for (let node = walk.nextNode(); node; node = walk.nextNode()) {
                    if (node.nodeType === Node.TEXT_NODE) {
                        seen.push(node.data);
                    } else {
                        seen.push(...["aria-label", "title", "alt", "placeholder", "data-text"].map(name => node.getAttribute(name)).filter(Boolean));
                    }
                }

                return seen;
            }
            """);
        return Words().Matches(PseudoLanguage.Foreign(string.Join(" ", said), given)).Select(word => $"{page}: {word.Value}");
    }

    /// <summary>What the group itself named, and the letters that stand for its combinations.</summary>
    private static async Task<IReadOnlyList<string>> GivenAsync(HostAtWork host)
    {
        var menu = (await host.MenuAsync(Cancellation)).Select(item => item.Name).ToList();
        return
        [
            .. Given, .. menu, .. menu.Select(name => name.ToLowerInvariant()), .. await host.DoughsAsync(Cancellation),
            .. Enumerable.Range('A', 26).Select(letter => ((char)letter).ToString()),
        ];
    }

    /// <summary>Plain words, or wide ones that stand outside of every bracket where no plain one is left.</summary>
    [GeneratedRegex(@"[A-Za-z][A-Za-z ]*|(?<!⟦[^⟧]*)\p{L}+")]
    private static partial Regex Words();
}
