using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using GameNight.LocalPostgres;
using GameNight.TestKit.Postgres;

namespace GameNight.TestKit.Running;

/// <summary>The real app on an address and a data folder of its own, both gone with it.</summary>
public sealed partial class RunningApp : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);
    private static readonly TimeSpan Poll = TimeSpan.FromMilliseconds(100);

    private readonly TemporaryDataRoot _root;
    private readonly Dictionary<string, string?> _environment;
    private AppProcess _app;
    private string _earlierLog = "";

    private RunningApp(TemporaryDataRoot root, Uri address, Dictionary<string, string?> environment)
    {
        _root = root;
        _environment = environment;
        Address = address;
        _app = AppProcess.Start(environment);
        Client = ClientWithoutCookies();
    }

    public Uri Address { get; }

    /// <summary>Keeps no cookies and follows no redirects: what a link previewer or a plain form post looks like.</summary>
    public HttpClient Client { get; }

    public string DataFolder => _root.Path;

    /// <summary>Everything the app wrote, restarts included.</summary>
    public string Log => _earlierLog + _app.Output + _app.Errors;

    /// <summary>The code for the first account, as printed at the last start; it may follow a moment after the app is ready.</summary>
    public string FirstAccountCode
    {
        get
        {
            string? code = null;
            return SpinWait.SpinUntil(() => (code = CodeIn(_app.Output)) is not null, Patience)
                ? code!
                : throw new InvalidOperationException($"No code was printed. The app wrote:\n{Log}");
        }
    }

    /// <summary>The superuser of the app's private database.</summary>
    public string AdminConnectionString => ConnectionString("postgres");

    /// <summary>The serving role of the app's private database.</summary>
    public string AppConnectionString => ConnectionString("gamenight_app");

    /// <summary>Process id of the app's private Postgres.</summary>
    public int PostgresId => int.Parse(
        File.ReadLines(Path.Combine(DataFolder, "postgres", "postmaster.pid")).First(), CultureInfo.InvariantCulture);

    /// <param name="solverSlices">Effort for each plan: the fewer, the sooner the improved plan stands.</param>
    /// <param name="settings">On top of those that every app under test gets.</param>
    public static async Task<RunningApp> StartAsync(
        CancellationToken cancellation, int solverSlices = 1, IReadOnlyDictionary<string, string?>? settings = null)
    {
        var root = await TemporaryDataRoot.MakeAsync(cancellation);
        try
        {
            var address = new Uri($"http://127.0.0.1:{FreePort()}");
            var app = new RunningApp(root, address, new Dictionary<string, string?>(settings ?? new Dictionary<string, string?>())
            {
                ["ASPNETCORE_URLS"] = address.ToString(),
                ["GAMENIGHT_DATA"] = root.Path,
                ["GAMENIGHT_SOLVER_SLICES"] = solverSlices.ToString(CultureInfo.InvariantCulture),
                [PrivatePostgresSettings.BinFolderVariable] = await SharedPrograms.FolderAsync(cancellation),
            });
            await app.WaitUntilReadyAsync(cancellation);
            return app;
        }
        catch
        {
            await root.DisposeAsync();
            throw;
        }
    }

    /// <summary>A client from an address of its own, or from the one given.</summary>
    public static HttpClient ClientWithoutCookies(Uri address, IPAddress? from = null)
    {
        var handler = OwnAddress.Handler(from);
        handler.UseCookies = false;
        return new HttpClient(handler) { BaseAddress = address };
    }

    /// <summary>A port that nobody listens on right now.</summary>
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>A mail server is set.</summary>
    public bool CarriesMail => _environment.ContainsKey("GAMENIGHT_SMTP_HOST");

    /// <summary>The app alone, by the name of a signal, without waiting for what it does about it.</summary>
    public Task SignalAsync(string signal) => _app.SignalAsync(signal);

    /// <summary>After a signal from which it dies.</summary>
    public Task WaitForDeathAsync(CancellationToken cancellation) => _app.WaitForEndAsync(cancellation);

    /// <summary>The end without notice: SIGKILL. The private Postgres outlives it.</summary>
    public async Task KillAsync()
    {
        await _app.SignalAsync("KILL");
        await _app.WaitForEndAsync(CancellationToken.None);
    }

    /// <summary>The orderly end: SIGTERM.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> StopAsync(CancellationToken cancellation)
    {
        await _app.SignalAsync("TERM");
        await _app.WaitForEndAsync(cancellation);
        return _app.ExitCode;
    }

    /// <summary>Starts it again on the same data folder and address, after a stop or a kill.</summary>
    public async Task RestartAsync(CancellationToken cancellation)
    {
        BeginAgain();
        await WaitUntilReadyAsync(cancellation);
    }

    /// <summary>The same without waiting until it is ready.</summary>
    public void BeginAgain()
    {
        _earlierLog = Log;
        _app.Dispose();
        _app = AppProcess.Start(_environment);
    }

    public async ValueTask DisposeAsync()
    {
        if (!_app.HasEnded)
        {
            await StopAsync(CancellationToken.None);
        }

        _app.Dispose();
        Client.Dispose();
        await _root.DisposeAsync();
    }

    private HttpClient ClientWithoutCookies()
    {
        var handler = OwnAddress.ManyAddresses();
        handler.UseCookies = false;
        return new HttpClient(handler) { BaseAddress = Address };
    }

    private string ConnectionString(string user) =>
        $"Host={Path.Combine(DataFolder, "socket")};Username={user};Database={PrivatePostgres.Database};SSL Mode=Disable;GSS Encryption Mode=Disable;Maximum Pool Size=8";

    private async Task WaitUntilReadyAsync(CancellationToken cancellation)
    {
        for (var waited = Stopwatch.StartNew(); waited.Elapsed < Patience && !_app.HasEnded;)
        {
            if (await IsReadyAsync(cancellation))
            {
                return;
            }

            await Task.Delay(Poll, cancellation);
        }

        var log = Log;
        _app.Dispose();
        throw new InvalidOperationException($"The app did not get ready. It wrote:\n{log}");
    }

    private async Task<bool> IsReadyAsync(CancellationToken cancellation)
    {
        try
        {
            using var answer = await Client.GetAsync("/health/ready", cancellation);
            return answer.IsSuccessStatusCode && _app.Output.Contains("GameNight is open", StringComparison.Ordinal);
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static string? CodeIn(string output) =>
        CodeLine().Match(output) is { Success: true } line ? line.Groups[1].Value : null;

    [GeneratedRegex("enter this code: ([A-Z0-9-]+)")]
    private static partial Regex CodeLine();
}
