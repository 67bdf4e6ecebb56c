using GameNight.Nights;
using Xunit;

namespace GameNight.TestKit.Postgres;

/// <summary>One server for each test process, with one migrated template that every class of tests gets a copy of.</summary>
public sealed class PostgresFixture : IAsyncLifetime
{
    private TestPostgres _server = null!;
    private TestDatabase _template = null!;

    public async ValueTask InitializeAsync()
    {
        _server = await TestPostgres.StartAsync(CancellationToken.None);
        _template = await EmptyAsync();
        await NightsRegistration.MigrateAsync(_template.OwnerConnectionString, CancellationToken.None);
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is not null)
        {
            await _server.DisposeAsync();
        }
    }

    /// <summary>A migrated database of one's own.</summary>
    public Task<TestDatabase> CloneAsync() => _server.CreateAsync(_template.Name, CancellationToken.None);

    /// <summary>A database with the roles and no table.</summary>
    public Task<TestDatabase> EmptyAsync() => _server.CreateAsync(template: null, CancellationToken.None);
}
