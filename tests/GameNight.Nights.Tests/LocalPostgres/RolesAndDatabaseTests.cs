using GameNight.LocalPostgres;
using GameNight.TestKit.Postgres;
using Npgsql;

namespace GameNight.Nights.Tests.LocalPostgres;

public sealed class RolesAndDatabaseTests(EmptyServer empty) : IClassFixture<EmptyServer>, IAsyncLifetime
{
    private TestDatabase _database = null!;

    public async ValueTask InitializeAsync()
    {
        _database = await empty.Server.CreateAsync(template: null, TestContext.Current.CancellationToken);
    }

    public ValueTask DisposeAsync()
    {
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task The_owner_owns_the_database_and_is_no_superuser()
    {
        Assert.Equal(
            "gamenight_owner",
            await Servers.AskAsync<string>(
                _database.OwnerConnectionString,
                "select pg_get_userbyid(datdba)::text from pg_database where datname = current_database()"));
        Assert.False(await Servers.AskAsync<bool>(_database.OwnerConnectionString, Powers));
    }

    [Fact]
    public async Task The_app_owns_nothing_and_has_no_powers()
    {
        await Servers.TellAsync(_database.OwnerConnectionString, "create table nights (id int)");

        Assert.False(await Servers.AskAsync<bool>(_database.AppConnectionString, Powers));
        Assert.Equal(
            0,
            await Servers.AskAsync<long>(
                _database.AdminConnectionString,
                "select count(*) from pg_shdepend where refobjid = 'gamenight_app'::regrole and deptype = 'o'"));
    }

    [Theory]
    [InlineData("create table mine (id int)")]
    [InlineData("create temporary table mine (id int)")]
    [InlineData("create schema mine")]
    [InlineData("create table migrations.mine (id int)")]
    [InlineData("set role gamenight_owner")]
    public async Task The_app_cannot(string statement)
    {
        var refusal = await Assert.ThrowsAsync<PostgresException>(
            () => Servers.TellAsync(_database.AppConnectionString, statement));

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refusal.SqlState);
    }

    [Fact]
    public async Task The_app_reads_and_writes_rows_of_the_owners_tables()
    {
        await Servers.TellAsync(
            _database.OwnerConnectionString, "create table guests (id int generated always as identity, name text)");

        await Servers.TellAsync(
            _database.AppConnectionString,
            "insert into guests (name) values ('Ann'), ('Bo'); update guests set name = 'Bob' where name = 'Bo'; "
            + "delete from guests where name = 'Ann'");

        Assert.Equal("Bob", await Servers.AskAsync<string>(_database.AppConnectionString, "select name from guests"));
        await Assert.ThrowsAsync<PostgresException>(
            () => Servers.TellAsync(_database.AppConnectionString, "truncate guests"));
    }

    [Fact]
    public async Task The_app_reads_the_migration_history_and_cannot_write_it()
    {
        await Servers.TellAsync(
            _database.OwnerConnectionString,
            $"create table {RolesAndDatabase.MigrationHistorySchema}.history as select 'First' as name");

        Assert.Equal(
            "First", await Servers.AskAsync<string>(_database.AppConnectionString, "select name from migrations.history"));
        await Assert.ThrowsAsync<PostgresException>(
            () => Servers.TellAsync(_database.AppConnectionString, "delete from migrations.history"));
    }

    [Fact]
    public async Task Making_them_again_changes_nothing_and_repairs_what_was_loosened()
    {
        await Servers.TellAsync(_database.OwnerConnectionString, "create table tables as select 1 as one");
        await Servers.TellAsync(
            _database.AdminConnectionString,
            $"grant create on schema public to public; grant temporary on database \"{_database.Name}\" to public");

        var elsewhere = new NpgsqlConnectionStringBuilder(_database.AdminConnectionString) { Database = "postgres" };
        await RolesAndDatabase.EnsureAsync(
            elsewhere.ConnectionString, _database.Name, RolePasswords.None, TestContext.Current.CancellationToken);

        Assert.Equal(1, await Servers.AskAsync<int>(_database.AppConnectionString, "select one from tables"));
        await Assert.ThrowsAsync<PostgresException>(
            () => Servers.TellAsync(_database.AppConnectionString, "create table mine (id int)"));
    }

    [Fact]
    public async Task Copies_of_a_template_carry_its_rows_and_its_bounds()
    {
        await Servers.TellAsync(_database.OwnerConnectionString, "create table toppings as select 'basil' as name");

        var copies = await Task.WhenAll(Enumerable.Range(0, 3).Select(
            _ => empty.Server.CreateAsync(_database.Name, TestContext.Current.CancellationToken)));

        foreach (var copy in copies)
        {
            Assert.Equal("basil", await Servers.AskAsync<string>(copy.AppConnectionString, "select name from toppings"));
            await Servers.TellAsync(copy.OwnerConnectionString, "create table later as select 1 as one");
            Assert.Equal(1, await Servers.AskAsync<int>(copy.AppConnectionString, "select one from later"));
            await Assert.ThrowsAsync<PostgresException>(
                () => Servers.TellAsync(copy.AppConnectionString, "create temporary table mine (id int)"));
        }
    }

    private const string Powers =
        "select rolsuper or rolbypassrls or rolcreaterole or rolcreatedb or rolreplication "
        + "from pg_roles where rolname = current_user";
}
