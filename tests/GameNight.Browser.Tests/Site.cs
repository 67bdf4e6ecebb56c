using GameNight.Browser.Tests;
using GameNight.TestKit.Running;

[assembly: AssemblyFixture(typeof(Site))]
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]

namespace GameNight.Browser.Tests;

/// <summary>One app for most tests, with a host who is signed in, started by the first test that needs it.</summary>
public sealed class Site : IAsyncDisposable
{
    private Task<Founded>? _founded;

    /// <summary>The browser, for tests that start an app of their own.</summary>
    public Chromium Chromium { get; } = new();

    public async Task<RunningApp> AppAsync() => (await FoundedAsync()).App;

    public async Task<HostAtWork> HostAsync() => (await FoundedAsync()).Host;

    public async Task<string> GroupPathAsync() => $"/g/{(await HostAsync()).Group}";

    /// <summary>A screen of the signed-in host; each is a browser of its own.</summary>
    public async Task<Screen> HostScreenAsync(int width = Screen.Desk)
    {
        var founded = await FoundedAsync();
        return await Screen.OpenAsync(Chromium, founded.App.Address, width, state: founded.SignedIn);
    }

    /// <summary>A screen of somebody who has no account.</summary>
    public async Task<Screen> GuestScreenAsync(bool withScript = true) =>
        await Screen.OpenAsync(Chromium, (await AppAsync()).Address, Screen.Phone, withScript);

    /// <summary>A night of its own, with guests under these names and nobody's answer.</summary>
    public async Task<ANight> NightAsync(params IReadOnlyList<string> names) =>
        await ANight.OpenAsync(await AppAsync(), await HostAsync(), names);

    public async ValueTask DisposeAsync()
    {
        if (_founded is not null)
        {
            var founded = await _founded;
            await founded.Host.DisposeAsync();
            await founded.App.DisposeAsync();
        }

        await Chromium.DisposeAsync();
    }

    private async Task<Founded> FoundedAsync()
    {
        // Skips before an app is started for nothing.
        await Chromium.BrowserAsync();
        return await (_founded ??= FoundAsync());
    }

    private async Task<Founded> FoundAsync()
    {
        var app = await RunningApp.StartAsync(CancellationToken.None);
        await using var screen = await Screen.OpenAsync(Chromium, app.Address, Screen.Desk);
        var group = await FirstAccount.MakeAsync(screen, app.FirstAccountCode);
        return new Founded(app, await HostAtWork.EnterAsync(app, group, CancellationToken.None), await screen.StateAsync());
    }

    private sealed record Founded(RunningApp App, HostAtWork Host, string SignedIn);
}
