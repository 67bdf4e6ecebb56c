using System.Globalization;

namespace GameNight.LocalPostgres;

/// <summary>The data root, locked to this process, and where things stand in it.</summary>
internal sealed class DataFolder : IDisposable
{
    private const string MarkerName = "gamenight-folder.txt";
    private const string LockName = "gamenight.lock";

    private readonly FileLock _lock;

    private DataFolder(string root, FileLock held)
    {
        Root = root;
        _lock = held;
    }

    public string Root { get; }

    /// <summary>What Postgres calls its data directory.</summary>
    public string Cluster => Path.Combine(Root, "postgres");

    public string LogFolder => Path.Combine(Root, "log");

    public string LogFile => Path.Combine(LogFolder, "postgres.log");

    /// <summary>
    /// Major version of Postgres that made the cluster, or null when there is none yet. Postgres records it itself, so
    /// it cannot disagree with the files beside it.
    /// </summary>
    public int? ClusterMajorVersion
    {
        get
        {
            var record = Path.Combine(Cluster, "PG_VERSION");
            return File.Exists(record) && int.TryParse(
                File.ReadAllText(record), NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var major)
                ? major
                : null;
        }
    }

    public static bool IsOurs(string root)
    {
        return File.Exists(Path.Combine(root, MarkerName));
    }

    public static async Task<DataFolderOutcome> OpenAsync(
        string dataRoot, ServerAccount account, CancellationToken cancellation)
    {
        var root = Path.GetFullPath(dataRoot);
        try
        {
            if (File.Exists(root))
            {
                return new DataFolderRefused($"{root} is a file; name a folder for GameNight's data.");
            }

            if (Directory.Exists(root) && !IsOurs(root) && HoldsAnything(root))
            {
                return new DataFolderRefused(
                    $"The folder {root} holds files that are not GameNight's; name an empty or a new folder for its data.");
            }

            Directory.CreateDirectory(root, FileAccessModes.OwnerOnly);
            await File.WriteAllTextAsync(
                Path.Combine(root, MarkerName),
                "GameNight keeps its data here. Stop GameNight before you copy or move this folder.\n",
                cancellation);
        }
        catch (Exception refusal) when (refusal is UnauthorizedAccessException or IOException)
        {
            return new DataFolderRefused(
                $"GameNight cannot write to its data folder {root} ({refusal.Message.TrimEnd('.')}).");
        }

        return await LockAsync(root, account, cancellation);
    }

    public void Dispose()
    {
        _lock.Dispose();
    }

    private static async Task<DataFolderOutcome> LockAsync(
        string root, ServerAccount account, CancellationToken cancellation)
    {
        if (FileLock.TryTake(Path.Combine(root, LockName)) is not { } held)
        {
            return new DataFolderRefused(
                $"Another GameNight is running on the folder {root}; stop it first or name another folder.");
        }

        if (account.SwitchTo is not null)
        {
            File.SetUnixFileMode(root, File.GetUnixFileMode(root) | FileAccessModes.OthersPassThrough);
        }

        if (!await account.CanEnterAsync(root, cancellation))
        {
            held.Dispose();
            return new DataFolderRefused(
                $"Postgres must run as the user {account.Name}, who cannot enter {root}: "
                + "name a data folder outside private homes, or open the folders above it.");
        }

        return new DataFolderOpened(new DataFolder(root, held));
    }

    private static bool HoldsAnything(string root)
    {
        // A freshly made file system mounted here brings this one folder along.
        return Directory.EnumerateFileSystemEntries(root).Any(entry => Path.GetFileName(entry) != "lost+found");
    }
}
