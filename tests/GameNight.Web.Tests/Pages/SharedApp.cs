using GameNight.Nights.Records;
using GameNight.TestKit.Running;
using GameNight.Web.Tests.Pages;

[assembly: AssemblyFixture(typeof(SharedApp))]

namespace GameNight.Web.Tests.Pages;

/// <summary>One app for all tests of pages, started by the first of them, with an account and a group beside it.</summary>
public sealed class SharedApp : IAsyncDisposable
{
    public const string Email = "ines@example.org";
    public const string Password = "pizza on every thursday";

    private readonly Lazy<Task<(RunningApp App, HostAtWork Host)>> _started = new(StartAsync);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async Task<RunningApp> AppAsync() => (await _started.Value).App;

    public async Task<HostAtWork> HostAsync() => (await _started.Value).Host;

    /// <summary>Somebody new, at an address of their own.</summary>
    public async Task<HttpClient> ClientAsync() => RunningApp.ClientWithoutCookies((await AppAsync()).Address);

    /// <summary>Somebody invited to a night of their own.</summary>
    public async Task<Invited> InviteAsync(string name = "Rui", Func<NightFacts, NightFacts>? but = null)
    {
        var (app, host) = await _started.Value;
        var guest = await host.KnowAsync(name, Cancellation);
        var night = await host.OpenNightAsync([guest], Cancellation, but);
        return new Invited(app, host, night, guest, await host.LinkAsync(night, guest, Cancellation));
    }

    public async ValueTask DisposeAsync()
    {
        if (_started.IsValueCreated)
        {
            var (app, host) = await _started.Value;
            await host.DisposeAsync();
            await app.DisposeAsync();
        }
    }

    private static async Task<(RunningApp App, HostAtWork Host)> StartAsync()
    {
        // Not the token of the one test that happens to be first.
        var app = await RunningApp.StartAsync(CancellationToken.None, solverSlices: 0);
        using var visitor = new Visitor(app.Address);
        var founded = await visitor.FoundAsync(app.FirstAccountCode, Email, Password);
        return (app, await HostAtWork.EnterAsync(app, founded.GroupId(), CancellationToken.None));
    }
}
