using GameNight.Nights.ForGuests;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.ForGuests;

public sealed class GuestBookTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task An_answer_is_recorded_and_shown_to_guest_and_host()
    {
        var night = await App.OpenNightForOneGuestAsync();

        var result = await App.AnswerAsync(night.Link, Answers.Coming(companions: 2));

        Assert.IsType<AnswerResult.Recorded>(result);
        var seen = (await App.LookAsync(night.Link))!;
        Assert.Equal((Presence.Coming, 1, 2), (seen.Answer!.Presence, seen.Revision, seen.Answer.Companions.Count));
        var row = await App.InvitedAsync(night.Group, night.Night, night.Guest);
        Assert.Equal(Presence.Coming, row.Answer!.Presence);
        Assert.Equal(NightBuilder.Now, row.AnsweredAt);
        Assert.False(row.IsLate);
    }

    [Fact]
    public async Task A_newer_answer_replaces_the_earlier_one()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming(companions: 1));

        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1)));

        var seen = (await App.LookAsync(night.Link))!;
        Assert.Equal((Presence.NotComing, 2), (seen.Answer!.Presence, seen.Revision));
        Assert.Empty(seen.Answer.Companions);
    }

    [Fact]
    public async Task An_answer_sent_again_counts_once()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var answer = Answers.Coming();

        await App.AnswerAsync(night.Link, answer);
        var again = await App.AnswerAsync(night.Link, answer);

        Assert.IsType<AnswerResult.Recorded>(again);
        Assert.Equal(1, (await App.LookAsync(night.Link))!.Revision);
    }

    [Fact]
    public async Task The_last_of_two_devices_counts_at_once_and_both_read_what_gave_way_until_one_answers_again()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming(companions: 2));
        App.Clock.AdvanceMinutes(3);

        var result = await App.AnswerAsync(night.Link, Answers.NotComing(revision: 0));

        Assert.IsType<AnswerResult.Recorded>(result);
        var seen = (await App.LookAsync(night.Link))!;
        Assert.Equal((Presence.NotComing, 2), (seen.Answer!.Presence, seen.Revision));
        Assert.Equal((Presence.Coming, 2, NightBuilder.Now), (seen.Replaced!.Facts.Presence, seen.Replaced.Facts.Companions.Count, seen.Replaced.SentAt));

        await App.AnswerAsync(night.Link, Answers.Coming(revision: 2));
        Assert.Null((await App.LookAsync(night.Link))!.Replaced);
    }

    [Fact]
    public async Task An_answer_that_gave_way_counts_no_second_time_when_a_weak_connection_sends_it_again()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var first = Answers.Coming(companions: 1);
        await App.AnswerAsync(night.Link, first);
        await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1));

        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, first));

        var seen = (await App.LookAsync(night.Link))!;
        Assert.Equal((Presence.NotComing, 2), (seen.Answer!.Presence, seen.Revision));
        Assert.Null(seen.Replaced);
    }

    [Fact]
    public async Task A_page_that_did_not_know_of_a_must_not_takes_none_away()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote("No nuts, please", Answers.Avoiding(Allergen.Nuts)));

        await App.AnswerAsync(night.Link, Answers.Coming(revision: 0));
        var kept = await App.InvitedAsync(night.Group, night.Night, night.Guest);
        Assert.Equal([Allergen.Nuts], kept.Needs[0].Avoids);
        Assert.Equal("No nuts, please", kept.Note);

        await App.AnswerAsync(night.Link, Answers.Coming(revision: 1).WithNote("I come by train", Answers.Avoiding(Allergen.Milk)));
        var both = await App.InvitedAsync(night.Group, night.Night, night.Guest);
        Assert.Equal([Allergen.Milk, Allergen.Nuts], both.Needs[0].Avoids.Order());
        Assert.Equal("No nuts, please\nI come by train", both.Note);

        // Whoever has seen it takes it away.
        await App.AnswerAsync(night.Link, Answers.Coming(revision: 3));
        Assert.Empty((await App.InvitedAsync(night.Group, night.Night, night.Guest)).Needs);
    }

    [Fact]
    public async Task More_companions_than_the_host_allows_are_refused_and_nothing_is_kept()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var before = await Rows.EverythingAsync(Database);

        var result = await App.AnswerAsync(night.Link, Answers.Coming(companions: 3));

        Assert.Equal(new AnswerResult.Refused(AnswerFault.TooManyCompanions, 2), result);
        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task The_longest_note_fits_and_a_longer_one_is_refused()
    {
        var night = await App.OpenNightForOneGuestAsync();
        var longest = string.Concat(Enumerable.Repeat("蕎麦", DietaryNote.LongestNote / 2));

        var refused = await App.AnswerAsync(night.Link, Answers.Coming().WithNote(longest + "!"));
        var recorded = await App.AnswerAsync(night.Link, Answers.Coming().WithNote(longest));

        Assert.Equal(new AnswerResult.Refused(AnswerFault.NoteTooLong, DietaryNote.LongestNote), refused);
        Assert.IsType<AnswerResult.Recorded>(recorded);
        Assert.Equal(longest, (await App.InvitedAsync(night.Group, night.Night, night.Guest)).Note);
    }

    [Fact]
    public async Task Only_a_guest_who_comes_is_shown_the_address()
    {
        var night = await App.OpenNightForOneGuestAsync();
        Assert.Null((await App.LookAsync(night.Link))!.Address);

        await App.AnswerAsync(night.Link, Answers.Coming());
        Assert.Equal("4 Elm Street", (await App.LookAsync(night.Link))!.Address);

        await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1));
        Assert.Null((await App.LookAsync(night.Link))!.Address);
    }

    [Fact]
    public async Task Looking_changes_nothing()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote("No nuts", Answers.Avoiding(Allergen.Nuts)));
        var before = await Rows.EverythingAsync(Database);

        for (var look = 0; look < 3; look++)
        {
            App.Clock.AdvanceMinutes(10);
            Assert.NotNull(await App.LookAsync(night.Link));
        }

        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task A_disowned_link_is_shown_to_the_host_and_still_works()
    {
        var night = await App.OpenNightForOneGuestAsync();

        Assert.True(await App.GuestBook.DisownAsync(night.Link, Cancellation));

        Assert.True((await App.InvitedAsync(night.Group, night.Night, night.Guest)).LinkWasDisowned);
        Assert.True((await App.LookAsync(night.Link))!.WasDisowned);
        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, Answers.Coming()));
    }

    [Fact]
    public async Task Taking_an_invitation_back_erases_answer_and_note()
    {
        var night = await App.OpenNightForOneGuestAsync();
        await App.AnswerAsync(night.Link, Answers.Coming().WithNote("No nuts"));

        await App.Invitations.UninviteAsync(night.Group.Access, night.Night, night.Guest, Cancellation);

        var everything = await Rows.EverythingAsync(Database);
        Assert.Equal(
            ["guests"],
            everything.Where(row => row.Contains($"{night.Guest.Value}", StringComparison.Ordinal)).Select(row => row.Split(' ')[0]));
        Assert.Equal(new AnswerResult.LinkNotValid(IsExpired: false), await App.AnswerAsync(night.Link, Answers.Coming()));
    }

    [Fact]
    public async Task A_guest_sees_what_is_offered_and_no_other_guest()
    {
        var group = await App.FoundGroupAsync("Hana");
        var ines = await App.AddGuestAsync(group, "Ines");
        await App.AddGuestAsync(group, "Jo");
        var night = await App.OpenNightAsync(group, [ines]);
        var gone = (await App.Kitchen.MenuAsync(group.Access, Cancellation))[^1];
        await App.Kitchen.SetMenuItemAsync(
            group.Access, gone.Id, gone.Name, gone.GramsPerCm2, gone.WaterShare, gone.Composition, gone.Stock, isOffered: false, gone.Version, Cancellation);

        var seen = (await App.LookAsync(await App.LinkAsync(group, night, ines)))!;

        Assert.Equal(("Ines", "Hana", "Thursday table"), (seen.GuestName, seen.HostName, seen.GroupName));
        Assert.NotEmpty(seen.Toppings);
        Assert.DoesNotContain(gone.Name, seen.Toppings.Select(topping => topping.Name));
    }
}
