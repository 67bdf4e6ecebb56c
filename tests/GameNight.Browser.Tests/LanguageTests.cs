using System.Text.RegularExpressions;
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
        var night = await AnsweredAsync();
        var past = await AnsweredAsync();
        await past.Host.PassAsync(past.Id, daysAgo: 1, Cancellation);
        var group = await site.GroupPathAsync();
        var language = PseudoLanguage.Culture.Name;
        var foreign = new List<string>();
        await using (var host = await site.HostScreenAsync(language: language))
        {
            foreach (var (name, path) in PageList.OfHosts(group, night.Path).Append(("looking-back", past.Path + "/back")))
            {
                await host.GoLiveAsync(path);
                await Expect(host.Page.Locator(".working:not(:empty)")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
                foreign.AddRange(await ForeignAsync(host, name));
            }

            foreach (var (name, path) in PageList.OfAccounts.Concat(PageList.OfOwners(group)))
            {
                await host.GoAsync(path);
                foreign.AddRange(await ForeignAsync(host, name));
            }
        }

        await using var guest = await site.GuestScreenAsync(language: language);
        foreach (var (name, path) in PageList.OfEverybody(
            await night.LinkAsync("Rui"), await night.LinkAsync("Eva"),
            await past.Host.LookBackLinkAsync(past.Id, past.Guests["Rui"], Cancellation)))
        {
            await guest.GoAsync(path);
            foreign.AddRange(await ForeignAsync(guest, name));
        }

        Assert.True(foreign.Count == 0, string.Join('\n', foreign.Distinct()));
    }

    private async Task<ANight> AnsweredAsync()
    {
        var night = await site.NightAsync("Rui", "Eva", "Maximiliane-Theodora Longname of the Hills");
        await night.AnswerAsync("Rui", ("presence", "Coming"), ("companion1", "Adult"), ("hunger", "More"));
        await night.AnswerAsync(
            "Eva", ("presence", "Coming"), ("consent", "on"), ("diet0-Vegetarian", "on"), ("must0-Nuts", "t"), ("note", "Bring my own cheese?"));
        return night;
    }

    /// <summary>What the page shows or reads out in another language, each with the name of the page.</summary>
    private async Task<IEnumerable<string>> ForeignAsync(Screen screen, string page)
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
        return Words().Matches(PseudoLanguage.Foreign(string.Join(" ", said), await GivenAsync())).Select(word => $"{page}: {word.Value}");
    }

    /// <summary>What the group itself named, and the letters that stand for its combinations.</summary>
    private async Task<IReadOnlyList<string>> GivenAsync()
    {
        var host = await site.HostAsync();
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
