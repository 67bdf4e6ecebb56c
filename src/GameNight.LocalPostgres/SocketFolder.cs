using System.Security.Cryptography;
using System.Text;

namespace GameNight.LocalPostgres;

/// <summary>The folder of the server's Unix socket, whose path the kernel limits to 107 bytes.</summary>
internal static class SocketFolder
{
    /// <summary>Part of the socket's file name only: no network port is opened.</summary>
    public const int Port = 5432;

    private const int LongestPath = 106;

    public static string SocketIn(string folder)
    {
        return Path.Combine(folder, $".s.PGSQL.{Port}");
    }

    /// <summary>Inside the data root where that is short enough, else a short name derived from it, the same every time.</summary>
    public static string For(string root)
    {
        var inside = Path.Combine(root, "socket");
        if (Fits(inside))
        {
            return inside;
        }

        var name = "gamenight-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(root)))[..16];
        return ShortPlaces().Select(place => Path.Combine(place, name)).First(Fits);
    }

    /// <summary>Whether nobody else has put something under that name, which anyone could do in /tmp.</summary>
    public static bool IsFreeOrOurs(string folder)
    {
        if (new FileInfo(folder).LinkTarget is not null || File.Exists(folder))
        {
            return false;
        }

        if (!Directory.Exists(folder) || Environment.IsPrivilegedProcess)
        {
            return true;
        }

        try
        {
            // Only the owner may change the mode, so this also answers whose folder it is.
            File.SetUnixFileMode(folder, FileAccessModes.OwnerOnly);
            return true;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Outside the data root nobody else would ever clear it away.</summary>
    public static void RemoveIfEmpty(string folder)
    {
        try
        {
            Directory.Delete(folder);
        }
        catch (Exception kept) when (kept is IOException or UnauthorizedAccessException)
        {
            // A server that had to be stopped at once leaves its socket, which the next one replaces.
        }
    }

    private static IEnumerable<string> ShortPlaces()
    {
        // For root, /run: no other user can make a folder there.
        if (Environment.IsPrivilegedProcess && Directory.Exists("/run"))
        {
            yield return "/run";
        }
        else if (Environment.GetEnvironmentVariable("XDG_RUNTIME_DIR") is { Length: > 0 } runtime
            && Directory.Exists(runtime))
        {
            yield return runtime;
        }

        yield return "/tmp";
    }

    private static bool Fits(string folder)
    {
        return Encoding.UTF8.GetByteCount(SocketIn(folder)) <= LongestPath;
    }
}
