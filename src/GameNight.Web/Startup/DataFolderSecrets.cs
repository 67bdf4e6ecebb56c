using System.Security.Cryptography;
using GameNight.Nights.Links;

namespace GameNight.Web.Startup;

/// <summary>What must never be in the database: the key of private links and the keys that encrypt notes and cookies.</summary>
internal static class DataFolderSecrets
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    public static DirectoryInfo Keys(string dataRoot)
    {
        var keys = new DirectoryInfo(Path.Combine(dataRoot, "keys"));
        if (!keys.Exists)
        {
            if (OperatingSystem.IsWindows())
            {
                keys.Create();
            }
            else
            {
                Directory.CreateDirectory(keys.FullName, OwnerOnly | UnixFileMode.UserExecute);
            }
        }

        return keys;
    }

    /// <summary>Reads the link secret, or makes it on the first start. Losing it ends every link.</summary>
    public static LinkSecret LinkSecret(string dataRoot)
    {
        var path = Path.Combine(dataRoot, "link-secret");
        if (!File.Exists(path))
        {
            Directory.CreateDirectory(dataRoot);
            var made = path + ".new";
            var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
            {
                options.UnixCreateMode = OwnerOnly;
            }

            using (var file = new FileStream(made, options))
            {
                file.Write(RandomNumberGenerator.GetBytes(Nights.Links.LinkSecret.FewestBytes));
                file.Flush(flushToDisk: true);
            }

            File.Move(made, path, overwrite: false);
        }

        return new LinkSecret(File.ReadAllBytes(path));
    }
}
