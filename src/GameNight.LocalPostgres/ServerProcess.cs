using System.Diagnostics;
using System.Globalization;
using Npgsql;

namespace GameNight.LocalPostgres;

/// <summary>The running <c>postgres</c> of one data folder, started here or found still alive.</summary>
internal sealed class ServerProcess
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan FastStop = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Poll = TimeSpan.FromMilliseconds(20);

    private readonly string _logFile;

    private ServerProcess(int id, string socketFolder, string logFile)
    {
        Id = id;
        SocketFolder = socketFolder;
        _logFile = logFile;
    }

    public int Id { get; }

    public string SocketFolder { get; }

    public string AdminConnectionString => ConnectionString("postgres", "postgres", 4);

    /// <summary>The server of this folder that outlived its app, or null. It may still be starting, or on its way out.</summary>
    public static ServerProcess? FindLeftOver(DataFolder data)
    {
        var record = Path.Combine(data.Cluster, "postmaster.pid");
        if (!File.Exists(record))
        {
            return null;
        }

        // Lines of the file, fixed by Postgres: process, data folder, start time, port, socket folder. The later ones
        // are still missing in the first moments of a start.
        var lines = File.ReadAllLines(record);
        if (lines.Length == 0 || !int.TryParse(lines[0], CultureInfo.InvariantCulture, out var id))
        {
            return null;
        }

        // After a restart of the machine the number may be another program's; a server works in its own data folder.
        var isOurs = ProcessSignals.IsAlive(id)
            && (ProcessSignals.WorkingFolder(id) is not { } folder || folder == data.Cluster);
        var socketFolder = lines.Length > 4 ? lines[4] : LocalPostgres.SocketFolder.For(data.Root);
        return isOurs ? new ServerProcess(id, socketFolder, data.LogFile) : null;
    }

    public static ServerProcess Start(
        DataFolder data, ServerPrograms programs, ServerAccount account, string socketFolder, int maxConnections)
    {
        // The session of its own keeps Ctrl-C at the terminal from stopping the server before the app is done with it.
        // Every step is an exec, so the process started here is the server; its log outlives the app, as a pipe would not.
        const string script = """
            log=$1; shift
            exec </dev/null >>"$log" 2>&1
            command -v setsid >/dev/null && exec setsid "$@"
            exec "$@"
            """;
        string[] server =
        [
            programs.Postgres, "-D", data.Cluster, "-k", socketFolder, "-p", $"{LocalPostgres.SocketFolder.Port}",
            "-c", "listen_addresses=", "-c", "unix_socket_permissions=0700", "-c", "shared_buffers=64MB",
            "-c", FormattableString.Invariant($"max_connections={maxConnections}"),
        ];
        var start = account.StartInfo("/bin/sh", ["-c", script, "sh", data.LogFile, .. server], "/");
        using var started = Process.Start(start)!;
        return new ServerProcess(started.Id, socketFolder, data.LogFile);
    }

    public string ConnectionString(string user, string database, int poolSize)
    {
        return new NpgsqlConnectionStringBuilder
        {
            Host = SocketFolder,
            Port = LocalPostgres.SocketFolder.Port,
            Username = user,
            Database = database,
            MaxPoolSize = poolSize,
            SslMode = SslMode.Disable,
            GssEncryptionMode = GssEncryptionMode.Disable,
        }.ConnectionString;
    }

    /// <summary>Major version of the server once it answers; null when it has ended instead.</summary>
    /// <exception cref="PostgresFailedException">It neither answered nor ended in a minute.</exception>
    public async Task<int?> WaitUntilReadyAsync(CancellationToken cancellation)
    {
        var waited = Stopwatch.StartNew();
        while (ProcessSignals.IsAlive(Id))
        {
            if (await AskVersionAsync(cancellation) is { } major)
            {
                return major;
            }

            if (waited.Elapsed > Patience)
            {
                throw new PostgresFailedException(
                    $"Postgres is alive but has not answered for {Patience.TotalSeconds:0} seconds. It goes on, in case "
                    + $"it is recovering from a crash; starting again takes it over. Its last words:\n{LastWords()}");
            }

            await Task.Delay(Poll, cancellation);
        }

        return null;
    }

    /// <summary>Stops without losing anything: fast at first, then at once, which costs a recovery at the next start.</summary>
    public async Task StopAsync()
    {
        ProcessSignals.Send(Id, ProcessSignals.Interrupt);
        if (!await EndsWithinAsync(FastStop))
        {
            ProcessSignals.Send(Id, ProcessSignals.Quit);
            await EndsWithinAsync(Patience);
        }

        LocalPostgres.SocketFolder.RemoveIfEmpty(SocketFolder);
    }

    public string LastWords()
    {
        return File.Exists(_logFile)
            ? string.Join('\n', File.ReadLines(_logFile).TakeLast(12))
            : "(it wrote nothing)";
    }

    private async Task<bool> EndsWithinAsync(TimeSpan time)
    {
        var waited = Stopwatch.StartNew();
        while (ProcessSignals.IsAlive(Id))
        {
            if (waited.Elapsed > time)
            {
                return false;
            }

            await Task.Delay(Poll);
        }

        return true;
    }

    private async Task<int?> AskVersionAsync(CancellationToken cancellation)
    {
        if (!File.Exists(LocalPostgres.SocketFolder.SocketIn(SocketFolder)))
        {
            return null;
        }

        try
        {
            var once = new NpgsqlConnectionStringBuilder(AdminConnectionString) { Pooling = false, Timeout = 5 };
            await using var connection = new NpgsqlConnection(once.ConnectionString);
            await connection.OpenAsync(cancellation);
            await using var question = new NpgsqlCommand("select 1", connection);
            await question.ExecuteScalarAsync(cancellation);
            return connection.PostgreSqlVersion.Major;
        }
        catch (NpgsqlException)
        {
            return null;
        }
    }
}
