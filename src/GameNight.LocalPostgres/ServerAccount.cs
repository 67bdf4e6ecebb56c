using System.Diagnostics;

namespace GameNight.LocalPostgres;

/// <summary>The user Postgres runs as: the app's own, or an unprivileged one when the app is root, which Postgres refuses.</summary>
internal sealed record ServerAccount
{
    private const string Users = "/etc/passwd";

    private ServerAccount(string? switchTo)
    {
        SwitchTo = switchTo;
    }

    /// <summary>The account the app itself has.</summary>
    public static ServerAccount Own { get; } = new((string?)null);

    /// <summary>Name of the user to change to, or null to stay.</summary>
    public string? SwitchTo { get; }

    /// <summary>For sentences: who it is that needs access.</summary>
    public string Name => SwitchTo ?? Environment.UserName;

    public static async Task<ServerAccount> ChooseAsync(string? wanted, CancellationToken cancellation)
    {
        if (!Environment.IsPrivilegedProcess)
        {
            return Own;
        }

        if (wanted is not null)
        {
            return new ServerAccount(wanted);
        }

        // A uid without an entry in the list of users fails inside Postgres, so it has to be a user who really exists.
        var users = await File.ReadAllLinesAsync(Users, cancellation);
        return new ServerAccount(users.Any(user => user.StartsWith("postgres:", StringComparison.Ordinal)) ? "postgres" : "nobody");
    }

    public ProcessStartInfo StartInfo(string program, IEnumerable<string> arguments, string workingFolder)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            UseShellExecute = false,
            WorkingDirectory = workingFolder,
        };
        if (SwitchTo is not null)
        {
            start.UserName = SwitchTo;
        }

        return start;
    }

    /// <summary>Hands folders with all they hold to this account and closes them to everybody else.</summary>
    public async Task TakeOverAsync(IReadOnlyList<string> folders, CancellationToken cancellation)
    {
        foreach (var folder in folders)
        {
            Directory.CreateDirectory(folder, FileAccessModes.OwnerOnly);
            File.SetUnixFileMode(folder, FileAccessModes.OwnerOnly);
        }

        if (SwitchTo is null)
        {
            return;
        }

        var change = await Command.RunAsync("chown", ["-R", $"{SwitchTo}:", "--", .. folders], Own, "/", cancellation);
        if (!change.Succeeded)
        {
            throw new PostgresFailedException($"The data folder could not be handed to {SwitchTo}: {change.LastLines}");
        }
    }

    /// <summary>Whether this account can enter a folder, which depends on every folder above it too.</summary>
    public async Task<bool> CanEnterAsync(string folder, CancellationToken cancellation)
    {
        return SwitchTo is null
            || (await Command.RunAsync("/bin/sh", ["-c", "cd -- \"$0\"", folder], this, "/", cancellation)).Succeeded;
    }
}
