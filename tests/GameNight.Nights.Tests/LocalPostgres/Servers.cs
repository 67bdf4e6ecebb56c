using GameNight.LocalPostgres;
using Npgsql;

namespace GameNight.Nights.Tests.LocalPostgres;

/// <summary>The few things these tests do with a private server.</summary>
internal static class Servers
{
    public static async Task<PrivatePostgres> StartedAsync(PrivatePostgresSettings settings)
    {
        var outcome = await PrivatePostgres.StartAsync(
            settings, TestContext.Current.SendDiagnosticMessage, TestContext.Current.CancellationToken);
        return Assert.IsType<Started>(outcome).Server;
    }

    public static async Task<string> RefusalAsync(PrivatePostgresSettings settings)
    {
        var outcome = await PrivatePostgres.StartAsync(settings, null, TestContext.Current.CancellationToken);
        return Assert.IsType<Refused>(outcome).Sentence;
    }

    public static async Task<T> AskAsync<T>(string connectionString, string question)
    {
        await using var connection = await ConnectAsync(connectionString);
        await using var command = new NpgsqlCommand(question, connection);
        return (T)(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken))!;
    }

    public static async Task TellAsync(string connectionString, string statement)
    {
        await using var connection = await ConnectAsync(connectionString);
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Makes a folder that other users can pass through, and every folder between it and an existing one.</summary>
    public static void MakePassable(string existing, string folder)
    {
        const UnixFileMode passable = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
            | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;
        File.SetUnixFileMode(existing, passable);
        Directory.CreateDirectory(folder, passable);
    }

    private static async Task<NpgsqlConnection> ConnectAsync(string connectionString)
    {
        // Not pooled: these servers stop and start again under the same address.
        var settings = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        var connection = new NpgsqlConnection(settings.ConnectionString);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        return connection;
    }
}
