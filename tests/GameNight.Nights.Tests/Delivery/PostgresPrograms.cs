using GameNight.LocalPostgres;
using GameNight.Nights.Tests.LocalPostgres;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Delivery;

/// <summary>
/// A private server together with its own psql, pg_dump and pg_restore, which the package of server programs lacks: those
/// of an installed Postgres. There is none on every machine.
/// </summary>
public sealed class PostgresPrograms : IAsyncLifetime
{
    private const string InstalledServers = "/usr/lib/postgresql";

    private TemporaryDataRoot? _root;
    private PrivatePostgres? _server;

    /// <summary>Null where no such Postgres is installed.</summary>
    public string? BinFolder { get; } = Directory.Exists(InstalledServers)
        ? Directory.EnumerateDirectories(InstalledServers).Select(version => Path.Combine(version, "bin"))
            .Where(bin => ((string[])["postgres", "initdb", "psql", "pg_dump", "pg_restore"]).All(program => File.Exists(Path.Combine(bin, program))))
            .OrderDescending().FirstOrDefault()
        : null;

    public TestPostgres Server { get; private set; } = null!;

    public string SocketFolder { get; private set; } = "";

    public async ValueTask InitializeAsync()
    {
        if (BinFolder is not null)
        {
            _root = await TemporaryDataRoot.MakeAsync(TestContext.Current.CancellationToken);
            _server = await Servers.StartedAsync(_root.Settings with { BinFolder = BinFolder });
            Server = TestPostgres.On(_server.AdminConnectionString);
            SocketFolder = new Npgsql.NpgsqlConnectionStringBuilder(_server.AdminConnectionString).Host!;
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is not null)
        {
            await Server.DisposeAsync();
            await _server.DisposeAsync();
            await _root!.DisposeAsync();
        }
    }
}
