using System.Net;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.TestKit.Running;
using Microsoft.Playwright;

/// <summary>From a guest's answer to the redrawn numbers of a host's open page, in a browser, on the running app.</summary>
internal static class AnswerBench
{
    private const int Guests = 40;

    private const int Warm = 3;

    private const int Runs = 21;

    /// <summary>Keeps when the headcount, dough, sauce or pie count first differed from what was there before.</summary>
    private const string Watch =
        """
        () => {
          const read = () => document.querySelector('.figures').innerText;
          const before = read();
          window.redrawnAt = 0;
          const watcher = new MutationObserver(() => {
            if (read() !== before) { window.redrawnAt = Date.now(); watcher.disconnect(); }
          });
          watcher.observe(document.querySelector('main'), { subtree: true, childList: true, characterData: true });
        }
        """;

    public static async Task<int> RunAsync()
    {
        await using var app = await RunningApp.StartAsync(CancellationToken.None);
        var founded = await FirstGroup.FoundAsync(app);
        await using var host = await HostAtWork.EnterAsync(app, founded.Group, CancellationToken.None);
        var guests = new List<GuestId>();
        for (var index = 0; index < Guests; index++)
        {
            guests.Add(await host.KnowAsync($"Guest {index + 1}", CancellationToken.None));
        }

        var night = await host.OpenNightAsync(guests, CancellationToken.None);
        foreach (var guest in guests)
        {
            await AnswerAsync(app, await host.LinkAsync(night, guest, CancellationToken.None), companions: 0);
        }

        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Browser(), Args = ["--no-sandbox"] });
        await using var context = await browser.NewContextAsync(new() { BaseURL = app.Address.ToString() });
        await context.AddCookiesAsync(founded.Cookies.Select(cookie => new Microsoft.Playwright.Cookie
        {
            Name = cookie.Name,
            Value = cookie.Value,
            Url = app.Address.ToString(),
        }));
        var page = await context.NewPageAsync();
        await page.GotoAsync($"/g/{host.Group}/n/{night}");
        await page.WaitForSelectorAsync("main[data-circuit=up] .figures", new() { Timeout = 120_000 });

        var (settled, busy) = (new List<double>(), new List<double>());
        for (var run = -Warm; run < Runs; run++)
        {
            // Every second answer comes while the last one's split and timeline are still being sought.
            var whileSolving = run % 2 != 0;
            if (!whileSolving)
            {
                await host.PlanAsync(night, CancellationToken.None);
                await page.WaitForFunctionAsync("() => document.querySelector('p.working')?.innerText === ''");
            }

            await page.EvaluateAsync(Watch);

            // Each time another guest, who brings somebody: one link may not answer so often.
            var link = await host.LinkAsync(night, guests[run + Warm], CancellationToken.None);
            var sent = await AnswerAsync(app, link, companions: 1);
            var redrawn = await (await page.WaitForFunctionAsync("() => window.redrawnAt")).JsonValueAsync<double>();
            if (run >= 0)
            {
                (whileSolving ? busy : settled).Add(redrawn - sent);
            }
        }

        Say("nothing else being planned", settled);
        Say("while the plan before is still being bettered", busy);
        return 0;
    }

    private static string Browser() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, "chromium"))
        .FirstOrDefault(File.Exists) ?? throw new InvalidOperationException("This measure needs the program chromium.");

    private static void Say(string when, List<double> milliseconds)
    {
        milliseconds.Sort();
        Console.WriteLine(FormattableString.Invariant(
            $"{Guests} guests, answer sent to numbers redrawn, {when}: median {milliseconds[milliseconds.Count / 2]:0} ms ({milliseconds[0]:0} to {milliseconds[^1]:0})"));
    }

    /// <returns>When it was sent, in milliseconds of Unix time.</returns>
    private static async Task<double> AnswerAsync(RunningApp app, string link, int companions)
    {
        var page = await AnswerPage.OpenAsync(app.Client, link, CancellationToken.None);
        var sent = DateTimeOffset.UtcNow.ToUnixTimeMilliseconds();
        var answer = await page.SendAsync(CancellationToken.None, [
            ("presence", nameof(Presence.Coming)),
            .. Enumerable.Range(1, companions).Select(companion => ($"companion{companion}", nameof(PortionClass.Adult)))]);
        return answer.StatusCode == HttpStatusCode.SeeOther ? sent : throw new InvalidOperationException($"Refused: {answer.StatusCode}");
    }
}
