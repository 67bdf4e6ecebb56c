using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace GameNight.TestKit.Running;

/// <summary>The built app as a process of its own, with what it wrote.</summary>
public sealed class AppProcess : IDisposable
{
    private readonly Process _process;
    private readonly StringBuilder _output = new();
    private readonly StringBuilder _errors = new();

    private AppProcess(Process process)
    {
        _process = process;
        _process.OutputDataReceived += (_, line) => Note(_output, line.Data);
        _process.ErrorDataReceived += (_, line) => Note(_errors, line.Data);
    }

    /// <summary>The command that starts .NET programs here.</summary>
    public static string Dotnet { get; } = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host
        ? host
        : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "dotnet"))
            .FirstOrDefault(File.Exists) ?? "dotnet";

    private static string Dll { get; } = typeof(AppProcess).Assembly
        .GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(attribute => attribute.Key == "WebApp").Value!;

    public int Id => _process.Id;

    public bool HasEnded => _process.HasExited;

    public int ExitCode => _process.ExitCode;

    public string Output => Read(_output);

    public string Errors => Read(_errors);

    /// <param name="environment">Set on top of this process's own; null takes a variable away.</param>
    /// <exception cref="InvalidOperationException">The app has not been built in this configuration.</exception>
    public static AppProcess Start(IReadOnlyDictionary<string, string?> environment, params IReadOnlyList<string> arguments)
    {
        if (!File.Exists(Dll))
        {
            throw new InvalidOperationException($"The app is not built: {Dll} is not there. Build the whole test project.");
        }

        var start = new ProcessStartInfo(Dotnet, [Dll, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (var inherited in start.Environment.Keys.Where(IsSetting).ToList())
        {
            start.Environment.Remove(inherited);
        }

        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        var app = new AppProcess(new Process { StartInfo = start });
        app._process.Start();
        app._process.BeginOutputReadLine();
        app._process.BeginErrorReadLine();
        return app;
    }

    /// <summary>A signal by its name, such as TERM, to any process of ours.</summary>
    public static async Task SignalAsync(string signal, int process)
    {
        using var kill = Process.Start("/bin/sh", ["-c", string.Create(CultureInfo.InvariantCulture, $"kill -{signal} {process}")]);
        await kill.WaitForExitAsync();
    }

    public Task SignalAsync(string signal) => SignalAsync(signal, Id);

    public Task WaitForEndAsync(CancellationToken cancellation) => _process.WaitForExitAsync(cancellation);

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            _process.WaitForExit();
        }

        _process.Dispose();
    }

    /// <summary>Settings of the machine must not reach the app under test; the choice of Postgres programs must.</summary>
    private static bool IsSetting(string name) =>
        name.StartsWith("GAMENIGHT_", StringComparison.Ordinal) && name != "GAMENIGHT_POSTGRES_BIN"
        || name.StartsWith("ASPNETCORE_", StringComparison.Ordinal);

    private static void Note(StringBuilder text, string? line)
    {
        lock (text)
        {
            text.AppendLine(line);
        }
    }

    private static string Read(StringBuilder text)
    {
        lock (text)
        {
            return text.ToString();
        }
    }
}
