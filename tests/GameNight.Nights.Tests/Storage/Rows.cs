using GameNight.Nights.Records;
using GameNight.TestKit.Postgres;
using Npgsql;

namespace GameNight.Nights.Tests.Storage;

/// <summary>What lies in the tables, seen past all desks.</summary>
internal static class Rows
{
    public const string Tables =
        "select relname::text from pg_class where relnamespace = 'public'::regnamespace and relkind in ('r', 'p') order by 1";

    public static async Task<List<string>> ReadAsync(string connectionString, string query)
    {
        await using var connection = await OpenAsync(connectionString);
        return await ReadAsync(connection, query);
    }

    /// <summary>Every row of every table of the app as text.</summary>
    public static async Task<List<string>> EverythingAsync(TestDatabase database)
    {
        await using var connection = await OpenAsync(database.AdminConnectionString);
        var rows = new List<string>();
        foreach (var table in await ReadAsync(connection, Tables))
        {
            rows.AddRange((await ReadAsync(connection, $"select '{table} ' || row_to_json(t) from {table} t")).Order());
        }

        return rows;
    }

    public static async Task<int> TellAsync(string connectionString, string statement)
    {
        await using var connection = await OpenAsync(connectionString);
        await using var command = new NpgsqlCommand(statement, connection);
        return await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Runs a statement as somebody inside the group, or inside none, and takes it back again.</summary>
    public static async Task<int> TryAsync(string connectionString, GroupId? group, string statement)
    {
        await using var connection = await OpenAsync(connectionString);
        await using var transaction = await connection.BeginTransactionAsync(TestContext.Current.CancellationToken);
        await EnterAsync(connection, group);
        await using var command = new NpgsqlCommand(statement, connection);
        return await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    public static async Task<List<string>> SeenFromAsync(string connectionString, GroupId? group, string query)
    {
        await using var connection = await OpenAsync(connectionString);
        await using var transaction = await connection.BeginTransactionAsync(TestContext.Current.CancellationToken);
        await EnterAsync(connection, group);
        return await ReadAsync(connection, query);
    }

    private static async Task EnterAsync(NpgsqlConnection connection, GroupId? group)
    {
        if (group is { } entered)
        {
            await ReadAsync(connection, $"select set_config('app.group_id', '{entered.Value}', true)");
        }
    }

    private static async Task<List<string>> ReadAsync(NpgsqlConnection connection, string query)
    {
        await using var command = new NpgsqlCommand(query, connection);
        await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        var rows = new List<string>();
        while (await reader.ReadAsync(TestContext.Current.CancellationToken))
        {
            rows.Add(reader.IsDBNull(0) ? "" : reader.GetValue(0).ToString()!);
        }

        return rows;
    }

    private static async Task<NpgsqlConnection> OpenAsync(string connectionString)
    {
        // Not pooled: places on the server are counted, and some tests end other connections.
        var connection = new NpgsqlConnection(
            new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        return connection;
    }
}
