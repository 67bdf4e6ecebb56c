using System.Globalization;
using System.Runtime.InteropServices;

namespace GameNight.LocalPostgres;

/// <summary>Signals to a process by number, which .NET offers only as a kill.</summary>
internal static class ProcessSignals
{
    public const int Interrupt = 2;
    public const int Quit = 3;

    private const int NotPermitted = 1;

    public static void Send(int process, int signal)
    {
        _ = Kill(process, signal);
    }

    public static bool IsAlive(int process)
    {
        if (Kill(process, 0) != 0 && Marshal.GetLastPInvokeError() != NotPermitted)
        {
            return false;
        }

        // In a container without an init nobody collects an orphan, and a process that has ended keeps its number.
        return !HasEnded(process);
    }

    /// <summary>The folder a process works in, or null where the system does not say.</summary>
    public static string? WorkingFolder(int process)
    {
        try
        {
            return new FileInfo(Path.Combine(ProcFolder(process), "cwd")).LinkTarget;
        }
        catch (Exception unknown) when (unknown is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static bool HasEnded(int process)
    {
        try
        {
            var status = File.ReadAllText(Path.Combine(ProcFolder(process), "stat"));
            return status.AsSpan(status.LastIndexOf(')') + 1).TrimStart() is ['Z' or 'X', ..];
        }
        catch (Exception unknown) when (unknown is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static string ProcFolder(int process)
    {
        return Path.Combine("/proc", process.ToString(CultureInfo.InvariantCulture));
    }

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    private static extern int Kill(int process, int signal);
}
