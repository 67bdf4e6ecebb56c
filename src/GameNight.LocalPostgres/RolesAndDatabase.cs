using Npgsql;

namespace GameNight.LocalPostgres;

/// <summary>
/// The two roles and their database on any server: an owner that migrates and is no superuser, and an app role that
/// serves and owns nothing. Every call leaves the same state, whatever was there.
/// </summary>
public static class RolesAndDatabase
{
    /// <summary>Owns the database and all tables in it.</summary>
    public const string Owner = "gamenight_owner";

    /// <summary>Reads and writes rows, and nothing else.</summary>
    public const string App = "gamenight_app";

    /// <summary>
    /// Schema for the migration history: the app role may read there and not write, unlike in <c>public</c>, where every
    /// new table is open to it.
    /// </summary>
    public const string MigrationHistorySchema = "migrations";

    /// <summary>One number for all callers, so that two starting at once take turns.</summary>
    private const long Turn = 0x67616d656e6967;

    private const string Attributes = "nosuperuser nocreatedb nocreaterole noreplication nobypassrls login";

    /// <summary>Makes or repairs both roles and one database.</summary>
    /// <param name="adminConnectionString">A superuser, on any database but the one to make.</param>
    /// <param name="database">Name of the database.</param>
    /// <param name="passwords">What the roles log in with.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task EnsureAsync(
        string adminConnectionString, string database, RolePasswords passwords, CancellationToken cancellation)
    {
        await using (var admin = await OpenAsync(adminConnectionString, null, cancellation))
        {
            await RunAsync(admin, $"select pg_advisory_lock({Turn})", cancellation);
            await EnsureRoleAsync(admin, Owner, passwords.Owner, cancellation);
            await EnsureRoleAsync(admin, App, passwords.App, cancellation);
            if (!await ExistsAsync(admin, "select from pg_database where datname = $1", database, cancellation))
            {
                // template0 and C, so that text sorts alike everywhere, whatever the server's own default.
                await RunAsync(
                    admin,
                    $"create database {Quoted(database)} owner {Owner} template template0 encoding 'UTF8' locale 'C'",
                    cancellation);
            }

            await RunAsync(admin, AccessTo(database), cancellation);
        }

        await using var inside = await OpenAsync(adminConnectionString, database, cancellation);
        await RunAsync(inside, $"select pg_advisory_lock({Turn})", cancellation);
        await RunAsync(inside, InsideDatabase, cancellation);
    }

    /// <summary>Makes a database as a copy of another; the copy takes over everything but who may connect.</summary>
    public static async Task CloneAsync(
        string adminConnectionString, string template, string database, CancellationToken cancellation)
    {
        await using var admin = await OpenAsync(adminConnectionString, null, cancellation);
        await RunAsync(
            admin, $"create database {Quoted(database)} owner {Owner} template {Quoted(template)}", cancellation);
        await RunAsync(admin, AccessTo(database), cancellation);
    }

    private const string InsideDatabase =
        $"""
        revoke create on schema public from public;
        grant usage on schema public to {App};
        create schema if not exists {MigrationHistorySchema} authorization {Owner};
        grant usage on schema {MigrationHistorySchema} to {App};
        alter default privileges for role {Owner} in schema public
            grant select, insert, update, delete on tables to {App};
        alter default privileges for role {Owner} in schema public grant usage on sequences to {App};
        alter default privileges for role {Owner} in schema {MigrationHistorySchema} grant select on tables to {App};
        """;

    private static string AccessTo(string database)
    {
        // Without this anybody may connect and make temporary tables, and would then own something.
        return $"revoke all on database {Quoted(database)} from public; "
            + $"grant connect on database {Quoted(database)} to {App}; "
            + $"alter database {Quoted(database)} owner to {Owner}";
    }

    private static async Task EnsureRoleAsync(
        NpgsqlConnection admin, string role, string? password, CancellationToken cancellation)
    {
        if (!await ExistsAsync(admin, "select from pg_roles where rolname = $1", role, cancellation))
        {
            await RunAsync(admin, $"create role {role}", cancellation);
        }

        await RunAsync(admin, $"alter role {role} {Attributes}", cancellation);
        if (password is not null)
        {
            await RunAsync(
                admin, $"alter role {role} password '{password.Replace("'", "''", StringComparison.Ordinal)}'", cancellation);
        }
    }

    private static async Task<NpgsqlConnection> OpenAsync(
        string connectionString, string? database, CancellationToken cancellation)
    {
        // Not pooled: an idle connection would keep a database from being copied or dropped.
        var settings = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        settings.Database = database ?? settings.Database;
        var connection = new NpgsqlConnection(settings.ConnectionString);
        await connection.OpenAsync(cancellation);
        return connection;
    }

    private static async Task<bool> ExistsAsync(
        NpgsqlConnection connection, string query, string name, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(query, connection) { Parameters = { new() { Value = name } } };
        await using var rows = await command.ExecuteReaderAsync(cancellation);
        return await rows.ReadAsync(cancellation);
    }

    private static async Task RunAsync(NpgsqlConnection connection, string statement, CancellationToken cancellation)
    {
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync(cancellation);
    }

    private static string Quoted(string name)
    {
        return $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
