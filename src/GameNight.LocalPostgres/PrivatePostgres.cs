namespace GameNight.LocalPostgres;

/// <summary>A real Postgres of this app's own: its data folder, its roles, reachable through a Unix socket only.</summary>
public sealed class PrivatePostgres : IAsyncDisposable
{
    /// <summary>Name of the one database.</summary>
    public const string Database = "gamenight";

    private readonly DataFolder _data;
    private readonly ServerProcess _server;
    private bool _isLetGo;

    private PrivatePostgres(DataFolder data, ServerProcess server, int majorVersion)
    {
        _data = data;
        _server = server;
        ServerMajorVersion = majorVersion;
    }

    /// <summary>For migrations: owns the database, is no superuser.</summary>
    public string OwnerConnectionString => _server.ConnectionString(RolesAndDatabase.Owner, Database, 4);

    /// <summary>For serving: owns nothing and creates nothing.</summary>
    public string AppConnectionString => _server.ConnectionString(RolesAndDatabase.App, Database, 40);

    /// <summary>The superuser, on the database <c>postgres</c>.</summary>
    public string AdminConnectionString => _server.AdminConnectionString;

    public int ServerMajorVersion { get; }

    public int ServerProcessId => _server.Id;

    /// <summary>Full path of the folder that holds all of it. Locked while this object lives.</summary>
    public string DataRoot => _data.Root;

    /// <summary>Starts the server, or takes over the one of this folder that outlived its app.</summary>
    /// <param name="settings">Where data and programs are.</param>
    /// <param name="progress">Told in one sentence what takes time.</param>
    /// <param name="cancellation">Gives up; a server already started is stopped again.</param>
    /// <exception cref="PostgresFailedException">Postgres failed, or did not answer within a minute.</exception>
    public static async Task<StartOutcome> StartAsync(
        PrivatePostgresSettings settings, Action<string>? progress, CancellationToken cancellation)
    {
        if (OperatingSystem.IsWindows())
        {
            return new Refused("The built-in Postgres runs on Linux only; give GameNight a connection string instead.");
        }

        var account = await ServerAccount.ChooseAsync(settings.ServerUser, cancellation);
        var opened = await DataFolder.OpenAsync(settings.DataRoot, account, cancellation);
        if (opened is not DataFolderOpened { Folder: var data })
        {
            return new Refused(((DataFolderRefused)opened).Sentence);
        }

        StartOutcome? outcome = null;
        try
        {
            outcome = await new ServerStart(settings, account, data, progress ?? (_ => { })).RunAsync(cancellation);
            return outcome;
        }
        finally
        {
            if (outcome is not Started)
            {
                data.Dispose();
            }
        }
    }

    /// <summary>
    /// Stops a server that outlived its app, so that its folder can be removed. False when the folder is in use or is
    /// not GameNight's.
    /// </summary>
    public static async Task<bool> StopLeftOverAsync(string dataRoot, CancellationToken cancellation)
    {
        if (!DataFolder.IsOurs(dataRoot)
            || await DataFolder.OpenAsync(dataRoot, ServerAccount.Own, cancellation) is not DataFolderOpened opened)
        {
            return false;
        }

        using var data = opened.Folder;
        if (ServerProcess.FindLeftOver(data) is { } server)
        {
            await server.StopAsync();
        }

        return true;
    }

    /// <summary>Stops the server and gives the folder back.</summary>
    public async ValueTask DisposeAsync()
    {
        if (!_isLetGo)
        {
            _isLetGo = true;
            await _server.StopAsync();
            _data.Dispose();
        }
    }

    internal static PrivatePostgres Of(DataFolder data, ServerProcess server, int majorVersion)
    {
        return new PrivatePostgres(data, server, majorVersion);
    }

    /// <summary>Gives the folder back without stopping the server: what the kernel does to an app that is killed.</summary>
    internal void Abandon()
    {
        _isLetGo = true;
        _data.Dispose();
    }
}
