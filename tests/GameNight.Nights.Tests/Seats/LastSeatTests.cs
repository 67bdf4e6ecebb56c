using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Seats;

/// <summary>The table under many hands at once, on a real database.</summary>
public sealed class LastSeatTests(ClassDatabase database) : NightsTest(database)
{
    private const int Rounds = 20;

    [Fact]
    public async Task The_last_seat_goes_to_exactly_one_of_those_who_answer_at_once()
    {
        const int rivals = 4;
        var group = await App.FoundGroupAsync();
        var guests = await Task.WhenAll(Enumerable.Range(0, rivals).Select(number => App.AddGuestAsync(group, $"Rival {number}")));
        for (var round = 0; round < Rounds; round++)
        {
            // The host has one of the two seats.
            var night = await App.OpenNightAsync(group, guests, facts => facts with { Seats = 2 });
            var links = new List<LinkToken>();
            foreach (var guest in guests)
            {
                links.Add(await App.LinkAsync(group, night, guest));
            }

            var results = await Task.WhenAll(links.Select(link => App.AnswerAsync(link, Answers.Coming())));

            Assert.All(results, result => Assert.IsType<AnswerResult.Recorded>(result));
            var view = await App.ViewAsync(group, night);
            Assert.Equal(2, view.SeatsTaken);
            Assert.Equal(
                [null, null, 1, 2, 3],
                view.Guests.Select(row => row.WaitingPlace).Order());
        }
    }

    [Fact]
    public async Task A_seat_given_back_while_others_answer_is_lost_to_nobody()
    {
        var group = await App.FoundGroupAsync();
        var guests = await Task.WhenAll(Enumerable.Range(0, 4).Select(number => App.AddGuestAsync(group, $"Rival {number}")));
        for (var round = 0; round < Rounds; round++)
        {
            var night = await App.OpenNightAsync(group, guests, facts => facts with { Seats = 2 });
            var links = new List<LinkToken>();
            foreach (var guest in guests)
            {
                links.Add(await App.LinkAsync(group, night, guest));
            }

            await App.AnswerAsync(links[0], Answers.Coming());
            await App.AnswerAsync(links[1], Answers.Coming());

            await Task.WhenAll(
                App.AnswerAsync(links[0], Answers.NotComing(revision: 1)),
                App.AnswerAsync(links[2], Answers.Coming()),
                App.Invitations.UninviteAsync(group.Access, night, guests[3], Cancellation));

            var view = await App.ViewAsync(group, night);
            Assert.Equal(2, view.SeatsTaken);
            Assert.Single(view.Guests, row => row.WaitingPlace is not null);
            Assert.Null(view.Guests.Single(row => row.Id == guests[1]).WaitingPlace);
        }
    }

    [Fact]
    public async Task Hosts_who_take_seats_away_while_guests_take_them_never_end_below_who_sits()
    {
        var group = await App.FoundGroupAsync();
        var guests = await Task.WhenAll(Enumerable.Range(0, 3).Select(number => App.AddGuestAsync(group, $"Guest {number}")));
        for (var round = 0; round < Rounds; round++)
        {
            var night = await App.OpenNightAsync(group, guests, facts => facts with { Seats = 4 });
            var view = await App.ViewAsync(group, night);
            var links = new List<LinkToken>();
            foreach (var guest in guests)
            {
                links.Add(await App.LinkAsync(group, night, guest));
            }

            var lowered = App.Nights.ChangeNightAsync(group.Access, night, view.Facts with { Seats = 2 }, view.Version, Cancellation);
            await Task.WhenAll([.. links.Select(link => App.AnswerAsync(link, Answers.Coming())), lowered]);

            var after = await App.ViewAsync(group, night);
            Assert.True(after.SeatsTaken <= after.Facts.Seats, $"{after.SeatsTaken} sit on {after.Facts.Seats} seats.");
            Assert.True(await lowered is NightResult.Kept ? after.Facts.Seats == 2 : after.Facts.Seats == 4);
        }
    }
}
