namespace GameNight.LocalPostgres;

/// <summary>A lock between processes that the kernel gives back when its holder dies.</summary>
internal sealed class FileLock : IDisposable
{
    private readonly FileStream _held;

    private FileLock(FileStream held)
    {
        _held = held;
    }

    /// <summary>Null when another process, or another part of this one, holds it.</summary>
    public static FileLock? TryTake(string path)
    {
        try
        {
            return new FileLock(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException) when (File.Exists(path))
        {
            return null;
        }
    }

    public static async Task<FileLock> WaitForAsync(string path, CancellationToken cancellation)
    {
        while (true)
        {
            if (TryTake(path) is { } taken)
            {
                return taken;
            }

            await Task.Delay(TimeSpan.FromMilliseconds(100), cancellation);
        }
    }

    public void Dispose()
    {
        _held.Dispose();
    }
}
