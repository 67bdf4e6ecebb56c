using System.Globalization;
using GameNight.MovableClock;
using GameNight.TestKit.Running;
using NodaTime;

namespace GameNight.Browser.Tests;

/// <summary>An app of its own whose clock a test moves, with a group and a signed-in host.</summary>
public sealed class AppInTime : IAsyncDisposable
{
    private readonly string _clockFile;
    private readonly string _signedIn;
    private readonly Chromium _chromium;

    private AppInTime(Chromium chromium, string clockFile, RunningApp app, HostAtWork host, string signedIn)
    {
        (_chromium, _clockFile, App, Host, _signedIn) = (chromium, clockFile, app, host, signedIn);
    }

    public RunningApp App { get; }

    public HostAtWork Host { get; }

    public Instant Now => new FileClock(_clockFile).GetCurrentInstant();

    public static async Task<AppInTime> StartAsync(Site site, CancellationToken cancellation)
    {
        // Before an app is started for nothing: without Chromium the test is skipped.
        await site.Chromium.BrowserAsync();
        var clockFile = Path.GetTempFileName();
        var hook = typeof(FileClock).Assembly;
        var app = await RunningApp.StartAsync(cancellation, settings: new Dictionary<string, string?>
        {
            ["DOTNET_STARTUP_HOOKS"] = hook.Location,
            ["ASPNETCORE_HOSTINGSTARTUPASSEMBLIES"] = hook.GetName().Name,
            [FileClock.Variable] = clockFile,
        });
        await using var first = await Screen.OpenAsync(site.Chromium, app.Address, Screen.Desk);
        var group = await FirstAccount.MakeAsync(first, app.FirstAccountCode);
        return new AppInTime(
            site.Chromium, clockFile, app, await HostAtWork.EnterAsync(app, group, cancellation), await first.StateAsync());
    }

    public void MoveTo(Instant moment)
    {
        // In one step: the app reads the file whenever it asks for the time.
        var written = _clockFile + ".new";
        File.WriteAllText(
            written, (moment - SystemClock.Instance.GetCurrentInstant()).TotalSeconds.ToString("R", CultureInfo.InvariantCulture));
        File.Move(written, _clockFile, overwrite: true);
    }

    public Task<Screen> HostScreenAsync(int width = Screen.Desk) => Screen.OpenAsync(_chromium, App.Address, width, state: _signedIn);

    public async ValueTask DisposeAsync()
    {
        await Host.DisposeAsync();
        await App.DisposeAsync();
        File.Delete(_clockFile);
    }
}
