using System.Diagnostics;

namespace GameNight.LocalPostgres;

/// <summary>One run of another program to its end: exit code, and what it wrote on both outputs.</summary>
internal sealed record Command(int ExitCode, string Output)
{
    public bool Succeeded => ExitCode == 0;

    /// <summary>The last lines written, for a failure message.</summary>
    public string LastLines => string.Join('\n', Output.Trim().Split('\n').TakeLast(12));

    /// <exception cref="System.ComponentModel.Win32Exception">The program is missing or may not be run.</exception>
    public static async Task<Command> RunAsync(
        string program,
        IEnumerable<string> arguments,
        ServerAccount account,
        string workingFolder,
        CancellationToken cancellation)
    {
        using var process = new Process
        {
            StartInfo = account.StartInfo(program, arguments, workingFolder),
        };
        process.StartInfo.RedirectStandardInput = true;
        process.StartInfo.RedirectStandardOutput = true;
        process.StartInfo.RedirectStandardError = true;
        process.Start();
        process.StandardInput.Close();

        var output = process.StandardOutput.ReadToEndAsync(cancellation);
        var errors = process.StandardError.ReadToEndAsync(cancellation);
        try
        {
            await process.WaitForExitAsync(cancellation);
            return new Command(process.ExitCode, await output + await errors);
        }
        catch (OperationCanceledException)
        {
            // Only programs that are safe to interrupt run here; whatever they leave is in a folder under a temporary name.
            process.Kill(entireProcessTree: true);
            throw;
        }
    }

    /// <summary>The first executable of that name in a list of folders written like PATH, or null.</summary>
    public static string? Find(string name, string searchPath)
    {
        return searchPath
            .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .Select(folder => Path.Combine(folder, name))
            .FirstOrDefault(File.Exists);
    }
}
