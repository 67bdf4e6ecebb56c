namespace GameNight.LocalPostgres;

/// <summary>The steps from a locked data folder to a server on which both roles can connect.</summary>
internal sealed class ServerStart(
    PrivatePostgresSettings settings,
    ServerAccount account,
    DataFolder data,
    Action<string> say)
{
    private const long LogBytesBeforeTurning = 1_000_000;

    public async Task<StartOutcome> RunAsync(CancellationToken cancellation)
    {
        if (ServerProcess.FindLeftOver(data) is { } leftOver)
        {
            say("Postgres is still running from last time; taking it over.");
            if (await leftOver.WaitUntilReadyAsync(cancellation) is { } major)
            {
                return await PrepareAsync(leftOver, major, cancellation);
            }
        }

        var search = await new ServerProgramSearch(settings, account, data, say).FindAsync(cancellation);
        if (search is not ServerProgramsFound { Programs: var programs })
        {
            return new Refused(((ServerProgramsMissing)search).Sentence);
        }

        var socketFolder = SocketFolder.For(data.Root);
        if (!SocketFolder.IsFreeOrOurs(socketFolder))
        {
            return new Refused($"Somebody else uses {socketFolder}, which Postgres needs: give the data folder a shorter path.");
        }

        await MakeFoldersAsync(programs, socketFolder, cancellation);
        say($"Starting Postgres {programs.MajorVersion}.");
        var server = ServerProcess.Start(data, programs, account, socketFolder, settings.MaxConnections);
        return await ReadyAsync(server, cancellation) is { } version
            ? await PrepareAsync(server, version, cancellation)
            : throw new PostgresFailedException($"Postgres did not start. Its last words:\n{server.LastWords()}");
    }

    private static async Task<int?> ReadyAsync(ServerProcess server, CancellationToken cancellation)
    {
        try
        {
            return await server.WaitUntilReadyAsync(cancellation);
        }
        catch (OperationCanceledException)
        {
            await server.StopAsync();
            throw;
        }
    }

    private async Task<StartOutcome> PrepareAsync(ServerProcess server, int majorVersion, CancellationToken cancellation)
    {
        try
        {
            await RolesAndDatabase.EnsureAsync(
                server.AdminConnectionString, PrivatePostgres.Database, RolePasswords.None, cancellation);
            return new Started(PrivatePostgres.Of(data, server, majorVersion));
        }
        catch
        {
            await server.StopAsync();
            throw;
        }
    }

    private async Task MakeFoldersAsync(ServerPrograms programs, string socketFolder, CancellationToken cancellation)
    {
        List<string> folders = [data.LogFolder, socketFolder];
        if (Directory.Exists(data.Cluster))
        {
            folders.Add(data.Cluster);
        }

        await account.TakeOverAsync(folders, cancellation);
        TurnLog();
        if (!Directory.Exists(data.Cluster))
        {
            await MakeClusterAsync(programs, cancellation);
        }
    }

    private async Task MakeClusterAsync(ServerPrograms programs, CancellationToken cancellation)
    {
        say("Making the database.");
        var unfinished = data.Cluster + ".new";
        if (Directory.Exists(unfinished))
        {
            Directory.Delete(unfinished, recursive: true);
        }

        await account.TakeOverAsync([unfinished], cancellation);
        var run = await Command.RunAsync(
            programs.Initdb,
            ["-D", unfinished, "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C"],
            account,
            "/",
            cancellation);
        if (!run.Succeeded)
        {
            throw new PostgresFailedException($"The database could not be made. The last words of initdb:\n{run.LastLines}");
        }

        // A kill before this line leaves only the folder under the other name.
        Directory.Move(unfinished, data.Cluster);
    }

    private void TurnLog()
    {
        var log = new FileInfo(data.LogFile);
        if (log.Exists && log.Length > LogBytesBeforeTurning)
        {
            log.MoveTo(data.LogFile + ".1", overwrite: true);
        }
    }
}
