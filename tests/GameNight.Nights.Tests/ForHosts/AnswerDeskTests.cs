using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.ForHosts;

/// <summary>Answers that a host was told.</summary>
public sealed class AnswerDeskTests(ClassDatabase database) : NightsTest(database)
{
    private static readonly ToldAnswer Coming = new(Presence.Coming, false, Hunger.More, [PortionClass.Child, null], 21 * 60);

    [Fact]
    public async Task A_told_answer_counts_is_marked_and_becomes_the_guests_own_when_they_answer()
    {
        var night = await App.OpenNightForOneGuestAsync();

        var result = await TellAsync(night, Coming, 0);

        Assert.Equal(new ToldResult.Noted(IsLate: false, IsWaiting: false), result);
        var seen = (await App.LookAsync(night.Link))!;
        Assert.Equal((SaidBy.Host, 1, 21 * 60, Hunger.More), (seen.SaidBy, seen.Revision, seen.Answer!.ComesAtMinute, seen.Answer.Hunger));
        Assert.Equal(PortionClass.Child, Assert.Single(seen.Answer.Companions).Portion);
        Assert.Equal(SaidBy.Host, (await App.InvitedAsync(night.Group, night.Night, night.Guest)).SaidBy);

        await App.AnswerAsync(night.Link, Answers.Coming(revision: 1));
        Assert.Null((await App.LookAsync(night.Link))!.SaidBy);
    }

    [Fact]
    public async Task Told_twice_with_one_key_counts_once()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var key = Guid.NewGuid();

        var results = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => App.Told.SetAsync(
            night.Group.Access, night.Night, night.Guest, Coming, 0, key, Cancellation)));

        Assert.All(results, result => Assert.IsType<ToldResult.Noted>(result));
        Assert.Equal(1, (await App.LookAsync(night.Link))!.Revision);
    }

    [Fact]
    public async Task An_answer_that_the_guest_gave_since_is_not_overwritten_unseen()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.NotComing());

        Assert.IsType<ToldResult.AnsweredMeanwhile>(await TellAsync(night, Coming, 0));
        Assert.Equal(Presence.NotComing, (await App.LookAsync(night.Link))!.Answer!.Presence);
        Assert.IsType<ToldResult.Noted>(await TellAsync(night, Coming, 1));
    }

    [Fact]
    public async Task Likes_stay_and_must_nots_stay_with_the_companion_who_still_comes()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var topping = (await App.LookAsync(night.Link))!.Toppings[0].Id;
        var answer = Answers.Coming(companions: 2)
            .WithNote("between us", DietaryNeeds.None, Answers.Avoiding(Allergen.Nuts), Answers.Avoiding(Allergen.Milk));
        await App.AnswerAsync(night.Link, answer with
        {
            Facts = answer.Facts with { Likes = new Dictionary<string, Liking> { [topping] = Liking.Never } },
        });

        await TellAsync(night, Coming with { Companions = [null, PortionClass.Teen] }, 1);

        var row = await App.InvitedAsync(night.Group, night.Night, night.Guest);
        Assert.Equal(Liking.Never, row.Answer!.Likes[topping]);
        Assert.Equal([[], [Allergen.Milk]], row.Needs.Select(needs => needs.Avoids));
        Assert.Equal("between us", row.Note);
    }

    [Theory]
    [InlineData(3, null, null, AnswerFault.TooManyCompanions, 2)]
    [InlineData(0, 22 * 60, 21 * 60, AnswerFault.LeavesBeforeComing, 0)]
    public async Task The_rules_are_those_of_guests(int companions, int? comes, int? leaves, AnswerFault fault, int most)
    {
        var night = await App.OpenNightForOneGuestAsync();

        var result = await TellAsync(
            night, new(Presence.Coming, false, Hunger.AsUsual, [.. Enumerable.Repeat<PortionClass?>(PortionClass.Adult, companions)], comes, leaves), 0);

        Assert.Equal(new ToldResult.Refused(fault, most), result);
        Assert.Null((await App.LookAsync(night.Link))!.Answer);
    }

    [Fact]
    public async Task A_full_table_puts_who_was_told_of_in_line()
    {
        var night = await App.OpenNightForOneGuestAsync(facts => facts with { Seats = 1 });

        Assert.Equal(new ToldResult.Noted(IsLate: false, IsWaiting: true), await TellAsync(night, Coming, 0));
    }

    [Fact]
    public async Task Whoever_only_cooks_notes_no_answers_and_a_night_called_off_takes_none()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var cook = new GroupAccess(night.Group.Id, night.Group.Host, HostRole.Cook, seesNotes: false);
        await Assert.ThrowsAsync<RightMissingException>(() => App.Told.SetAsync(
            cook, night.Night, night.Guest, Coming, 0, Guid.NewGuid(), Cancellation));

        await App.Nights.CancelAsync(night.Group.Access, night.Night, Cancellation);
        Assert.IsType<ToldResult.Gone>(await TellAsync(night, Coming, 0));
    }

    private Task<ToldResult> TellAsync(GuestNight night, ToldAnswer told, int revision) => App.Told.SetAsync(
        night.Group.Access, night.Night, night.Guest, told, revision, Guid.NewGuid(), Cancellation);
}
