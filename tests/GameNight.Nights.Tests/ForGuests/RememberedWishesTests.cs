using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.ForGuests;

public sealed class RememberedWishesTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task Remembered_wishes_are_there_on_the_next_invitation_and_the_note_is_not()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Wishing() with { Remembers = true });

        var next = (await NextAsync(night))!;

        Assert.Equal(Hunger.More, next.Remembered!.Hunger);
        Assert.Equal([Allergen.Nuts], next.Remembered.Needs.Avoids);
        Assert.Equal((null, null), (next.Answer, next.Note));
        Assert.Empty(next.Needs);
    }

    [Fact]
    public async Task Must_nots_are_remembered_only_with_consent()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Wishing() with { Remembers = true, Consents = false });

        Assert.True((await NextAsync(night))!.Remembered!.Needs.IsNone);
    }

    [Fact]
    public async Task Nothing_is_remembered_unasked_and_taking_the_tick_away_forgets()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Wishing());
        Assert.Null((await App.LookAsync(night.Link))!.Remembered);

        await App.AnswerAsync(night.Link, Wishing() with { Revision = 1, Remembers = true });
        Assert.NotNull((await App.LookAsync(night.Link))!.Remembered);

        await App.AnswerAsync(night.Link, Wishing() with { Revision = 2 });
        Assert.Null((await App.LookAsync(night.Link))!.Remembered);
    }

    [Fact]
    public async Task Forgetting_leaves_what_was_said_for_this_night()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Wishing() with { Remembers = true });

        Assert.True(await App.GuestBook.ForgetAsync(night.Link, Cancellation));

        var view = (await App.LookAsync(night.Link))!;
        Assert.Null(view.Remembered);
        Assert.Equal([Allergen.Nuts], view.Needs[0].Avoids);
    }

    [Fact]
    public async Task Guests_read_how_many_come_and_names_only_of_those_who_allow_it()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var shown = await AlsoAsync(night, "Jonas", Answers.Coming(companions: 1) with { ShowsName = true });
        await AlsoAsync(night, "Mira", Answers.Coming());
        await AlsoAsync(night, "Noor", Answers.NotComing() with { ShowsName = true });

        var others = (await App.LookAsync(night.Link))!.Others;

        Assert.Equal(4, others.Heads);
        Assert.Equal(["Jonas"], others.Names);
        Assert.Empty((await App.LookAsync(shown))!.Others.Names);
    }

    [Fact]
    public async Task A_guest_who_does_not_stand_stays_known_to_the_group()
    {
        var night = await App.OpenNightForOneGuestAsync();

        await App.GuestList.StandAsync(night.Group.Access, night.Guest, false, Cancellation);

        Assert.Equal([true, false], (await App.GuestList.GuestsAsync(night.Group.Access, Cancellation)).OrderBy(row => row.Name).Select(row => row.IsStanding));
    }

    [Theory]
    [InlineData("2026-12-12", "2026-12-20", "2026-12-26")]
    [InlineData("2026-12-12 2026-11-28 2026-11-14", "2026-12-01", "2026-12-26")]
    [InlineData("2026-09-05 2026-06-27 2026-06-20 2026-06-13", "2026-09-06", "2026-09-12")]
    [InlineData("2026-12-12 2026-12-12", "2026-12-12", "2026-12-19")]
    public void The_next_night_is_proposed_in_the_rhythm_of_the_last_ones(string nights, string today, string next)
    {
        var pattern = NodaTime.Text.LocalDatePattern.Iso;

        Assert.Equal(
            pattern.Parse(next).Value,
            NightRhythm.Next([.. nights.Split(' ').Select(day => pattern.Parse(day).Value)], pattern.Parse(today).Value));
    }

    [Fact]
    public void A_night_that_nobody_listens_to_any_more_is_forgotten()
    {
        var changes = new NightChanges();
        var (night, heard) = (NightId.New(), 0);
        var first = changes.Listen(night, () => heard++);
        var second = changes.Listen(night, () => heard++);

        first.Dispose();
        changes.Publish(night);
        Assert.Equal((1, 1), (heard, changes.NightsListenedTo));

        second.Dispose();
        second.Dispose();
        changes.Publish(night);
        Assert.Equal((1, 0), (heard, changes.NightsListenedTo));
    }

    private static GuestAnswer Wishing()
    {
        var answer = Answers.Coming();
        return (answer with { Facts = answer.Facts with { Hunger = Hunger.More } }).WithNote("a secret", Answers.Avoiding(Allergen.Nuts));
    }

    private async Task<InvitationView?> NextAsync(GuestNight night)
    {
        var next = await App.OpenNightAsync(night.Group, [night.Guest], facts => facts with { ServeAt = facts.ServeAt.PlusWeeks(1) });
        return await App.LookAsync(await App.LinkAsync(night.Group, next, night.Guest));
    }

    private async Task<Nights.Links.LinkToken> AlsoAsync(GuestNight night, string name, GuestAnswer answer)
    {
        var guest = await App.AddGuestAsync(night.Group, name);
        await App.Invitations.InviteAsync(night.Group.Access, night.Night, guest, Cancellation);
        var link = await App.LinkAsync(night.Group, night.Night, guest);
        await App.AnswerAsync(link, answer);
        return link;
    }
}
