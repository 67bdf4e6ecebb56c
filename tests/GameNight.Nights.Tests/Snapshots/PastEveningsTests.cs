using GameNight.Nights.Erasure;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Nights.Tests.PastNights;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Tests.Snapshots;

public sealed class PastEveningsTests(ClassDatabase database) : PastNightsTest(database)
{
    [Fact]
    public async Task What_was_written_down_of_a_night_is_evidence_for_the_next_one()
    {
        var served = await ServedAsync("Ines", "Jonas", "Kira");
        await WriteAsync(served, NothingNoted with { Came = [Came(served, "Ines", 2)], Baked = Pies(5), SlicesLeft = 0 });
        await SayAsync(served, "Ines", LookBacks.Saying(slices: 7.5));

        var guests = await NextAsync(served);

        var ines = Assert.Single(guests["Ines"]!);
        Assert.Equal((1, AnswerState.Coming, true, 7.5, true), (ines.NightsAgo, ines.Answer, ines.Came, ines.Slices, ines.RanOut));
        Assert.InRange(ines.Slice!.Value.Value, 30, 50);
        Assert.Equal(new PastEvening(1, AnswerState.Coming, Came: false), Assert.Single(guests["Jonas"]!));
    }

    [Fact]
    public async Task How_well_a_guest_was_served_outlives_the_plan_that_said_so_and_not_the_guest()
    {
        var served = await ServedAsync("Ines", "Jonas");
        await WriteAsync(served, NothingNoted with { Came = [Came(served, "Ines", 1), Came(served, "Jonas", 1)], Baked = Pies(3) });
        var before = Assert.Single((await NextAsync(served))["Ines"]!).Served;

        App.Clock.AdvanceDays(DietaryNote.KeptDays + 2);
        await App.Get<Retention>().EraseAsync(Cancellation);

        Assert.NotNull(before);
        Assert.Equal(before, Assert.Single((await NextAsync(served))["Ines"]!).Served);
        await App.Get<GuestRemoval>().RemoveAsync(served.Group.Access, served.Guests["Ines"], Cancellation);
        Assert.Equal(
            [true],
            (await Storage.Rows.ReadAsync(Database.AdminConnectionString, $"select (served is null)::text from invitations where guest_id = '{served.Guests["Ines"].Value}'")).Select(text => text.Contains("true", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_night_of_which_nothing_was_written_down_says_nothing()
    {
        var served = await ServedAsync("Ines");

        Assert.Null((await NextAsync(served))["Ines"]);
    }

    [Fact]
    public async Task Courses_and_the_length_of_a_past_evening_are_taken_off_what_was_eaten()
    {
        var group = await App.FoundGroupAsync();
        var served = await ServedAsync(
            group, new Dictionary<string, GuestId> { ["Ines"] = await App.AddGuestAsync(group) },
            facts => facts with { Courses = [new Course("stew", AppetiteTaken.ALot)], EndsAt = facts.ServeAt.PlusHours(2) });
        await SayAsync(served, "Ines", LookBacks.Saying(slices: 4));

        var ines = Assert.Single((await NextAsync(served))["Ines"]!);

        // The rows of the table: a lot is 35 %, two hours are nine tenths.
        Assert.Null(ines.Came);
        Assert.Equal(0.65 * 0.9, ines.Appetite!.Value.Value, 1e-9);
    }

    [Fact]
    public async Task Who_withdrew_after_the_dough_was_begun_said_until_then_that_they_come()
    {
        var served = await ServedAsync("Ines");
        await BeginAsync(served);
        await using (var session = await App.Get<GroupSessions>().OpenAsync(served.Group.Access, Cancellation))
        {
            var answer = await session.Db.Answers.SingleAsync(row => row.GuestId == served.Guests["Ines"], Cancellation);
            answer.Replace(answer.Facts with { Presence = Presence.NotComing }, Guid.NewGuid(), App.Clock.GetCurrentInstant(), isLate: true);
            await session.CommitAsync(Cancellation);
        }

        await WriteAsync(served, NothingNoted);

        Assert.Equal(new PastEvening(1, AnswerState.Coming, Came: false), Assert.Single((await NextAsync(served))["Ines"]!));
    }

    [Fact]
    public async Task A_group_that_leaves_its_past_out_has_none()
    {
        var served = await ServedAsync("Ines");
        await WriteAsync(served, NothingNoted with { Came = [Came(served, "Ines", 1)] });
        var (kitchen, version) = await App.Kitchen.KitchenAsync(served.Group.Access, Cancellation);
        await App.Kitchen.SetKitchenAsync(served.Group.Access, kitchen with { LeavesPastOut = true }, version, Cancellation);

        Assert.Null((await NextAsync(served))["Ines"]);
    }

    [Fact]
    public async Task The_evidence_goes_with_the_guest()
    {
        var served = await ServedAsync("Ines", "Jonas");
        await WriteAsync(served, NothingNoted with { Came = [Came(served, "Ines", 1), Came(served, "Jonas", 1)] });
        var next = await OpenNextAsync(served);
        await BeginAsync(served with { Id = next });
        await App.Get<GuestRemoval>().RemoveAsync(served.Group.Access, served.Guests["Ines"], Cancellation);

        Assert.DoesNotContain(await GuestsAsync(served, next), guest => guest.Id == served.Guests["Ines"].ToString());
        await using var session = await App.Get<GroupSessions>().OpenAsync(served.Group.Access, Cancellation);
        var begun = DoughCommitments.Read(await session.Db.CommittedDoughs.SingleAsync(row => row.NightId == next, Cancellation));
        Assert.Null(begun.Night.Guests.Single(guest => guest.Id == served.Guests["Ines"].ToString()).Past);
        Assert.NotNull(begun.Night.Guests.Single(guest => guest.Id == served.Guests["Jonas"].ToString()).Past);
    }

    [Fact]
    public async Task A_night_that_comes_later_or_was_called_off_is_no_evidence()
    {
        var served = await ServedAsync("Ines");
        await WriteAsync(served, NothingNoted with { Came = [Came(served, "Ines", 1)] });
        await using var session = await App.Get<GroupSessions>().OpenAsync(served.Group.Access, Cancellation);

        var itself = (await App.Get<NightSnapshots>().LoadAsync(session, served.Id, Cancellation))!;

        Assert.All(itself.Guests, guest => Assert.Null(guest.Past));
        await App.Nights.CancelAsync(served.Group.Access, served.Id, Cancellation);
        Assert.Null((await NextAsync(served))["Ines"]);
    }

    private async Task<IReadOnlyDictionary<string, IReadOnlyList<PastEvening>?>> NextAsync(ServedNight served)
    {
        var guests = await GuestsAsync(served, await OpenNextAsync(served));
        return served.Guests.ToDictionary(row => row.Key, row => guests.Single(guest => guest.Id == row.Value.ToString()).Past);
    }

    private Task<NightId> OpenNextAsync(ServedNight served) => App.OpenNightAsync(
        served.Group, [.. served.Guests.Values], facts => facts with { ServeAt = facts.ServeAt.PlusDays(14), EndsAt = null });

    private async Task<IReadOnlyList<GuestSnapshot>> GuestsAsync(ServedNight served, NightId night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(served.Group.Access, Cancellation);
        return (await App.Get<NightSnapshots>().LoadAsync(session, night, Cancellation))!.Guests;
    }

    private async Task BeginAsync(ServedNight night)
    {
        await using var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation);
        var snapshot = (await App.Get<NightSnapshots>().LoadAsync(session, night.Id, Cancellation))!;
        var plan = App.Get<NightPlanner>().Plan(snapshot, snapshot.ServeAt - Duration.FromDays(4), Effort.Quick, cancellation: Cancellation);
        session.Db.CommittedDoughs.Add(DoughCommitments.Write(
            night.Group.Id, night.Id, App.Clock.GetCurrentInstant(), by: null, snapshot, plan));
        await session.CommitAsync(Cancellation);
    }
}
