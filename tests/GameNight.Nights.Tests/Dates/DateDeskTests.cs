using GameNight.Nights.Dates;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Dates;

public sealed class DateDeskTests(ClassDatabase database) : DatesTest(database)
{
    [Fact]
    public async Task Asked_twice_from_one_page_is_asked_once_and_answers_show_in_the_forecast()
    {
        var question = await AskAsync(3);
        await Desk.AskAsync(question.Group.Access, question.Id, Facts, new Asking(question.Guests, []), Cancellation);
        await Book.AnswerAsync(await LinkAsync(question, 0), Says(DateAnswer.No, DateAnswer.Works), Cancellation);
        await Book.AnswerAsync(await LinkAsync(question, 1), Says(DateAnswer.AtAPinch, DateAnswer.Works), Cancellation);

        var seen = await SeenAsync(question);

        Assert.Equal(3, seen.Asked.Count);
        Assert.Equal(DateChoiceFacts.IdOf(Second), seen.Forecast.Evenings[0].Option.Id);
        Assert.Equal((2, 0, 0, 1), (seen.Forecast.Evenings[0].Works, seen.Forecast.Evenings[0].AtAPinch, seen.Forecast.Evenings[0].No, seen.Forecast.Evenings[0].Silent));

        // The host for certain, two who come at 0.95, one silent at 0.2.
        Assert.Equal(1 + 0.95 + 0.95 + 0.2, seen.Forecast.Evenings[0].Expected.Expected, 1e-9);
        Assert.Equal((3, 2), ((await Desk.OpenAsync(question.Group.Access, Cancellation)).Single().Asked, (await Desk.OpenAsync(question.Group.Access, Cancellation)).Single().Answered));
    }

    [Fact]
    public async Task A_draft_is_told_what_stands_in_the_way_of_its_evenings_and_nothing_is_kept()
    {
        var question = await AskAsync(2);
        var soon = Clock.GetCurrentInstant().InZone(NightTime.Zone("Europe/Berlin")!).LocalDateTime.Date.PlusDays(1).At(new LocalTime(19, 30));
        var facts = Facts with { Quorum = 2, Options = [First, soon], OpenUntil = soon.PlusHours(-5) };
        var (draft, asking) = (DateChoiceId.New(), new Asking(question.Guests, []));

        var obstacles = await Desk.ObstaclesAsync(question.Group.Access, draft, facts, asking, Cancellation);

        Assert.Equal([soon], obstacles.Keys);
        Assert.IsType<DateObstacle.DoughTooLate>(Assert.Single(obstacles[soon]));
        Assert.Null(await Desk.QuestionAsync(question.Group.Access, draft, Cancellation));
        Assert.Empty(await Desk.ObstaclesAsync(question.Group.Access, draft, facts with { Zone = "Europe/Nowhere" }, asking, Cancellation));

        // The host may ask for it all the same.
        Assert.IsType<DateResult.Kept>(await Desk.AskAsync(question.Group.Access, draft, facts, asking, Cancellation));
    }

    [Fact]
    public async Task What_cannot_be_asked_is_refused_at_its_field()
    {
        var question = await AskAsync(2);
        var group = question.Group;
        var now = Clock.GetCurrentInstant().InZone(NightTime.Zone("Europe/Berlin")!).LocalDateTime;
        var skipped = new LocalDateTime(2027, 3, 28, 2, 30);

        Assert.Equal(["option0 HasPassed"], await ProblemsAsync(facts => facts with { Options = [now.PlusHours(-1), Second] }));
        Assert.Equal(["option1 InSkippedHour"], await ProblemsAsync(facts => facts with { Options = [First, skipped] }));
        Assert.Equal(["option1 Repeated"], await ProblemsAsync(facts => facts with { Options = [First, First] }));
        Assert.Equal(["options NoOption"], await ProblemsAsync(facts => facts with { Options = [] }));
        Assert.Equal(["options TooManyOptions"], await ProblemsAsync(facts => facts with { Options = [.. Enumerable.Range(0, 41).Select(First.PlusDays)] }));
        Assert.Equal(["option1 TooFarAhead"], await ProblemsAsync(facts => facts with { Options = [First, First.PlusYears(3)] }));
        Assert.Equal(["quorum QuorumOutOfRange"], await ProblemsAsync(facts => facts with { Quorum = 0 }));
        Assert.Equal(["quorum QuorumOutOfRange"], await ProblemsAsync(facts => facts with { Quorum = 4 }));
        Assert.Empty(await ProblemsAsync(facts => facts with { Quorum = 3 }));
        Assert.Equal(["openUntil DeadlineAfterFirst"], await ProblemsAsync(facts => facts with { OpenUntil = First }));
        Assert.Equal(["openUntil DeadlineHasPassed"], await ProblemsAsync(facts => facts with { OpenUntil = now.PlusMinutes(-1) }));
        Assert.Equal(["title Missing"], await ProblemsAsync(facts => facts with { Title = " " }));
        Assert.Equal(["title TooLong"], await ProblemsAsync(facts => facts with { Title = new string('a', 81) }));
        Assert.Equal(["zone UnknownZone"], await ProblemsAsync(facts => facts with { Zone = "Europe/Nowhere" }));
        Assert.Equal(["asked NobodyAsked", "quorum QuorumOutOfRange"], await ProblemsAsync(facts => facts, new Asking([], [])));
        Assert.Equal(["needed NeededNotAsked"], await ProblemsAsync(facts => facts, new Asking([question.Guests[0]], [question.Guests[1]])));

        async Task<string[]> ProblemsAsync(Func<DateChoiceFacts, DateChoiceFacts> change, Asking? asking = null) =>
            await Desk.AskAsync(group.Access, DateChoiceId.New(), change(Facts with { Quorum = 2 }), asking ?? new Asking(question.Guests, []), Cancellation)
                is DateResult.Refused refused
                ? [.. refused.Problems.Select(problem => $"{problem.Field} {problem.Fault}")]
                : [];
    }

    [Fact]
    public async Task A_change_keeps_what_still_holds_and_tells_a_second_host()
    {
        var question = await AskAsync(3);
        var (kept, gone) = (await LinkAsync(question, 0), await LinkAsync(question, 2));
        await Book.AnswerAsync(kept, Says(DateAnswer.Works, DateAnswer.No), Cancellation);
        var before = await SeenAsync(question);
        var moved = Facts with { Options = [First, Second.PlusDays(1)] };

        Assert.IsType<DateResult.Kept>(await Desk.ChangeAsync(
            question.Group.Access, question.Id, moved, new Asking([.. question.Guests.Take(2)], [question.Guests[1]]), before.Version, Cancellation));
        Assert.IsType<DateResult.ChangedMeanwhile>(await Desk.ChangeAsync(
            question.Group.Access, question.Id, Facts, new Asking(question.Guests, []), before.Version, Cancellation));

        var seen = await SeenAsync(question);
        Assert.Equal([DateChoiceFacts.IdOf(First)], seen.Asked.Single(row => row.Id == question.Guests[0]).Answers.Keys);
        Assert.Equal([false, true], seen.Asked.Select(row => row.IsNeeded));
        Assert.IsType<DateLookup.LinkNotValid>(await Book.LookAsync(gone, Cancellation));
        Assert.Equal(2, (await LookAsync(kept)).Evenings.Count);
    }

    [Fact]
    public async Task A_withdrawn_question_takes_no_answers_and_makes_no_night()
    {
        var question = await AskAsync(1);
        var link = await LinkAsync(question, 0);
        Assert.IsType<DateResult.Kept>(await Desk.WithdrawAsync(question.Group.Access, question.Id, Cancellation));
        Assert.IsType<DateResult.Kept>(await Desk.WithdrawAsync(question.Group.Access, question.Id, Cancellation));

        Assert.Equal(DateChoiceState.Withdrawn, (await LookAsync(link)).State);
        Assert.IsType<DateReplyResult.NoLongerAsked>(await Book.AnswerAsync(link, Says(DateAnswer.Works), Cancellation));
        Assert.IsType<ChoosingResult.Withdrawn>(await Choosing.ChooseAsync(question.Group.Access, question.Id, First, NightId.New(), Cancellation));
        Assert.Empty(await Desk.OpenAsync(question.Group.Access, Cancellation));
        Assert.Empty(await Sending.Nights.NightsAsync(question.Group.Access, Cancellation));
    }

    [Fact]
    public async Task A_cook_looks_and_gets_no_links_and_another_group_sees_nothing()
    {
        var question = await AskAsync(2);
        var cook = new GroupAccess(question.Group.Id, question.Group.Host, HostRole.Cook);
        var stranger = await Sending.FoundGroupAsync("Other", "Other table");

        Assert.All((await Desk.QuestionAsync(cook, question.Id, Cancellation))!.Asked, row => Assert.Empty(row.LinkToken));
        await Assert.ThrowsAsync<RightMissingException>(() => Desk.WithdrawAsync(cook, question.Id, Cancellation));
        Assert.Null(await Desk.QuestionAsync(stranger.Access, question.Id, Cancellation));
        Assert.IsType<DateResult.Gone>(await Desk.WithdrawAsync(stranger.Access, question.Id, Cancellation));
    }

    [Fact]
    public async Task Who_missed_the_last_nights_is_known_and_another_night_takes_its_evening()
    {
        var question = await AskAsync(2, facts => facts with { Options = [First, Second, new LocalDateTime(2027, 1, 20, 19, 30)] });
        var night = await Sending.OpenNightAsync(question.Group, question.Guests);
        await AnswerAsync(question.Group, night, question.Guests[0], Answers.Coming());
        await AnswerAsync(question.Group, night, question.Guests[1], Answers.NotComing());
        await Sending.OpenNightAsync(question.Group, question.Guests, facts => facts with { ServeAt = Second.PlusHours(1) });
        Clock.Reset(Instant.FromUtc(2027, 1, 2, 12, 0));
        await Book.AnswerAsync(await LinkAsync(question, 1), Says(DateAnswer.No, DateAnswer.Works), Cancellation);

        var evenings = (await SeenAsync(question)).Forecast.Evenings;

        Assert.Equal([question.Guests[1].ToString()], evenings.Single(evening => evening.Option.Id == DateChoiceFacts.IdOf(First)).MissAgain);
        Assert.IsType<DateObstacle.EveningTaken>(Assert.Single(evenings.Single(evening => evening.Option.Id == DateChoiceFacts.IdOf(Second)).Obstacles));
    }
}
