using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.LocalPostgres;

/// <summary>A server without any tables, shared by the tests of one class.</summary>
public sealed class EmptyServer : IAsyncLifetime
{
    public TestPostgres Server { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Server = await TestPostgres.StartAsync(TestContext.Current.CancellationToken);
    }

    public ValueTask DisposeAsync()
    {
        return Server.DisposeAsync();
    }
}
