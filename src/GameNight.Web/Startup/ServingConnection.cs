using System.Data.Common;

namespace GameNight.Web.Startup;

/// <summary>The connection to a database of one's own: its parts as they were set, and what is wrong with them.</summary>
internal static class ServingConnection
{
    /// <summary>Roles that see past row-level security or may change the tables. The app must not serve as one of them.</summary>
    private static readonly string[] TooMighty = ["postgres", LocalPostgres.RolesAndDatabase.Owner];

    /// <summary>The names that the database's driver takes for it.</summary>
    private static readonly string[] RoleKeys = ["Username", "User Name", "User Id", "UserId", "UID", "User"];

    /// <exception cref="IOException">The file with the password cannot be read.</exception>
    public static string Of(GameNightOptions options)
    {
        var connection = Parts(options.Database);
        if (options.DatabasePasswordFile.Length > 0)
        {
            connection["Password"] = File.ReadAllText(options.DatabasePasswordFile).TrimEnd('\r', '\n');
        }

        return connection.ConnectionString;
    }

    /// <summary>One sentence, or null when it can be used.</summary>
    public static string? Problem(GameNightOptions options)
    {
        try
        {
            return Role(Parts(Of(options))) is { } role && TooMighty.Contains(role)
                ? $"{GameNightOptions.Prefix}DATABASE serves as {role}, who is not held by the walls between groups: use {LocalPostgres.RolesAndDatabase.App}."
                : null;
        }
        catch (ArgumentException)
        {
            return $"{GameNightOptions.Prefix}DATABASE is not a connection string such as Host=postgres;Username=gamenight_app;Database=gamenight.";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return $"{GameNightOptions.Prefix}DATABASE_PASSWORD_FILE: {options.DatabasePasswordFile} cannot be read.";
        }
    }

    private static DbConnectionStringBuilder Parts(string text) => new() { ConnectionString = text };

    private static string? Role(DbConnectionStringBuilder connection) => RoleKeys
        .Select(key => connection.TryGetValue(key, out var role) ? role as string : null)
        .FirstOrDefault(role => role is not null);
}
