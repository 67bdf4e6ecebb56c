using System.Diagnostics;
using System.Globalization;

namespace GameNight.TestKit.Running;

/// <summary>The private Postgres of a running app is killed, as by a power cut, and can be started again under the app.</summary>
public sealed class PostgresOutage
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan Poll = TimeSpan.FromMilliseconds(50);

    private readonly RunningApp _app;
    private readonly string[] _command;
    private readonly string? _user;

    private PostgresOutage(RunningApp app, string[] command, string? user)
    {
        _app = app;
        _command = command;
        _user = user;
    }

    public static async Task<PostgresOutage> BeginAsync(RunningApp app, CancellationToken cancellation)
    {
        var server = app.PostgresId;
        var command = (await File.ReadAllTextAsync($"/proc/{server}/cmdline", cancellation)).Split('\0', StringSplitOptions.RemoveEmptyEntries);
        var status = await File.ReadAllLinesAsync($"/proc/{server}/status", cancellation);
        var user = status.Single(line => line.StartsWith("Uid:", StringComparison.Ordinal)).Split('\t')[1];
        int[] all = [server, .. Children(server)];
        foreach (var process in all)
        {
            await AppProcess.SignalAsync("KILL", process);
        }

        await UntilAsync(() => all.All(HasEnded), cancellation);
        return new PostgresOutage(app, command, Environment.IsPrivilegedProcess && user != "0" ? user : null);
    }

    /// <summary>The same server on the same folder, as another start of it would be; stopped with the app's data folder.</summary>
    public async Task EndAsync(CancellationToken cancellation)
    {
        string[] asUser = _user is null ? [] : ["setpriv", "--reuid", _user, "--regid", _user, "--clear-groups"];
        string[] start = ["-c", "cd / && exec </dev/null >/dev/null 2>&1; exec setsid \"$@\"", "sh", .. asUser, .. _command];
        using var started = Process.Start("/bin/sh", start);
        await UntilAsync(
            () => File.Exists(Path.Combine(_app.DataFolder, "socket", ".s.PGSQL.5432")) && !started.HasExited, cancellation);
    }

    private static IEnumerable<int> Children(int parent) =>
        from folder in Directory.EnumerateDirectories("/proc")
        let isProcess = int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out _)
        where isProcess && ParentOf(folder) == parent
        select int.Parse(Path.GetFileName(folder), CultureInfo.InvariantCulture);

    private static int? ParentOf(string folder)
    {
        try
        {
            // After the name in brackets: state, parent.
            var stat = File.ReadAllText(Path.Combine(folder, "stat"));
            return int.Parse(stat[(stat.LastIndexOf(')') + 2)..].Split(' ')[1], CultureInfo.InvariantCulture);
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Gone, or dead and waiting for a parent that may never come to collect it.</summary>
    private static bool HasEnded(int process)
    {
        try
        {
            var stat = File.ReadAllText($"/proc/{process}/stat");
            return stat[stat.LastIndexOf(')') + 2] is 'Z' or 'X';
        }
        catch (IOException)
        {
            return true;
        }
    }

    private static async Task UntilAsync(Func<bool> isSo, CancellationToken cancellation)
    {
        for (var waited = Stopwatch.StartNew(); !isSo(); await Task.Delay(Poll, cancellation))
        {
            if (waited.Elapsed > Patience)
            {
                throw new TimeoutException("Postgres did not do as it was told.");
            }
        }
    }
}
