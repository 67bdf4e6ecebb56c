using GameNight.Nights.Storage;
using GameNight.TestKit.Postgres;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Tests.Storage;

public sealed class MigrationTests(PostgresFixture postgres)
{
    [Fact]
    public async Task Bring_an_empty_database_to_the_end_and_change_nothing_the_second_time()
    {
        var database = await postgres.EmptyAsync();

        await NightsRegistration.MigrateAsync(database.OwnerConnectionString, TestContext.Current.CancellationToken);
        var once = await SchemaAsync(database);
        await NightsRegistration.MigrateAsync(database.OwnerConnectionString, TestContext.Current.CancellationToken);

        await using var db = Open(database.AppConnectionString);
        Assert.Empty(await db.Database.GetPendingMigrationsAsync(TestContext.Current.CancellationToken));
        Assert.NotEmpty(await db.Database.GetAppliedMigrationsAsync(TestContext.Current.CancellationToken));
        Assert.Equal(once, await SchemaAsync(database));
    }

    [Fact]
    public async Task Are_the_whole_model()
    {
        await using var db = Open("Host=nowhere");

        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task Are_not_for_the_serving_role()
    {
        var database = await postgres.EmptyAsync();

        await Assert.ThrowsAnyAsync<Exception>(
            () => NightsRegistration.MigrateAsync(database.AppConnectionString, TestContext.Current.CancellationToken));

        Assert.Empty(await Rows.ReadAsync(database.AdminConnectionString, Rows.Tables));
    }

    private static GameNightDb Open(string connectionString) =>
        new(new DbContextOptionsBuilder<GameNightDb>().UseGameNightPostgres(connectionString).Options);

    private static Task<List<string>> SchemaAsync(TestDatabase database) => Rows.ReadAsync(
        database.AdminConnectionString,
        "select concat_ws(' ', table_schema, table_name, column_name, data_type) from information_schema.columns "
        + "where table_schema in ('public', 'migrations') order by 1");
}
