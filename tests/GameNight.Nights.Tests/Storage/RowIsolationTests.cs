using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning.Guests;
using GameNight.Planning.Live;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;
using Npgsql;

namespace GameNight.Nights.Tests.Storage;

/// <summary>Two groups with rows in every table; whoever is inside the one meets nothing of the other.</summary>
public sealed class RowIsolationTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task Nobody_sees_another_groups_rows()
    {
        var (ours, theirs) = await TwoGroupsAsync();
        foreach (var table in await GroupTablesAsync())
        {
            var own = table == "groups" ? "id" : "group_id";
            var seen = await Rows.SeenFromAsync(
                Database.AppConnectionString, ours.Group.Id, $"select distinct {own}::text from {table}");

            Assert.Equal([$"{ours.Group.Id.Value}"], seen);
            Assert.NotEmpty(await Rows.ReadAsync(
                Database.AdminConnectionString, $"select 1 from {table} where {own} = '{theirs.Group.Id.Value}'"));
        }
    }

    [Theory]
    [InlineData("gamenight_app")]
    [InlineData("gamenight_owner")]
    public async Task Outside_every_group_there_are_no_rows(string role)
    {
        await TwoGroupsAsync();
        var asRole = role == "gamenight_app" ? Database.AppConnectionString : Database.OwnerConnectionString;
        foreach (var table in await GroupTablesAsync())
        {
            Assert.Equal(["0"], await Rows.SeenFromAsync(asRole, null, $"select count(*) from {table}"));
        }
    }

    [Fact]
    public async Task Nobody_changes_or_removes_another_groups_rows()
    {
        var (ours, theirs) = await TwoGroupsAsync();
        foreach (var table in await GroupTablesAsync())
        {
            var (own, them) = (table == "groups" ? "id" : "group_id", theirs.Group.Id.Value);

            Assert.Equal(0, await Rows.TryAsync(
                Database.AppConnectionString, ours.Group.Id, $"update {table} set {own} = {own} where {own} = '{them}'"));
            Assert.Equal(0, await Rows.TryAsync(
                Database.AppConnectionString, ours.Group.Id, $"delete from {table} where {own} = '{them}'"));
        }
    }

    [Fact]
    public async Task Nobody_adds_rows_to_another_group_or_moves_rows_there()
    {
        var (ours, theirs) = await TwoGroupsAsync();
        foreach (var table in await GroupTablesAsync())
        {
            var (own, them) = (table == "groups" ? "id" : "group_id", theirs.Group.Id.Value);
            var row = (await Rows.ReadAsync(
                Database.AdminConnectionString, $"select row_to_json(t) from {table} t where {own} = '{them}' limit 1"))[0];

            await IsRefusedAsync(
                $"insert into {table} select * from jsonb_populate_record(null::{table}, '{row.Replace("'", "''", StringComparison.Ordinal)}')");
            await IsRefusedAsync($"update {table} set {own} = '{them}'");
        }

        async Task IsRefusedAsync(string statement)
        {
            var refusal = await Assert.ThrowsAsync<PostgresException>(
                () => Rows.TryAsync(Database.AppConnectionString, ours.Group.Id, statement));
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refusal.SqlState);
        }
    }

    [Fact]
    public async Task Keys_cannot_point_into_another_group()
    {
        var (ours, theirs) = await TwoGroupsAsync();
        var (us, otherGuest, otherNight) = (ours.Group.Id.Value, theirs.Guest.Value, theirs.Night.Value);
        string[] statements =
        [
            Invitation(ours.Night.Value, otherGuest),
            Invitation(otherNight, ours.Guest.Value),
            $"insert into plans select '{us}', '{otherNight}', 1, '', '', 'Quick', 0, now(), null, null, '{{}}'",
            $"insert into answers select '{us}', '{otherNight}', '{otherGuest}', '{{}}', 1, gen_random_uuid(), now(), false",
        ];

        foreach (var statement in statements)
        {
            var refusal = await Assert.ThrowsAsync<PostgresException>(
                () => Rows.TryAsync(Database.AppConnectionString, ours.Group.Id, statement));
            Assert.Equal(PostgresErrorCodes.ForeignKeyViolation, refusal.SqlState);
        }

        string Invitation(Guid night, Guid guest) =>
            $"insert into invitations (group_id, night_id, guest_id, link_generation) values ('{us}', '{night}', '{guest}', 1)";
    }

    [Fact]
    public async Task A_group_set_for_one_transaction_is_gone_in_the_next()
    {
        var (ours, _) = await TwoGroupsAsync();
        await using (var session = await App.Get<GroupSessions>().OpenAsync(ours.Group.Access, Cancellation))
        {
            await session.CommitAsync(Cancellation);
        }

        await using var db = await App.Get<GroupSessions>().OpenGlobalAsync(Cancellation);

        Assert.Empty(db.Guests);
    }

    private async Task<List<string>> GroupTablesAsync() =>
        [.. (await Rows.ReadAsync(Database.AdminConnectionString, Rows.Tables)).Except(RowLevelSecurity.GlobalTables)];

    private async Task<(GuestNight Ours, GuestNight Theirs)> TwoGroupsAsync() => (await FullAsync(), await FullAsync());

    private async Task<GuestNight> FullAsync()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote("No nuts, please"));
        await Rows.TellAsync(
            Database.AdminConnectionString,
            $"insert into plans select '{night.Group.Id.Value}', '{night.Night.Value}', 1, '', '', 'Quick', 0, now(), null, null, '{{}}'");
        await using var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation);
        session.Db.AddRange(RowsOfTheRest(night, App.Clock.GetCurrentInstant()));
        await session.CommitAsync(Cancellation);
        return night;
    }

    private static IEnumerable<object> RowsOfTheRest(GuestNight night, Instant now)
    {
        var (group, id, guest) = (night.Group.Id, night.Night, night.Guest);
        yield return new CommittedDough(group, id, now, night.Group.Host, SavedPlan.CurrentEnvelope, "{}", "{}");
        yield return new BakeLog(group, id, new BakeLogFacts([], null, null, [], ""), now);
        yield return new LookBack(
            group, id, guest, new LookBackFacts(Enough.Right, Evening.Fine, 3, [], "", Namelessly: true), Guid.NewGuid(), now);
        yield return new RememberedWishes(
            group, guest, new WishFacts(Hunger.AsUsual, new Dictionary<string, Liking>(), DietaryNeeds.None), now);
        yield return new Message(group, MessageId.New(), id, guest, MessageKind.Invitation, 1, MessageState.ForHand, now);
        var question = DateChoiceId.New();
        var evening = now.InUtc().LocalDateTime.PlusDays(20);
        yield return new DateChoice(
            group, question, new DateChoiceFacts("Which evening", "Europe/Lisbon", [evening], 2, evening.PlusDays(-3)), night.Group.Host, now);
        yield return new AskedGuest(group, question, guest, AskedGuestId.New(), isNeeded: false);
        yield return new LiveTap(group, id, Guid.NewGuid(), new LiveMark("1", now, LiveMarkKind.StepDone, "sauce"), night.Group.Host);
        yield return new WorkReminder(group, WorkReminderId.New(), id, night.Group.Host, now, now);
        yield return new HostInvitation(
            group, HostInvitationId.New(), "Noor", HostRole.Cook, seesNotes: false, night.Group.Host, now);
    }
}
