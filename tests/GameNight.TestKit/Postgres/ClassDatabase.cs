using Xunit;

namespace GameNight.TestKit.Postgres;

/// <summary>The migrated database of one class of tests. Its tests keep apart by founding groups of their own.</summary>
public sealed class ClassDatabase(PostgresFixture postgres) : IAsyncLifetime
{
    public TestDatabase Database { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Database = await postgres.CloneAsync();

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
