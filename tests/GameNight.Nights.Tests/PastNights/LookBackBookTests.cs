using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.PastNights;

public sealed class LookBackBookTests(ClassDatabase database) : PastNightsTest(database)
{
    private const int Many = 12;

    [Fact]
    public async Task A_look_back_is_kept_and_shown_to_its_guest()
    {
        var night = await ServedAsync("Ines");
        var best = (await LookAsync(night, "Ines")).Pies.Kinds[0].Number;

        Assert.IsType<LookBackResult.Kept>(await SayAsync(night, "Ines", LookBacks.Saying(Enough.Right, " thanks ", slices: 2.5, best: [best, best, 77])));

        var view = await LookAsync(night, "Ines");
        Assert.Equal((1, Enough.Right, 2.5, "thanks"), (view.Revision, view.Said!.Enough, view.Said.Slices, view.Said.Words));
        Assert.Equal([best], view.Said.BestPies);
    }

    [Fact]
    public async Task A_newer_one_replaces_it_and_the_same_one_counts_once()
    {
        var night = await ServedAsync("Ines");
        var first = LookBacks.Saying(Enough.Right);
        await SayAsync(night, "Ines", first);
        Assert.IsType<LookBackResult.Kept>(await SayAsync(night, "Ines", first));
        Assert.Equal(1, (await LookAsync(night, "Ines")).Revision);

        Assert.IsType<LookBackResult.Kept>(await SayAsync(night, "Ines", LookBacks.Saying(Enough.TooMuch, revision: 1)));

        var view = await LookAsync(night, "Ines");
        Assert.Equal((2, Enough.TooMuch), (view.Revision, view.Said!.Enough));
    }

    [Fact]
    public async Task One_made_from_an_older_state_is_told_the_newer_and_not_kept()
    {
        var night = await ServedAsync("Ines");
        await SayAsync(night, "Ines", LookBacks.Saying(Enough.Right, "from the phone"));
        var before = await Rows.EverythingAsync(Database);

        var result = await SayAsync(night, "Ines", LookBacks.Saying(Enough.TooLittle));

        Assert.Equal("from the phone", Assert.IsType<LookBackResult.SaidElsewhere>(result).Current.Said!.Words);
        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public async Task Sent_many_times_at_once_it_counts_once(int earlier)
    {
        var night = await ServedAsync("Ines");
        for (var revision = 0; revision < earlier; revision++)
        {
            await SayAsync(night, "Ines", LookBacks.Saying(Enough.Right, revision: revision));
        }

        var lookBack = LookBacks.Saying(Enough.TooMuch, revision: earlier);
        var results = await Task.WhenAll(Enumerable.Range(0, Many).Select(_ => SayAsync(night, "Ines", lookBack)));

        Assert.All(results, result => Assert.IsType<LookBackResult.Kept>(result));
        Assert.Equal(earlier + 1, (await LookAsync(night, "Ines")).Revision);
    }

    [Fact]
    public async Task Saying_nothing_keeps_nothing_and_takes_back_what_was_said()
    {
        var night = await ServedAsync("Ines");
        var before = await Rows.EverythingAsync(Database);
        Assert.IsType<LookBackResult.NothingSaid>(await SayAsync(night, "Ines", LookBacks.Saying(words: "  ")));
        Assert.Equal(before, await Rows.EverythingAsync(Database));
        await SayAsync(night, "Ines", LookBacks.Saying(Enough.Right));

        Assert.IsType<LookBackResult.Kept>(await SayAsync(night, "Ines", LookBacks.Saying(revision: 1)));

        Assert.Equal(0, (await PastAsync(night)).Opinions.People);
    }

    [Fact]
    public async Task Too_many_slices_or_words_are_refused_and_nothing_is_kept()
    {
        var night = await ServedAsync("Ines");
        var before = await Rows.EverythingAsync(Database);

        var slices = await SayAsync(night, "Ines", LookBacks.Saying(slices: 41));
        var words = await SayAsync(night, "Ines", LookBacks.Saying(words: new string('x', 281)));

        Assert.Equal(new LookBackResult.Refused(LookBackFault.SlicesOutOfRange, 40), slices);
        Assert.Equal(new LookBackResult.Refused(LookBackFault.WordsTooLong, 280), words);
        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task Before_the_night_is_served_the_link_says_when_it_opens_and_keeps_nothing()
    {
        var night = await ServedAsync("Ines");
        var link = await LinkAsync(night, "Ines");
        App.Clock.Reset(NightBuilder.Now);
        var before = await Rows.EverythingAsync(Database);

        var view = Assert.IsType<LookBackLookup.Found>(await App.LookBacks.LookAsync(link, Cancellation)).View;

        Assert.False(view.IsOpen);
        Assert.Equal((await App.ViewAsync(night.Group, night.Id)).ServeAt, view.Opens);
        Assert.Empty(view.Pies.Kinds);
        Assert.IsType<LookBackResult.NotOpen>(await App.LookBacks.SayAsync(link, LookBacks.Saying(Enough.Right), Cancellation));
        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task An_answer_link_opens_no_look_back_and_leads_to_it_once_the_night_is_served()
    {
        var open = await App.OpenNightForOneGuestAsync();
        Assert.Null(await App.LookBacks.LinkOfAsync(open.Link, Cancellation));
        Assert.Equal(
            new LookBackLookup.LinkNotValid(IsExpired: false), await App.LookBacks.LookAsync(open.Link, Cancellation));

        await PassAsync(open.Group, open.Night);

        var link = await App.LookBacks.LinkOfAsync(open.Link, Cancellation);
        Assert.IsType<LookBackLookup.Found>(await App.LookBacks.LookAsync(link, Cancellation));
        Assert.Null(await App.LookAsync(link!.Value));
        Assert.Null(await App.LookBacks.LinkOfAsync(link, Cancellation));
    }

    [Fact]
    public async Task A_renewed_link_ends_the_old_one_and_a_month_later_both_are_over()
    {
        var night = await ServedAsync("Ines");
        var old = await LinkAsync(night, "Ines");
        await App.Invitations.RenewLinkAsync(night.Group.Access, night.Id, night.Guests["Ines"], Cancellation);
        var renewed = await LinkAsync(night, "Ines");

        Assert.Equal(new LookBackResult.LinkNotValid(IsExpired: false), await App.LookBacks.SayAsync(old, LookBacks.Saying(Enough.Right), Cancellation));
        Assert.IsType<LookBackResult.Kept>(await App.LookBacks.SayAsync(renewed, LookBacks.Saying(Enough.Right), Cancellation));

        App.Clock.AdvanceDays(31);

        Assert.Equal(new LookBackLookup.LinkNotValid(IsExpired: true), await App.LookBacks.LookAsync(renewed, Cancellation));
    }

    [Fact]
    public async Task Looking_changes_nothing()
    {
        var night = await ServedAsync("Ines");
        await SayAsync(night, "Ines", LookBacks.Saying(Enough.Right));
        var before = await Rows.EverythingAsync(Database);

        await LookAsync(night, "Ines");

        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Theory]
    [InlineData(2, false)]
    [InlineData(3, true)]
    public async Task Other_guests_read_averages_of_three_and_more_only(int voices, bool reads)
    {
        string[] names = ["Ines", "Jo", "Kim", "Lea"];
        var night = await ServedAsync(names);
        foreach (var name in names.Skip(1).Take(voices))
        {
            await SayAsync(night, name, LookBacks.Saying(Enough.TooMuch, $"words of {name}"));
        }

        var view = await LookAsync(night, "Ines");

        Assert.Equal(reads, view.Averages!.Enough is not null);
        Assert.DoesNotContain("words of", Everything(view), StringComparison.Ordinal);
        Assert.All(names.Skip(1), name => Assert.DoesNotContain(name, Everything(view), StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_guest_remembers_earlier_nights_they_were_part_of_and_no_others()
    {
        var first = await ServedAsync("Ines", "Jo");
        var missed = await ServedAsync(first.Group, first.Guests, facts => facts with { ServeAt = facts.ServeAt.PlusDays(7), Title = "Missed" });
        await WriteAsync(missed, NothingNoted with { Came = [Came(missed, "Jo", 1)] });
        var apart = await ServedAsync(
            first.Group, new Dictionary<string, GuestId> { ["Jo"] = first.Guests["Jo"] }, facts => facts with { ServeAt = facts.ServeAt.PlusDays(14), Title = "Apart" });
        await SayAsync(first, "Ines", LookBacks.Saying(words: "my own words"));
        await SayAsync(first, "Jo", LookBacks.Saying(words: "what Jo thinks"));
        var last = await ServedAsync(first.Group, first.Guests, facts => facts with { ServeAt = facts.ServeAt.PlusDays(21), Title = "Last" });

        var view = await LookAsync(last, "Ines");
        var ofJo = await LookAsync(last, "Jo");

        var remembered = Assert.Single(view.Earlier);
        Assert.Equal(("Pizza and tiles", 3, "my own words"), (remembered.Title, remembered.People, remembered.Said!.Words));
        Assert.NotEmpty(remembered.Pies.Combinations);
        Assert.DoesNotContain("what Jo thinks", Everything(view), StringComparison.Ordinal);
        Assert.Equal(["Apart", "Missed", "Pizza and tiles"], ofJo.Earlier.Select(night => night.Title));
        Assert.DoesNotContain((await LookAsync(apart, "Jo")).Earlier, night => night.Title == "Last");
    }

    [Fact]
    public async Task Names_are_told_only_of_those_who_came_and_allow_it_and_first_names_only()
    {
        var first = await ServedAsync("Ines", "Jo Longname", "Kim Quiet", "Lea Absent");
        await WriteAsync(first, NothingNoted with
        {
            Came = [Came(first, "Ines", 1), Came(first, "Jo Longname", 1), Came(first, "Kim Quiet", 2)],
        });
        var last = await ServedAsync(first.Group, first.Guests, facts => facts with { ServeAt = facts.ServeAt.PlusDays(7) });

        // Each answer says anew whether the name may be read: allowed since the last one.
        await using (var session = await App.Get<GroupSessions>().OpenAsync(first.Group.Access, Cancellation))
        {
            foreach (var guest in session.Db.Guests.ToList().Where(guest => guest.Name != "Kim Quiet"))
            {
                guest.ShowName(true);
            }

            await session.CommitAsync(Cancellation);
        }

        var view = await LookAsync(last, "Ines");

        Assert.Equal(4, Assert.Single(view.Earlier).People);
        Assert.Equal(["Jo"], view.Earlier[0].Names);
        Assert.All(["Longname", "Kim", "Lea"], name => Assert.DoesNotContain(name, Everything(view), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Pies_shown_to_guests_do_not_say_whose_own_pie_one_was()
    {
        var group = await App.FoundGroupAsync();
        var (ines, jo) = (await App.AddGuestAsync(group, "Ines"), await App.AddGuestAsync(group, "Jo"));
        var night = await App.OpenNightAsync(group, [ines, jo]);
        await App.AnswerAsync(
            await App.LinkAsync(group, night, jo),
            Answers.Coming().WithNote("A little is too much", new DietaryNeeds([], [], [Allergen.Nuts, Allergen.Milk])));
        await App.AnswerAsync(await App.LinkAsync(group, night, ines), Answers.Coming());
        await PlanAsync(group, night);
        Assert.Contains($"{jo}", (await Rows.ReadAsync(
            Database.AdminConnectionString, $"select document -> 'split' -> 'pies' from plans where night_id = '{night.Value}'"))[0], StringComparison.Ordinal);
        await PassAsync(group, night);
        var served = new ServedNight(group, night, new Dictionary<string, GuestId> { ["Ines"] = ines, ["Jo"] = jo });

        var view = await LookAsync(served, "Ines");

        Assert.NotEmpty(view.Pies.Kinds);
        Assert.All(view.Pies.Kinds, kind => Assert.False(kind.Drawn.IsOwnPie));
        Assert.DoesNotContain($"{jo}", Everything(view), StringComparison.Ordinal);
    }
}
