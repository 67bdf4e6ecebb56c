using GameNight.LocalPostgres;
using GameNight.TestKit.Postgres;

namespace GameNight.TestKit.Running;

/// <summary>The Postgres programs that all apps under test run, so that not each of them fetches its own.</summary>
public static class SharedPrograms
{
    /// <returns>A folder for <see cref="PrivatePostgresSettings.BinFolderVariable"/>; null where an installed Postgres is found anyway.</returns>
    public static async Task<string?> FolderAsync(CancellationToken cancellation)
    {
        if (Environment.GetEnvironmentVariable(PrivatePostgresSettings.BinFolderVariable) is { Length: > 0 } named)
        {
            return named;
        }

        if (Newest() is { } cached)
        {
            return cached;
        }

        // A server that is started once fetches them into the shared folder.
        await using (var root = await TemporaryDataRoot.MakeAsync(cancellation))
        {
            if (await PrivatePostgres.StartAsync(root.Settings, progress: null, cancellation) is Started { Server: var server })
            {
                await server.DisposeAsync();
            }
        }

        return Newest();
    }

    private static string? Newest() => !Directory.Exists(TemporaryDataRoot.SharedProgramsFolder)
        ? null
        : new DirectoryInfo(TemporaryDataRoot.SharedProgramsFolder).EnumerateDirectories()
            .Where(version => version.Name != "installing")
            .OrderByDescending(version => version.CreationTimeUtc)
            .Select(version => Path.Combine(version.FullName, "bin"))
            .FirstOrDefault(Directory.Exists);
}
