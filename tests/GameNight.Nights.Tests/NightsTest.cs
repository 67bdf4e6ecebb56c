using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

[assembly: AssemblyFixture(typeof(PostgresFixture))]

namespace GameNight.Nights.Tests;

/// <summary>A test with the app on the database of its class; groups of other tests lie in it too.</summary>
public abstract class NightsTest(ClassDatabase database) : IClassFixture<ClassDatabase>, IAsyncDisposable
{
    /// <summary>Far longer than anything waited for here takes, even on a busy machine.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(40);

    private readonly NightsApp _app = NightsApp.On(database.Database.AppConnectionString);

    protected NightsApp App => _app;

    protected TestDatabase Database => database.Database;

    protected static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    protected static async Task UntilAsync(Func<Task<bool>> isSo, string what)
    {
        var giveUp = DateTime.UtcNow + Patience;
        while (!await isSo())
        {
            Assert.True(DateTime.UtcNow < giveUp, $"Waited in vain: {what}");
            await Task.Delay(50, Cancellation);
        }
    }
}
