using System.Security.Cryptography;
using System.Text;
using GameNight.LocalPostgres;
using Npgsql;

namespace GameNight.TestKit.Postgres;

/// <summary>The Postgres server of one test process: the one named in the environment, or else a private one.</summary>
public sealed class TestPostgres : IAsyncDisposable
{
    /// <summary>Names a superuser's connection string on a server that tests may use.</summary>
    public const string ServerVariable = "GAMENIGHT_TEST_DATABASE";

    private readonly string _admin;
    private readonly RolePasswords _passwords;
    private readonly PrivatePostgres? _private;
    private readonly TemporaryDataRoot? _root;
    private readonly List<string> _made = [];
    private readonly SemaphoreSlim _oneCopyAtATime = new(1);

    private TestPostgres(string admin, PrivatePostgres? server, TemporaryDataRoot? root)
    {
        _admin = admin;
        _passwords = PasswordsFor(new NpgsqlConnectionStringBuilder(admin).Password);
        _private = server;
        _root = root;
    }

    /// <exception cref="InvalidOperationException">No Postgres can be had here; the message says what to install.</exception>
    public static async Task<TestPostgres> StartAsync(CancellationToken cancellation)
    {
        if (Environment.GetEnvironmentVariable(ServerVariable) is { Length: > 0 } named)
        {
            return On(named);
        }

        var root = await TemporaryDataRoot.MakeAsync(cancellation);
        try
        {
            // Each database has connection pools of its own, and there is one for each class of tests.
            var settings = root.Settings with { MaxConnections = 200 };
            return await PrivatePostgres.StartAsync(settings, progress: null, cancellation) switch
            {
                Started started => new TestPostgres(started.Server.AdminConnectionString, started.Server, root),
                Refused refused => throw new InvalidOperationException(refused.Sentence),
                var other => throw new InvalidOperationException($"Unknown outcome {other}."),
            };
        }
        catch
        {
            await root.DisposeAsync();
            throw;
        }
    }

    /// <summary>Databases on a server that somebody else starts and stops.</summary>
    public static TestPostgres On(string adminConnectionString)
    {
        return new TestPostgres(adminConnectionString, null, null);
    }

    /// <summary>Makes a database with the two roles; a copy of <paramref name="template"/>, or empty without one.</summary>
    public async Task<TestDatabase> CreateAsync(string? template, CancellationToken cancellation)
    {
        var name = $"gamenight_test_{Guid.CreateVersion7():N}";
        lock (_made)
        {
            _made.Add(name);
        }

        if (template is null)
        {
            await RolesAndDatabase.EnsureAsync(_admin, name, _passwords, cancellation);
        }
        else
        {
            await CopyAsync(template, name, cancellation);
        }

        return new TestDatabase(
            name,
            ConnectionString(name, RolesAndDatabase.Owner, _passwords.Owner),
            ConnectionString(name, RolesAndDatabase.App, _passwords.App),
            ConnectionString(name, null, null));
    }

    public async ValueTask DisposeAsync()
    {
        if (_private is null)
        {
            await DropAllAsync();
        }
        else
        {
            await _private.DisposeAsync();
            await _root!.DisposeAsync();
        }

        _oneCopyAtATime.Dispose();
    }

    private static RolePasswords PasswordsFor(string? adminPassword)
    {
        // Derived, because the roles belong to the whole server and several test processes may share it.
        return adminPassword is null
            ? RolePasswords.None
            : new RolePasswords(Derive(RolesAndDatabase.Owner), Derive(RolesAndDatabase.App));

        string Derive(string role)
        {
            return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{role}:{adminPassword}")));
        }
    }

    private async Task CopyAsync(string template, string name, CancellationToken cancellation)
    {
        // Postgres copies a database only while nobody is connected to it, and that includes another copy being made.
        await _oneCopyAtATime.WaitAsync(cancellation);
        try
        {
            await RunAsync(
                $"select pg_terminate_backend(pid) from pg_stat_activity where datname = '{template}'", cancellation);
            await RolesAndDatabase.CloneAsync(_admin, template, name, cancellation);
        }
        finally
        {
            _oneCopyAtATime.Release();
        }
    }

    private async Task DropAllAsync()
    {
        foreach (var name in _made)
        {
            await RunAsync($"drop database if exists \"{name}\" with (force)", CancellationToken.None);
        }
    }

    private async Task RunAsync(string statement, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(
            new NpgsqlConnectionStringBuilder(_admin) { Pooling = false }.ConnectionString);
        await connection.OpenAsync(cancellation);
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync(cancellation);
    }

    private string ConnectionString(string database, string? role, string? password)
    {
        // Idle connections go soon: every class of tests has its own pools, and the server's places are counted.
        var settings = new NpgsqlConnectionStringBuilder(_admin)
        {
            Database = database,
            MaxPoolSize = 20,
            ConnectionIdleLifetime = 5,
            ConnectionPruningInterval = 1,
        };
        if (role is not null)
        {
            settings.Username = role;
            settings.Password = password;
        }

        return settings.ConnectionString;
    }
}
