using Microsoft.Playwright;

namespace GameNight.Browser.Tests;

/// <summary>The installed Chromium, started by the first test that needs it. Tests are skipped where there is none.</summary>
public sealed class Chromium : IAsyncDisposable
{
    private const string HowToInstall = "Chromium is not installed: sudo apt-get install --no-install-recommends chromium";

    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>The installed program, or null.</summary>
    public static string? Program { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => Names.Select(name => Path.Combine(folder, name)))
        .FirstOrDefault(File.Exists);

    public async Task<IBrowser> BrowserAsync()
    {
        Assert.SkipWhen(Program is null, HowToInstall);
        _playwright ??= await Playwright.CreateAsync();
        return _browser ??= await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Program,
            Headless = true,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}
