using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Nights.Tests.LocalPostgres;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace GameNight.Nights.Tests.Storage;

public sealed class DatabaseGoneTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task Every_door_says_the_same_when_nothing_answers()
    {
        await using var nowhere = NightsApp.On("Host=127.0.0.1;Port=1;Timeout=2;Database=none;Username=nobody");
        var link = LinkToken.TryParse(new string('A', LinkToken.Length))!.Value;
        var host = new HostId(Guid.NewGuid());
        Func<Task>[] doors =
        [
            () => nowhere.LookAsync(link),
            () => nowhere.AnswerAsync(link, Answers.Coming()),
            () => nowhere.GuestBook.DisownAsync(link, Cancellation),
            () => nowhere.Groups.EnterAsync(host, GroupId.New(), Cancellation),
            () => nowhere.Groups.GroupsOfAsync(host, Cancellation),
            () => nowhere.Groups.FoundAsync(host, "Hana", "Table", "Europe/Berlin", Cancellation),
            () => nowhere.Accounts.AreNoneAsync(Cancellation),
            () => nowhere.SignUpAsync("Hana"),
        ];

        foreach (var door in doors)
        {
            await Assert.ThrowsAsync<NightsUnavailableException>(door);
        }
    }

    [Fact]
    public async Task A_connection_that_ends_during_a_save_keeps_nothing_and_the_next_save_works()
    {
        var group = await App.FoundGroupAsync();
        var before = await Rows.EverythingAsync(Database);
        await using (var session = await App.Get<GroupSessions>().OpenAsync(group.Access, Cancellation))
        {
            session.Db.Guests.Add(new Guest(group.Id, GuestId.New(), "Half", PortionClass.Adult, null));
            await session.Db.SaveChangesAsync(Cancellation);
            session.Db.Guests.Add(new Guest(group.Id, GuestId.New(), "Other half", PortionClass.Adult, null));
            await EndAsync(session);

            await Assert.ThrowsAsync<NightsUnavailableException>(() => session.CommitAsync(Cancellation));
        }

        Assert.Equal(before, await Rows.EverythingAsync(Database));
        await App.AddGuestAsync(group, "Whole");
        Assert.Contains("Whole", (await App.GuestList.GuestsAsync(group.Access, Cancellation)).Select(guest => guest.Name));
    }

    [Fact]
    public async Task A_connection_that_ends_during_a_reading_is_told_the_same_way()
    {
        var group = await App.FoundGroupAsync();
        await using var session = await App.Get<GroupSessions>().OpenAsync(group.Access, Cancellation);
        await EndAsync(session);

        await Assert.ThrowsAsync<NightsUnavailableException>(() => session.Db.Guests.ToListAsync(Cancellation));
    }

    [Fact]
    public async Task A_broken_rule_is_not_taken_for_a_database_that_is_away()
    {
        var group = await App.FoundGroupAsync();
        await using var session = await App.Get<GroupSessions>().OpenAsync(group.Access, Cancellation);
        session.Db.Guests.Add(new Guest(GroupId.New(), GuestId.New(), "Stray", PortionClass.Adult, null));

        await Assert.ThrowsAsync<DbUpdateException>(() => session.CommitAsync(Cancellation));
    }

    [Fact]
    public async Task An_answer_sent_while_the_server_is_down_can_be_sent_again_when_it_is_back()
    {
        await using var root = await TemporaryDataRoot.MakeAsync(Cancellation);
        var server = await Servers.StartedAsync(root.Settings);
        await NightsRegistration.MigrateAsync(server.OwnerConnectionString, Cancellation);
        await using var app = NightsApp.On(server.AppConnectionString);
        var night = await app.OpenNightForOneGuestAsync();
        var answer = Answers.Coming();

        await server.DisposeAsync();
        await Assert.ThrowsAsync<NightsUnavailableException>(() => app.AnswerAsync(night.Link, answer));

        await using var back = await Servers.StartedAsync(root.Settings);
        Assert.IsType<AnswerResult.Recorded>(await app.AnswerAsync(night.Link, answer));
        Assert.Equal(1, (await app.LookAsync(night.Link))!.Revision);
    }

    private async Task EndAsync(GroupSession session)
    {
        var backend = ((NpgsqlConnection)session.Db.Database.GetDbConnection()).ProcessID;
        await Rows.TellAsync(Database.AdminConnectionString, $"select pg_terminate_backend({backend})");
    }
}
