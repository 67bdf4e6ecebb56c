using System.Diagnostics;

namespace GameNight.TestKit.Running;

/// <summary>Checkers from outside the project that come with npm, pinned by a lock file and fetched once.</summary>
public sealed class NodePrograms
{
    private readonly string _npm;
    private readonly string _pins;
    private readonly string _folder;

    private NodePrograms(string npm, string pins, string name)
    {
        _npm = npm;
        _pins = pins;
        _folder = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../..", name));
    }

    /// <param name="pins">Folder with package.json, its lock file, and the programs that use them.</param>
    /// <param name="name">Of the folder into which they are fetched.</param>
    /// <returns>Null where npm is not installed.</returns>
    public static NodePrograms? Pinned(string pins, string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "npm")).FirstOrDefault(File.Exists) is { } npm
            ? new NodePrograms(npm, pins, name)
            : null;

    /// <summary>Runs one of the programs.</summary>
    /// <returns>What it wrote.</returns>
    /// <exception cref="InvalidOperationException">It failed.</exception>
    public async Task<string> RunAsync(string program, string input, CancellationToken cancellation)
    {
        await FetchAsync(cancellation);
        return await RunAsync("node", [program], input, cancellation);
    }

    private async Task FetchAsync(CancellationToken cancellation)
    {
        Directory.CreateDirectory(_folder);
        foreach (var pin in Directory.EnumerateFiles(_pins))
        {
            File.Copy(pin, Path.Combine(_folder, Path.GetFileName(pin)), overwrite: true);
        }

        if (!File.Exists(Path.Combine(_folder, "node_modules", ".package-lock.json")))
        {
            await RunAsync(_npm, ["ci", "--ignore-scripts", "--no-audit", "--no-fund"], "", cancellation);
        }
    }

    private async Task<string> RunAsync(string program, string[] arguments, string input, CancellationToken cancellation)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = _folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(cancellation);
        var errors = process.StandardError.ReadToEndAsync(cancellation);
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        await process.WaitForExitAsync(cancellation);
        return process.ExitCode == 0
            ? await output
            : throw new InvalidOperationException(
                $"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {await errors}");
    }
}
