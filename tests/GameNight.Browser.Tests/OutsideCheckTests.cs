using System.Text.Json;
using GameNight.TestKit.Running;

namespace GameNight.Browser.Tests;

/// <summary>
/// Pages before checkers from outside: two accessibility engines (axe and HTML_CodeSniffer, run by pa11y) and valid HTML
/// (html-validate). They are fetched once with npm, pinned by the lock file; without npm the test is skipped.
/// </summary>
public class OutsideCheckTests(Site site)
{
    private static readonly string Pins = Path.Combine(AppContext.BaseDirectory, "outside");

    /// <summary>
    /// What is not a fault of ours. The framework writes the theme's style elements into the body. HTML allows "username" on e-mail
    /// fields (a control group of its own, which the checker does not know yet), and that is what password programs look for. Words in
    /// drawings stand on shapes whose colour the checker cannot see and asks a person to review: letters on pies have a contrast of
    /// 14.9 to 1, in charts ink on the shaded times 8.5 and soft words on paper 5.9. Sheets to print stand in a table that repeats
    /// their head on every page; it is layout, and says so.
    /// </summary>
    private static readonly (string Code, string In)[] Noise =
    [
        ("element-permitted-content", "<style"),
        ("color-contrast", "<text "),
        ("WCAG2AA.Principle1.Guideline1_3.1_3_5.H98", "username"),
        ("WCAG2AA.Principle1.Guideline1_3.1_3_1.F92,ARIA4", "<table class=\"paper\" role=\"presentation\""),
    ];

    [Fact]
    public async Task Nothing_is_found_on_any_page()
    {
        var tools = NodePrograms.Pinned(Pins, "outside-checkers");
        Assert.SkipWhen(tools is null, "npm is not installed: checkers from outside cannot be fetched.");
        var (pages, cookies) = await PagesAsync();

        var findings = await CheckAsync(tools, pages, cookies);

        Assert.True(findings.Count == 0, string.Join('\n', findings.Select(
            finding => $"{finding.Name}: {finding.Code} ({finding.Checker}): {finding.Message} at {finding.Where}").Distinct()));
    }

    private async Task<(IReadOnlyList<CheckedPage> Pages, IReadOnlyList<object> Cookies)> PagesAsync()
    {
        var night = await site.NightAsync("Rui", "Eva", "Maximiliane-Theodora Longname of the Hills");
        await night.AnswerAsync("Rui", ("presence", "Coming"), ("companion1", "Adult"), ("hunger", "More"));
        await night.AnswerAsync(
            "Eva", ("presence", "Coming"), ("consent", "on"), ("diet0-Vegetarian", "on"), ("must0-Nuts", "t"), ("note", "Bring my own cheese?"));
        var pages = new List<CheckedPage>();
        IReadOnlyList<object> cookies;
        await using (var host = await site.HostScreenAsync())
        {
            foreach (var (name, path) in PageList.OfHosts(await site.GroupPathAsync(), night.Path))
            {
                await host.GoLiveAsync(path);
                pages.Add(await PageAsync(host, name, isSignedIn: true, Screen.Desk, isLive: true));
            }

            foreach (var (name, path) in PageList.OfAccounts.Concat(PageList.OfOwners(await site.GroupPathAsync())))
            {
                await host.GoProvenAsync(path);
                pages.Add(await PageAsync(host, name, isSignedIn: true, Screen.Phone, isLive: false));
            }

            cookies = await host.CookiesAsync();
        }

        await using var guest = await site.GuestScreenAsync();
        foreach (var (name, path) in PageList.OfEverybody(await night.LinkAsync("Rui"), await night.LinkAsync("Eva")))
        {
            await guest.GoAsync(path);
            pages.Add(await PageAsync(guest, name, isSignedIn: false, Screen.Phone, isLive: false));
        }

        return (pages, cookies);
    }

    private static async Task<CheckedPage> PageAsync(Screen screen, string name, bool isSignedIn, int width, bool isLive) =>
        new(name, screen.Page.Url, isSignedIn, await screen.Page.ContentAsync(), width, isLive);

    private static async Task<IReadOnlyList<Finding>> CheckAsync(
        NodePrograms tools, IReadOnlyList<CheckedPage> pages, IReadOnlyList<object> cookies)
    {
        var asked = JsonSerializer.Serialize(new { chromium = Chromium.Program, cookies, pages }, JsonSerializerOptions.Web);
        var said = await tools.RunAsync("check.mjs", asked, TestContext.Current.CancellationToken);
        var findings = JsonSerializer.Deserialize<List<Finding>>(said, JsonSerializerOptions.Web)!;
        return [.. findings.Where(finding => !Noise.Any(noise => noise.Code == finding.Code
            && (finding.Message.Contains(noise.In, StringComparison.Ordinal) || finding.Where.Contains(noise.In, StringComparison.Ordinal))))];
    }

    private sealed record CheckedPage(string Name, string Url, bool IsSignedIn, string Html, int Width, bool IsLive);

    private sealed record Finding(string Name, string Checker, string Code, string Message, string Where);
}
