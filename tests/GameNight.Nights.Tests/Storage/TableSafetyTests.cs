using GameNight.Nights.Storage;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Storage;

public sealed class TableSafetyTests(PostgresFixture postgres, ClassDatabase database)
    : IClassFixture<ClassDatabase>
{
    [Fact]
    public async Task Every_table_is_walled_off_by_group_or_known_to_hold_no_group_content() =>
        Assert.Empty(await TableSafety.ProblemsAsync(database.Database.AdminConnectionString));

    [Fact]
    public async Task Every_table_called_global_is_there()
    {
        var tables = await Rows.ReadAsync(database.Database.AdminConnectionString, Rows.Tables);

        Assert.Empty(RowLevelSecurity.GlobalTables.Except(tables));
    }

    [Theory]
    [InlineData(
        "create table scores (group_id uuid, id uuid, primary key (group_id, id))", "scores has no row-level security")]
    [InlineData(
        "create table scores (group_id uuid, id uuid, primary key (group_id, id)); alter table scores enable row level security",
        "scores does not force it on its owner")]
    [InlineData(
        """
        create table scores (group_id uuid, id uuid, primary key (group_id, id));
        alter table scores enable row level security; alter table scores force row level security;
        create policy own_group on scores using (true)
        """,
        "scores has a policy that asks for no group")]
    [InlineData("create table scores (id uuid primary key, group_id uuid)", "scores does not begin its key with the group")]
    [InlineData("create table scores (note text)", "scores does not begin its key with the group")]
    [InlineData("create view scores as select * from guests", "scores is no table")]
    [InlineData(
        """
        create table scores (group_id uuid, id uuid, guest_id uuid, primary key (group_id, id));
        alter table guests add unique (id); alter table scores enable row level security;
        alter table scores add constraint scores_guest foreign key (guest_id) references guests (id)
        """,
        "scores_guest may cross groups")]
    public async Task A_new_table_that_is_not_is_found(string made, string problem)
    {
        var clone = await postgres.CloneAsync();
        await Rows.TellAsync(clone.OwnerConnectionString, made);

        Assert.Contains(problem, await TableSafety.ProblemsAsync(clone.AdminConnectionString));
    }

    [Fact]
    public async Task A_new_table_with_the_usual_policy_is_fine()
    {
        var clone = await postgres.CloneAsync();
        await Rows.TellAsync(
            clone.OwnerConnectionString,
            "create table scores (group_id uuid, id uuid, primary key (group_id, id));"
            + RowLevelSecurity.ForGroupTable("scores"));

        Assert.Empty(await TableSafety.ProblemsAsync(clone.AdminConnectionString));
    }

    [Fact]
    public async Task The_serving_role_owns_nothing_and_cannot_pass_the_walls()
    {
        Assert.Equal(["0"], await Rows.ReadAsync(
            database.Database.AdminConnectionString,
            "select count(*) from pg_shdepend where refobjid = 'gamenight_app'::regrole and deptype = 'o'"));
        Assert.Equal(["False", "False"], await Rows.ReadAsync(
            database.Database.AdminConnectionString,
            "select rolsuper or rolbypassrls from pg_roles where rolname in ('gamenight_app', 'gamenight_owner')"));
    }
}
