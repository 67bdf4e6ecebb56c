using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.PastNights;

public sealed class PastNightsDeskTests(ClassDatabase database) : PastNightsTest(database)
{
    [Fact]
    public async Task Who_came_is_filled_in_from_the_answers()
    {
        var group = await App.FoundGroupAsync("Hana");
        var (ines, jo, kim) = (await App.AddGuestAsync(group, "Ines"), await App.AddGuestAsync(group, "Jo"), await App.AddGuestAsync(group, "Kim"));
        var night = await App.OpenNightAsync(group, [ines, jo, kim]);
        await App.AnswerAsync(await App.LinkAsync(group, night, ines), Answers.Coming(companions: 2));
        await App.AnswerAsync(await App.LinkAsync(group, night, jo), Answers.NotComing());
        await PassAsync(group, night);

        var past = (await App.PastNights.NightAsync(group.Access, night, Cancellation))!;

        Assert.Equal(
            [("Hana", 1), ("Ines", 3), ("Jo", 0), ("Kim", 0)], past.Guests.Select(row => (row.Name, row.Expected)));
        Assert.All(past.Guests, row => Assert.Null(row.Heads));
        Assert.Null(past.Log);
    }

    [Fact]
    public async Task What_is_written_down_is_kept_and_can_be_corrected()
    {
        var night = await ServedAsync("Ines", "Jo");
        Assert.IsType<LogResult.Written>(await WriteAsync(night, NothingNoted with
        {
            Came = [Came(night, "Ines", 2)],
            Baked = Pies(3),
            SlicesLeft = 4.5,
            Pies = [new(1, 2, " first gone ")],
            ToChange = " one fewer ",
        }));
        var first = await PastAsync(night);

        Assert.Equal((3, 4.5, 19.5), (first.Slices.BakedPies!.Value.Value, first.Slices.Left, first.Slices.Eaten));
        Assert.Equal(("one fewer", "first gone"), (first.Log!.ToChange, Assert.Single(first.Log.Pies).Remark));
        Assert.Equal([("Hana", 0), ("Ines", 2), ("Jo", 0)], first.Guests.Select(row => (row.Name, row.Heads!.Value)));

        Assert.IsType<LogResult.Written>(await WriteAsync(night, first.Log with { SlicesLeft = 5 }, first.Version));

        Assert.Equal(19, (await PastAsync(night)).Slices.Eaten);
    }

    [Fact]
    public async Task Writing_the_same_again_is_writing_it_once()
    {
        var night = await ServedAsync("Ines");
        var facts = NothingNoted with { Baked = Pies(3), SlicesLeft = 1 };
        await WriteAsync(night, facts);
        var before = await Rows.EverythingAsync(Database);

        Assert.IsType<LogResult.Written>(await WriteAsync(night, facts));

        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task The_second_of_two_hosts_is_told_and_nothing_of_theirs_is_kept()
    {
        var night = await ServedAsync("Ines");
        await WriteAsync(night, NothingNoted with { Baked = Pies(3) });
        var seen = await PastAsync(night);
        await WriteAsync(night, NothingNoted with { Baked = Pies(4) }, seen.Version);

        var late = await WriteAsync(night, NothingNoted with { Baked = Pies(5) }, seen.Version);
        var unaware = await WriteAsync(night, NothingNoted with { Baked = Pies(5) }, version: null);

        Assert.IsType<LogResult.ChangedMeanwhile>(late);
        Assert.IsType<LogResult.ChangedMeanwhile>(unaware);
        Assert.Equal(4, (await PastAsync(night)).Slices.BakedPies!.Value.Value);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Of_many_who_write_at_once_one_is_kept_and_the_others_are_told(bool isThere)
    {
        var night = await ServedAsync("Ines");
        if (isThere)
        {
            await WriteAsync(night, NothingNoted with { Baked = Pies(99) });
        }

        var version = (await PastAsync(night)).Version;
        var results = await Task.WhenAll(Enumerable.Range(0, 8).Select(
            pies => WriteAsync(night, NothingNoted with { Baked = Pies(pies) }, version)));

        Assert.Single(results.OfType<LogResult.Written>());
        Assert.Equal(7, results.OfType<LogResult.ChangedMeanwhile>().Count());
    }

    [Fact]
    public async Task Nothing_is_written_before_the_night_is_served()
    {
        var open = await App.OpenNightForOneGuestAsync();
        var before = await Rows.EverythingAsync(Database);

        var result = await App.PastNights.WriteAsync(open.Group.Access, open.Night, NothingNoted, null, Cancellation);

        Assert.IsType<LogResult.NotServed>(result);
        Assert.Equal(before, await Rows.EverythingAsync(Database));
        Assert.Empty(await App.PastNights.LinksAsync(open.Group.Access, open.Night, Cancellation));
        Assert.Empty(await App.PastNights.PastAsync(open.Group.Access, Cancellation));
    }

    [Fact]
    public async Task A_night_that_was_called_off_is_no_past_night()
    {
        var night = await ServedAsync("Ines");
        await using (var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation))
        {
            session.Db.Nights.Single(row => row.Id == night.Id).Cancel(App.Clock.GetCurrentInstant());
            await session.CommitAsync(Cancellation);
        }

        Assert.IsType<LogResult.NotServed>(await WriteAsync(night, NothingNoted));
        Assert.Empty(await App.PastNights.PastAsync(night.Group.Access, Cancellation));
        Assert.True((await PastAsync(night)).IsCancelled);
    }

    [Fact]
    public async Task Values_out_of_range_are_refused_field_by_field_and_nothing_is_kept()
    {
        var night = await ServedAsync("Ines");
        var before = await Rows.EverythingAsync(Database);

        var result = await WriteAsync(night, new BakeLogFacts(
            [Came(night, "Ines", 12), new CameFacts(Guid.NewGuid(), 1)], Pies(2), 17,
            [new(1, 9, new string('x', 121)), new(99, 1, "")], new string('x', 501)));

        var problems = Assert.IsType<LogResult.Refused>(result).Problems;
        Assert.Equal(
            [
                (LogField.Heads, LogFault.OutOfRange, 11), (LogField.Heads, LogFault.UnknownGuest, 0),
                (LogField.Left, LogFault.OutOfRange, 16), (LogField.LeftOfPie, LogFault.OutOfRange, 8),
                (LogField.LeftOfPie, LogFault.UnknownPie, 0), (LogField.Remark, LogFault.TooLong, 120),
                (LogField.ToChange, LogFault.TooLong, 500),
            ],
            problems.Select(problem => (problem.Field, problem.Fault, problem.High)).Order());
        Assert.Equal(before, await Rows.EverythingAsync(Database));
    }

    [Fact]
    public async Task Single_pies_cannot_leave_more_than_all_together()
    {
        var night = await ServedAsync("Ines");

        var result = await WriteAsync(night, NothingNoted with { Baked = Pies(3), SlicesLeft = 1, Pies = [new(1, 2, "")] });

        Assert.Equal(
            new LogProblem(LogField.Left, null, LogFault.LessThanItsPies, 2), Assert.Single(Assert.IsType<LogResult.Refused>(result).Problems));
    }

    [Fact]
    public async Task Past_nights_are_listed_latest_first_with_what_is_known_of_them()
    {
        var older = await ServedAsync("Ines", "Jo", "Kim");
        await WriteAsync(older, NothingNoted with { Came = [Came(older, "Ines", 2), Came(older, "Jo", 1)], Baked = Pies(2), SlicesLeft = 1, Pies = [new(1, null, "", Won: true)] });
        var best = (await PastAsync(older)).Pies.Kinds[0].Number;
        foreach (var name in older.Guests.Keys)
        {
            await SayAsync(older, name, LookBacks.Saying(Enough.TooLittle, best: [best]));
        }

        var newer = await ServedAsync(older.Group, older.Guests, facts => facts with { ServeAt = facts.ServeAt.PlusDays(7), Title = "Later" });

        var past = await App.PastNights.PastAsync(older.Group.Access, Cancellation);

        Assert.Equal([newer.Id, older.Id], past.Select(night => night.Id));
        Assert.Equal([(4, false), (3, true)], past.Select(night => (night.People, night.IsWritten)));
        Assert.Equal(15, past[1].Slices.Eaten);
        Assert.Equal(-1, past[1].Opinions.AverageEnough);
        Assert.Equal([best], past[1].Opinions.Winners.Select(kind => kind.Number));
        Assert.Contains(1, Assert.Single(past[1].Won).Numbers);
        Assert.Null(past[0].Slices.Eaten);
    }

    [Fact]
    public async Task A_look_back_without_a_name_shows_the_host_its_words_alone()
    {
        var night = await ServedAsync("Ines", "Jo");
        await SayAsync(night, "Ines", LookBacks.Saying(Enough.Right, "lovely crust"));
        await SayAsync(night, "Jo", LookBacks.Saying(Enough.TooMuch, "too loud", namelessly: true, slices: 7));

        var past = await PastAsync(night);

        Assert.Equal(2, past.Opinions.People);
        var named = Assert.Single(past.Named);
        Assert.Equal(("Ines", "lovely crust"), (named.Name, named.Facts.Words));
        Assert.Equal(["too loud"], past.NamelessWords);
    }

    [Fact]
    public async Task Words_of_a_guest_who_leaves_are_cleared_and_their_ticks_still_count()
    {
        var night = await ServedAsync("Ines", "Jo");
        await SayAsync(night, "Ines", LookBacks.Saying(Enough.TooMuch, "my sister brought the dog"));
        await using (var session = await App.Get<GroupSessions>().OpenAsync(night.Group.Access, Cancellation))
        {
            var ines = session.Db.Guests.Single(guest => guest.Id == night.Guests["Ines"]);
            ines.Leave(App.Clock.GetCurrentInstant());
            await LookBackErasure.ClearWordsAsync(session, ines.Id, Cancellation);
            await session.CommitAsync(Cancellation);
        }

        var past = await PastAsync(night);

        Assert.Equal(1, past.Opinions.Enough[Enough.TooMuch]);
        Assert.Empty(past.Named);
        Assert.Empty(past.NamelessWords);
        Assert.DoesNotContain(await Rows.EverythingAsync(Database), row => row.Contains("brought the dog", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Only_hosts_who_cook_write_and_only_hosts_who_invite_see_links()
    {
        var night = await ServedAsync("Ines");
        var cook = new GroupAccess(night.Group.Id, night.Group.Host, HostRole.Cook);
        var nobody = new GroupAccess(night.Group.Id, night.Group.Host, role: null);

        Assert.IsType<LogResult.Written>(await App.PastNights.WriteAsync(cook, night.Id, NothingNoted, null, Cancellation));
        await Assert.ThrowsAsync<RightMissingException>(
            () => App.PastNights.WriteAsync(nobody, night.Id, NothingNoted, null, Cancellation));
        Assert.Empty(await App.PastNights.LinksAsync(cook, night.Id, Cancellation));
        Assert.Equal(2, (await App.PastNights.LinksAsync(night.Group.Access, night.Id, Cancellation)).Count);
    }

    [Fact]
    public async Task Another_groups_night_is_not_there()
    {
        var night = await ServedAsync("Ines");
        var stranger = await App.FoundGroupAsync("Noor");

        Assert.Null(await App.PastNights.NightAsync(stranger.Access, night.Id, Cancellation));
        Assert.IsType<LogResult.Gone>(await App.PastNights.WriteAsync(stranger.Access, night.Id, NothingNoted, null, Cancellation));
        Assert.Empty(await App.PastNights.LinksAsync(stranger.Access, night.Id, Cancellation));
        Assert.Empty(await App.PastNights.PastAsync(stranger.Access, Cancellation));
    }

    [Fact]
    public async Task A_host_who_ate_too_is_given_their_own_link()
    {
        var night = await ServedAsync("Ines");

        var own = LinkToken.TryParse((await PastAsync(night)).OwnLink);

        var found = Assert.IsType<LookBackLookup.Found>(await App.LookBacks.LookAsync(own, Cancellation));
        Assert.Equal("Hana", found.View.GuestName);
    }
}
