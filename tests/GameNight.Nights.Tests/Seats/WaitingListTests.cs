using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Nights.Tests.Messages;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Seats;

public sealed class WaitingListTests(ClassDatabase database) : MessagesTest(database)
{
    [Fact]
    public async Task Who_waits_moves_up_in_the_order_they_came_and_is_told_once()
    {
        var (group, night, guests) = await FullAsync(seats: 2, waiting: 3);
        Assert.Equal([null, 1, 2, 3], await PlacesAsync(group, night, guests));

        await SayAsync(group, night, guests[0], Answers.NotComing(revision: 1));
        await DeliverAsync();
        await DeliverAsync();

        Assert.Equal([null, null, 1, 2], await PlacesAsync(group, night, guests));
        Assert.Equal(["Seat guest2"], Sent(night));
        Assert.Equal("4 Elm Street", Carrier.Letters[^1].Night.Address);
        var seen = await LookAsync(group, night, guests[1]);
        Assert.Equal((2, null, "4 Elm Street"), (seen.Table!.Seats, seen.Table.Place, seen.Address));
    }

    [Fact]
    public async Task Who_waits_is_not_expected_reads_no_address_and_sees_only_their_own_place()
    {
        var (group, night, guests) = await FullAsync(seats: 2, waiting: 2);

        var seen = await LookAsync(group, night, guests[2]);

        Assert.Equal((new TableView(2, 0, 2, HasSeat: false), null, 2), (seen.Table, seen.Address, seen.Others.Heads));
        Assert.Equal(Presence.Undecided, seen.Calendar.Presence);
        var snapshot = await SnapshotAsync(group, night);
        Assert.Equal(2, snapshot.Guests.Count);
        Assert.DoesNotContain(snapshot.Guests, guest => guest.Id == guests[1].ToString());
        Assert.Equal(2, (await Sending.Nights.NightsAsync(group.Access, Cancellation)).Single(line => line.Id == night).Coming);
    }

    [Fact]
    public async Task Hosts_read_on_their_own_link_that_they_sit_and_others_that_the_table_is_full()
    {
        var (group, night, guests) = await NightAsync(2);
        await MoveAsync(group, night, facts => facts with { Seats = 2 });
        await SayAsync(group, night, guests[0], Answers.Coming());
        var host = (await Sending.ViewAsync(group, night)).Guests.Single(row => row.IsHost);

        Assert.True((await LookAsync(group, night, host.Id)).Table!.HasSeat);
        Assert.True((await LookAsync(group, night, guests[0])).Table!.HasSeat);
        Assert.Equal(new TableView(2, 0, null, HasSeat: false), (await LookAsync(group, night, guests[1])).Table);
    }

    [Fact]
    public async Task Who_could_only_wait_is_not_expected_until_a_seat_is_free()
    {
        var (group, night, guests) = await NightAsync(3);
        await MoveAsync(group, night, facts => facts with { Seats = 2 });
        Assert.Contains((await SnapshotAsync(group, night)).Guests, guest => guest.Id == guests[2].ToString());

        await SayAsync(group, night, guests[0], Answers.Coming());
        var full = await SnapshotAsync(group, night);
        await SayAsync(group, night, guests[0], Answers.NotComing(revision: 1));

        Assert.DoesNotContain(full.Guests, guest => guest.Id == guests[1].ToString() || guest.Id == guests[2].ToString());
        Assert.Contains((await SnapshotAsync(group, night)).Guests, guest => guest.Id == guests[2].ToString());
    }

    [Fact]
    public async Task A_party_that_does_not_fit_is_passed_over_and_keeps_its_place()
    {
        var (group, night, guests) = await NightAsync(3);
        await MoveAsync(group, night, facts => facts with { Seats = 2 });
        await SayAsync(group, night, guests[0], Answers.Coming());
        await SayAsync(group, night, guests[1], Answers.Coming(companions: 1));
        await SayAsync(group, night, guests[2], Answers.Coming());
        Assert.Equal([null, 1, 2], await PlacesAsync(group, night, guests));

        await SayAsync(group, night, guests[0], Answers.NotComing(revision: 1));
        Assert.Equal([null, 1, null], await PlacesAsync(group, night, guests));

        await MoveAsync(group, night, facts => facts with { Seats = 4 });
        Assert.Equal([null, null, null], await PlacesAsync(group, night, guests));
        Assert.Equal(2, (await LookAsync(group, night, guests[1])).Answer!.SeatsWanted);
    }

    [Fact]
    public async Task Who_would_come_alone_gets_the_one_seat_without_companions_and_their_must_nots()
    {
        var (group, night, guests) = await NightAsync(2);
        await MoveAsync(group, night, facts => facts with { Seats = 2 });
        await SayAsync(group, night, guests[0], Answers.Coming());
        var party = Answers.Coming(companions: 2).WithNote("", DietaryNeeds.None, Answers.Avoiding(Allergen.Nuts), Answers.Avoiding(Allergen.Milk));
        await SayAsync(group, night, guests[1], party with { Facts = party.Facts with { AloneIfNeeded = true } });
        Assert.Equal([null, 1], await PlacesAsync(group, night, guests));

        await SayAsync(group, night, guests[0], Answers.NotComing(revision: 1));

        var seated = await Sending.InvitedAsync(group, night, guests[1]);
        Assert.Equal((null, 0, 1), (seated.WaitingPlace, seated.Answer!.Companions.Count, seated.Needs.Count));
        Assert.Equal(2, seated.Revision);
    }

    [Fact]
    public async Task Who_sits_cannot_bring_more_than_there_are_seats_and_loses_nothing()
    {
        var (group, night, guests) = await NightAsync(2);
        await MoveAsync(group, night, facts => facts with { Seats = 3 });
        await SayAsync(group, night, guests[0], Answers.Coming());

        var refused = await SayAsync(group, night, guests[0], Answers.Coming(revision: 1, companions: 2));
        Assert.Equal(new AnswerResult.Refused(AnswerFault.NoSeatForCompanions, 1), refused);
        Assert.Empty((await Sending.InvitedAsync(group, night, guests[0])).Answer!.Companions);

        Assert.IsType<AnswerResult.Recorded>(await SayAsync(group, night, guests[0], Answers.Coming(revision: 1, companions: 1)));
        Assert.Equal(3, (await Sending.ViewAsync(group, night)).SeatsTaken);
    }

    [Theory]
    [InlineData("remote")]
    [InlineData("undecided")]
    [InlineData("removed")]
    [InlineData("uninvited")]
    [InlineData("more seats")]
    [InlineData("no seats")]
    public async Task Whatever_frees_a_seat_moves_up_who_waits(string how)
    {
        var (group, night, guests) = await FullAsync(seats: 2, waiting: 1);
        var coming = Answers.Coming(revision: 1);

        switch (how)
        {
            case "remote":
                await SayAsync(group, night, guests[0], coming with { Facts = coming.Facts with { Remotely = true } });
                break;
            case "undecided":
                await SayAsync(group, night, guests[0], coming with { Facts = coming.Facts with { Presence = Presence.Undecided } });
                break;
            case "removed":
                await Sending.Get<GuestRemoval>().RemoveAsync(group.Access, guests[0], Cancellation);
                break;
            case "uninvited":
                await Sending.Invitations.UninviteAsync(group.Access, night, guests[0], Cancellation);
                break;
            case "more seats":
                await MoveAsync(group, night, facts => facts with { Seats = 3 });
                break;
            default:
                await MoveAsync(group, night, facts => facts with { Seats = null });
                break;
        }

        await DeliverAsync();

        Assert.Null((await Sending.InvitedAsync(group, night, guests[1])).WaitingPlace);
        Assert.Equal(["Seat guest2"], Sent(night));
    }

    [Fact]
    public async Task A_message_of_a_seat_is_not_sent_when_it_holds_no_more()
    {
        var (group, night, guests) = await FullAsync(seats: 2, waiting: 1);
        await SayAsync(group, night, guests[0], Answers.NotComing(revision: 1));
        await SayAsync(group, night, guests[1], Answers.NotComing(revision: 2));

        await DeliverAsync();

        Assert.Empty(Sent(night));
    }

    [Fact]
    public async Task A_seat_that_becomes_free_in_the_night_is_theirs_at_once_and_told_in_the_morning()
    {
        var (group, night, guests) = await FullAsync(seats: 2, waiting: 1);
        Clock.Reset(Instant.FromUtc(2026, 12, 10, 22, 30));
        await SayAsync(group, night, guests[0], Answers.NotComing(revision: 1));
        await DeliverAsync();
        Assert.Null((await Sending.InvitedAsync(group, night, guests[1])).WaitingPlace);
        Assert.Empty(Sent(night));

        Clock.Reset(Instant.FromUtc(2026, 12, 11, 9, 0));
        await DeliverAsync();
        Assert.Equal(["Seat guest2"], Sent(night));
    }

    [Fact]
    public async Task A_night_called_off_while_a_seat_waits_for_the_morning_is_told_at_once()
    {
        var (group, night, guests) = await FullAsync(seats: 2, waiting: 1);
        Clock.Reset(Instant.FromUtc(2026, 12, 10, 22, 30));
        await SayAsync(group, night, guests[0], Answers.NotComing(revision: 1));
        await DeliverAsync();
        Clock.AdvanceMinutes(1);
        await Sending.Nights.CancelAsync(group.Access, night, Cancellation);

        await DeliverAsync();

        Assert.Equal(["Cancellation guest2"], Sent(night));
    }

    [Fact]
    public async Task After_the_first_pie_nobody_moves_up()
    {
        var (group, night, guests) = await FullAsync(seats: 2, waiting: 1);
        Clock.Reset(Instant.FromUtc(2026, 12, 12, 18, 31));

        await SayAsync(group, night, guests[0], Answers.NotComing(revision: 1));

        Assert.Equal(1, (await Sending.InvitedAsync(group, night, guests[1])).WaitingPlace);
    }

    [Theory]
    [InlineData(0, DraftFault.OutOfRange, 1)]
    [InlineData(301, DraftFault.OutOfRange, 1)]
    [InlineData(1, DraftFault.FewerThanSeated, 2)]
    public async Task Seats_that_cannot_be_are_refused(int seats, DraftFault fault, int low)
    {
        var (group, night, _) = await FullAsync(seats: 2, waiting: 1);
        var view = await Sending.ViewAsync(group, night);

        var refused = Assert.IsType<NightResult.Refused>(await Sending.Nights.ChangeNightAsync(
            group.Access, night, view.Facts with { Seats = seats }, view.Version, Cancellation));

        Assert.Equal(new DraftProblem("seats", fault, low, 300), Assert.Single(refused.Problems));
    }

    [Fact]
    public async Task A_night_called_off_and_on_again_fills_its_table()
    {
        var (group, night, guests) = await FullAsync(seats: 2, waiting: 1);
        await Sending.Nights.CancelAsync(group.Access, night, Cancellation);
        await Sending.Get<GuestRemoval>().RemoveAsync(group.Access, guests[0], Cancellation);
        Assert.Equal(1, (await Sending.InvitedAsync(group, night, guests[1])).WaitingPlace);

        await Sending.Nights.ReinstateAsync(group.Access, night, Cancellation);

        Assert.Null((await Sending.InvitedAsync(group, night, guests[1])).WaitingPlace);
    }

    /// <summary>The host and the first guest sit; the others wait.</summary>
    private async Task<(FoundedGroup Group, NightId Night, IReadOnlyList<GuestId> Guests)> FullAsync(int seats, int waiting)
    {
        var (group, night, guests) = await NightAsync(1 + waiting);
        await MoveAsync(group, night, facts => facts with { Seats = seats });
        foreach (var guest in guests)
        {
            await SayAsync(group, night, guest, Answers.Coming());
        }

        return (group, night, guests);
    }

    private async Task<AnswerResult> SayAsync(FoundedGroup group, NightId night, GuestId guest, GuestAnswer answer) =>
        await Sending.AnswerAsync(await Sending.LinkAsync(group, night, guest), answer);

    private async Task<InvitationView> LookAsync(FoundedGroup group, NightId night, GuestId guest) =>
        (await Sending.LookAsync(await Sending.LinkAsync(group, night, guest)))!;

    private async Task<IReadOnlyList<int?>> PlacesAsync(FoundedGroup group, NightId night, IReadOnlyList<GuestId> guests)
    {
        var view = await Sending.ViewAsync(group, night);
        return [.. guests.Select(guest => view.Guests.Single(row => row.Id == guest).WaitingPlace)];
    }

    private async Task<NightSnapshot> SnapshotAsync(FoundedGroup group, NightId night)
    {
        await using var session = await Sending.Get<GroupSessions>().OpenAsync(group.Access, Cancellation);
        return (await Sending.Get<NightSnapshots>().LoadAsync(session, night, Cancellation))!;
    }
}
