using System.Globalization;

namespace GameNight.LocalPostgres;

/// <summary>Finds the programs to run: those named, those installed earlier, those of npm, those of an installed Postgres.</summary>
internal sealed class ServerProgramSearch(
    PrivatePostgresSettings settings,
    ServerAccount account,
    DataFolder data,
    Action<string> say)
{
    private const int OldestMajorVersion = 15;

    private readonly NpmServerPrograms _npm = new(settings.ProgramsFolder, settings.SearchPath, say);
    private readonly SortedSet<int> _otherVersions = [];
    private string? _npmFailure;

    public async Task<ServerProgramsOutcome> FindAsync(CancellationToken cancellation)
    {
        if (settings.BinFolder is { } named)
        {
            return await ProbeNamedAsync(named, cancellation);
        }

        await foreach (var folder in CandidatesAsync(cancellation))
        {
            if (await ServerPrograms.ProbeAsync(folder, account, cancellation) is not { } programs
                || programs.MajorVersion < OldestMajorVersion)
            {
                continue;
            }

            // A folder made by an installed Postgres goes on with that one after npm has come along, and the other way round.
            if (data.ClusterMajorVersion is { } needed && programs.MajorVersion != needed)
            {
                _otherVersions.Add(programs.MajorVersion);
                continue;
            }

            return new ServerProgramsFound(programs);
        }

        return new ServerProgramsMissing(data.ClusterMajorVersion is { } made && _otherVersions.Count > 0
            ? WrongVersion(made, string.Join(" and ", _otherVersions))
            : NothingThere());
    }

    private async Task<ServerProgramsOutcome> ProbeNamedAsync(string folder, CancellationToken cancellation)
    {
        if (await ServerPrograms.ProbeAsync(folder, account, cancellation) is not { } programs)
        {
            return new ServerProgramsMissing(
                $"{PrivatePostgresSettings.BinFolderVariable} names {folder}, where there are no programs postgres and "
                + $"initdb that the user {account.Name} can run.");
        }

        if (programs.MajorVersion < OldestMajorVersion)
        {
            return new ServerProgramsMissing(
                $"The Postgres in {folder} is version {programs.MajorVersion}; "
                + $"GameNight needs {OldestMajorVersion} or newer.");
        }

        return data.ClusterMajorVersion is { } made && made != programs.MajorVersion
            ? new ServerProgramsMissing(
                WrongVersion(made, programs.MajorVersion.ToString(CultureInfo.InvariantCulture)))
            : new ServerProgramsFound(programs);
    }

    private async IAsyncEnumerable<string> CandidatesAsync(
        [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        yield return _npm.PinnedBinFolder;

        var isOfUse = data.ClusterMajorVersion is not { } needed || needed == NpmServerPrograms.PinnedMajorVersion;
        if (isOfUse && !Directory.Exists(_npm.PinnedBinFolder))
        {
            _npmFailure = await _npm.InstallAsync(cancellation);
            if (_npmFailure is null)
            {
                yield return _npm.PinnedBinFolder;
            }
            else
            {
                say(_npmFailure);
            }
        }

        foreach (var folder in _npm.EarlierBinFolders())
        {
            yield return folder;
        }

        if (Command.Find("pg_config", settings.SearchPath) is { } pgConfig)
        {
            var answer = await Command.RunAsync(pgConfig, ["--bindir"], ServerAccount.Own, "/", cancellation);
            if (answer.Succeeded)
            {
                yield return answer.Output.Trim();
            }
        }

        foreach (var folder in InstalledNewestFirst())
        {
            yield return folder;
        }
    }

    private IEnumerable<string> InstalledNewestFirst()
    {
        return !Directory.Exists(settings.InstalledServersFolder)
            ? []
            : Directory.EnumerateDirectories(settings.InstalledServersFolder)
                .Select(folder => (Folder: folder, IsVersion: int.TryParse(
                    Path.GetFileName(folder), CultureInfo.InvariantCulture, out var version), Version: version))
                .Where(found => found.IsVersion)
                .OrderByDescending(found => found.Version)
                .Select(found => Path.Combine(found.Folder, "bin"));
    }

    private string WrongVersion(int made, string here)
    {
        return $"The database in {data.Cluster} was made by Postgres {made}, and the programs here are of version {here}: "
            + $"name Postgres {made} in {PrivatePostgresSettings.BinFolderVariable}, or another data folder.";
    }

    private string NothingThere()
    {
        var wanted = data.ClusterMajorVersion is { } made ? $"Postgres {made}" : $"Postgres {OldestMajorVersion} or newer";
        if (_npmFailure is null || !NpmServerPrograms.FitsThisMachine)
        {
            return $"There is no Postgres to run: install {wanted} (on Debian or Ubuntu, the package postgresql).";
        }

        return _npm.IsNpmAtHand
            ? $"There is no Postgres to run, and {_npmFailure.TrimEnd('.')}: see to that, or install {wanted}."
            : $"There is no Postgres to run: install npm, which fetches one, or {wanted}.";
    }
}
