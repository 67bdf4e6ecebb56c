using System.ComponentModel;
using System.Globalization;
using System.Text.RegularExpressions;

namespace GameNight.LocalPostgres;

/// <summary>A folder with <c>postgres</c> and <c>initdb</c> that run here, and their major version.</summary>
internal sealed partial record ServerPrograms(string BinFolder, int MajorVersion)
{
    public string Postgres => Path.Combine(BinFolder, "postgres");

    public string Initdb => Path.Combine(BinFolder, "initdb");

    /// <summary>Null when the programs are missing, or cannot run on this machine or as this user.</summary>
    public static async Task<ServerPrograms?> ProbeAsync(
        string binFolder, ServerAccount account, CancellationToken cancellation)
    {
        var folder = Path.GetFullPath(binFolder);
        if (!File.Exists(Path.Combine(folder, "postgres")) || !File.Exists(Path.Combine(folder, "initdb")))
        {
            return null;
        }

        try
        {
            var answer = await Command.RunAsync(
                Path.Combine(folder, "postgres"), ["--version"], account, "/", cancellation);
            return answer.Succeeded && MajorOf().Match(answer.Output) is { Success: true } match
                ? new ServerPrograms(folder, int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture))
                : null;
        }
        catch (Win32Exception)
        {
            return null;
        }
    }

    [GeneratedRegex(@"\(PostgreSQL\) (\d+)")]
    private static partial Regex MajorOf();
}
