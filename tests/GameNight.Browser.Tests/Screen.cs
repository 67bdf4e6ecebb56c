using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace GameNight.Browser.Tests;

/// <summary>One browser page in a context of its own, which notes every fault that the page reports.</summary>
public sealed class Screen : IAsyncDisposable
{
    public const int Desk = 1280;
    public const int Phone = 390;
    public const string English = "en-GB";

    /// <summary>The narrowest phones, and a desk screen magnified four times.</summary>
    public const int Narrowest = 320;

    private const int Height = 844;

    /// <summary>For a busy machine: several apps, databases and browsers share two cores while tests run.</summary>
    private const float Patience = 60_000;

    private readonly IBrowserContext _context;
    private readonly List<string> _faults = [];
    private readonly List<string> _webSockets = [];
    private readonly List<string> _polls = [];

    private Screen(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
        page.Console += (_, message) => Note(message.Type == "error" ? message.Text : null);
        page.PageError += (_, fault) => Note(fault);
        page.Dialog += (_, dialog) => Note($"a dialog opened: {dialog.Message}");
        page.WebSocket += (_, socket) => _webSockets.Add(socket.Url);
        page.Request += (_, request) =>
        {
            if (request.Url.Contains("/_blazor?id=", StringComparison.Ordinal))
            {
                _polls.Add(request.Url);
            }
        };
    }

    public IPage Page { get; }

    /// <summary>What the console, a script or a dialog reported.</summary>
    public IReadOnlyList<string> Faults => _faults;

    public IReadOnlyList<string> WebSockets => _webSockets;

    /// <summary>Requests of a circuit that has fallen back from the WebSocket.</summary>
    public IReadOnlyList<string> Polls => _polls;

    public static async Task<Screen> OpenAsync(
        Chromium chromium, Uri address, int width, bool withScript = true, string? state = null, string language = English)
    {
        var browser = await chromium.BrowserAsync();
        var context = await browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = address.ToString(),
            ViewportSize = new ViewportSize { Width = width, Height = Height },
            JavaScriptEnabled = withScript,
            StorageState = state,
            Locale = language,
            ReducedMotion = ReducedMotion.Reduce,
        });
        context.SetDefaultTimeout(Patience);
        return new Screen(context, await context.NewPageAsync());
    }

    public Task<string> StateAsync() => _context.StorageStateAsync();

    /// <summary>The cookies, for another browser.</summary>
    public async Task<IReadOnlyList<object>> CookiesAsync() =>
        [.. (await _context.CookiesAsync()).Select(cookie => new { cookie.Name, cookie.Value, cookie.Domain, cookie.Path })];

    public Task GoAsync(string path) => Page.GotoAsync(path);

    /// <summary>Goes to a page of the account, confirming first who it is when that was too long ago.</summary>
    public async Task GoProvenAsync(string path)
    {
        await GoAsync(path);
        if (path != PageList.Confirm && new Uri(Page.Url).AbsolutePath == PageList.Confirm)
        {
            await Field("Password").FillAsync(FirstAccount.Password);
            await Button("Confirm").ClickAsync();
            await Page.WaitForURLAsync("**" + path);
        }
    }

    /// <summary>Goes to a host page and waits until clicks count.</summary>
    public async Task GoLiveAsync(string path)
    {
        await GoAsync(path);
        await LiveAsync();
    }

    public async Task LiveAsync()
    {
        try
        {
            await Page.WaitForSelectorAsync("main[data-circuit=up]");
            await Page.WaitForSelectorAsync("main h1");
        }
        catch (TimeoutException late)
        {
            throw new TimeoutException($"{Page.Url} did not come to life. It reported: {string.Join("; ", _faults)}; it shows: {await Page.InnerTextAsync("body")}", late);
        }
    }

    /// <summary>No part of the page broke while it was drawn: what then stands there is a page as well, and would pass for one.</summary>
    public async Task AssertWholeAsync() => Assert.Equal(0, await Page.Locator("[data-page-broke], #blazor-error-ui:visible").CountAsync());

    public ILocator Button(string name) => Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    public ILocator Field(string label) => Page.GetByLabel(label, new PageGetByLabelOptions { Exact = true });

    public Task SeesAsync(string text) => Expect(Page.Locator("body")).ToContainTextAsync(text, new() { Timeout = Patience });

    /// <summary>Presses Tab until the element has the focus: what cannot be reached so is not there for a keyboard.</summary>
    public async Task TabToAsync(string selector)
    {
        const int mostStops = 200;
        for (var stops = 0; stops < mostStops; stops++)
        {
            if (await Page.EvaluateAsync<bool>("selector => !!document.activeElement?.matches(selector)", selector))
            {
                return;
            }

            await Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"{selector} cannot be reached with Tab.");
    }

    /// <summary>Looks at the page in every width and light, keeps pictures, and finds nothing wrong.</summary>
    public async Task CheckLooksAsync(string name)
    {
        await AssertWholeAsync();
        foreach (var (scheme, width) in new[] { (ColorScheme.Light, Desk), (ColorScheme.Dark, Phone) })
        {
            await Page.EmulateMediaAsync(new() { ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
            await Page.SetViewportSizeAsync(width, Height);
            await PictureAsync($"{name}-{width}-{scheme}");
            AssertNoViolations(name, await Page.RunAxe());
        }

        await Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light, ReducedMotion = ReducedMotion.Reduce });
        await PictureAsync($"{name}-{Phone}-{ColorScheme.Light}");
        foreach (var width in new[] { Phone, Narrowest })
        {
            await Page.SetViewportSizeAsync(width, Height);
            Assert.True(
                await Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= window.innerWidth"),
                $"{name} is wider than a screen of {width} px.");
        }

        await Page.SetViewportSizeAsync(Desk, Height);
    }

    /// <summary>As somebody sees it now, kept under the name.</summary>
    public Task PictureAsync(string name, int width) => PictureAsync($"{name}-{width}");

    /// <summary>The network goes away, or comes back.</summary>
    public Task GoOfflineAsync(bool isOffline) => _context.SetOfflineAsync(isOffline);

    /// <summary>Unfolds all that is folded away, so that it is looked at too.</summary>
    public Task OpenEverythingAsync() =>
        Page.EvaluateAsync("() => document.querySelectorAll('details').forEach(one => one.open = true)");

    public ValueTask DisposeAsync() => _context.DisposeAsync();

    private static void AssertNoViolations(string name, AxeResult result) => Assert.True(
        result.Violations.Length == 0,
        $"{name}: " + string.Join("; ", result.Violations.Select(violation =>
            $"{violation.Id} ({violation.Help}): {string.Join(", ", violation.Nodes.Select(node => $"{node.Target} {node.Any.FirstOrDefault()?.Message}"))}")));

    private void Note(string? fault)
    {
        if (fault is not null)
        {
            _faults.Add(fault);
        }
    }

    /// <summary>Pictures are for people; where only a verdict is wanted nobody looks at them, and taking them takes time.</summary>
    private static readonly bool IsLookedAt = Environment.GetEnvironmentVariable("CI") != "true";

    private async Task PictureAsync(string name)
    {
        if (!IsLookedAt)
        {
            return;
        }

        var folder = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../../screens"));
        await Page.ScreenshotAsync(new() { Path = Path.Combine(folder, name.ToLowerInvariant() + ".png"), FullPage = true });
    }
}
