using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.ForGuests;

public sealed class AnswersAtOnceTests(ClassDatabase database) : NightsTest(database)
{
    private const int Many = 20;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public async Task One_answer_sent_many_times_at_once_counts_once(int earlier)
    {
        var night = await App.OpenNightForOneGuestAsync();
        for (var revision = 0; revision < earlier; revision++)
        {
            await App.AnswerAsync(night.Link, Answers.NotComing(revision));
        }

        var answer = Answers.Coming(revision: earlier).WithNote("No nuts", Answers.Avoiding(Allergen.Nuts));
        var results = await Task.WhenAll(Enumerable.Range(0, Many).Select(_ => App.AnswerAsync(night.Link, answer)));

        Assert.All(results, result => Assert.IsType<AnswerResult.Recorded>(result));
        Assert.Equal([$"{earlier + 1}"], await Rows.ReadAsync(
            Database.AdminConnectionString, $"select revision from answers where guest_id = '{night.Guest.Value}'"));
        Assert.Single(await Rows.ReadAsync(
            Database.AdminConnectionString, $"select 1 from dietary_notes where guest_id = '{night.Guest.Value}'"));
    }

    [Fact]
    public async Task Of_many_different_answers_at_once_the_last_counts_and_says_what_it_replaced()
    {
        var night = await App.OpenNightForOneGuestAsync();

        var results = await Task.WhenAll(Enumerable.Range(0, Many).Select(
            number => App.AnswerAsync(night.Link, Answers.Coming(companions: number % 3))));

        Assert.All(results, result => Assert.IsType<AnswerResult.Recorded>(result));
        var seen = (await App.LookAsync(night.Link))!;
        Assert.Equal(Many, seen.Revision);
        Assert.NotNull(seen.Replaced);
    }

    [Fact]
    public async Task All_guests_of_a_night_can_answer_at_once()
    {
        var group = await App.FoundGroupAsync();
        var guests = await Task.WhenAll(Enumerable.Range(0, Many).Select(number => App.AddGuestAsync(group, $"Guest {number}")));
        var night = await App.OpenNightAsync(group, guests);
        var links = await Task.WhenAll(guests.Select(guest => App.LinkAsync(group, night, guest)));

        var results = await Task.WhenAll(links.Select(link => App.AnswerAsync(link, Answers.Coming())));

        Assert.All(results, result => Assert.IsType<AnswerResult.Recorded>(result));
        Assert.Equal(Many + 1, Assert.Single(await App.Nights.NightsAsync(group.Access, Cancellation)).Coming);
    }

    [Fact]
    public async Task An_answer_and_the_end_of_its_invitation_do_not_wait_for_each_other()
    {
        for (var round = 0; round < 10; round++)
        {
            var night = await App.OpenNightForOneGuestAsync();

            var answering = App.AnswerAsync(night.Link, Answers.Coming().WithNote("No nuts"));
            var ending = App.Invitations.UninviteAsync(night.Group.Access, night.Night, night.Guest, Cancellation);

            Assert.True(await answering is AnswerResult.Recorded or AnswerResult.LinkNotValid);
            Assert.IsType<SaveResult.Saved>(await ending);
            Assert.Empty(await Rows.ReadAsync(
                Database.AdminConnectionString, $"select 1 from answers where guest_id = '{night.Guest.Value}'"));
        }
    }
}
