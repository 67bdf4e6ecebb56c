using GameNight.Nights.Dates;
using GameNight.Nights.Erasure;
using GameNight.Nights.Moving;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.Planning.Dates;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Dates;

public sealed class DateBookTests(ClassDatabase database) : DatesTest(database)
{
    [Fact]
    public async Task Two_devices_are_told_of_each_other_and_the_last_answer_counts()
    {
        var question = await AskAsync(1);
        var link = await LinkAsync(question, 0);
        var key = Guid.NewGuid();

        Assert.Equal(new DateReplyResult.Recorded(false), await Book.AnswerAsync(link, Says(DateAnswer.Works, key: key), Cancellation));
        Assert.Equal(new DateReplyResult.Recorded(false), await Book.AnswerAsync(link, Says(DateAnswer.Works, key: key), Cancellation));
        Clock.AdvanceMinutes(2);
        Assert.IsType<DateReplyResult.Recorded>(await Book.AnswerAsync(link, Says(DateAnswer.No, DateAnswer.Works), Cancellation));
        var seen = await LookAsync(link);
        Assert.Equal((2, DateAnswer.No), (seen.Revision, seen.Answers[DateChoiceFacts.IdOf(First)]));
        Assert.Equal((DateAnswer.Works, NightBuilder.Now), (seen.Replaced!.Answers[DateChoiceFacts.IdOf(First)], seen.Replaced.SentAt));

        // Sent again by a weak connection, what gave way counts no second time.
        await Book.AnswerAsync(link, Says(DateAnswer.Works, key: key), Cancellation);
        Assert.Equal(2, (await LookAsync(link)).Revision);

        // What the later page did not speak of stays.
        await Book.AnswerAsync(link, Says(DateAnswer.AtAPinch, revision: 1), Cancellation);
        Assert.Equal([DateAnswer.AtAPinch, DateAnswer.Works], (await LookAsync(link)).Answers.OrderBy(said => said.Key).Select(said => said.Value));

        await Book.AnswerAsync(link, Says(DateAnswer.No, revision: 3), Cancellation);
        Assert.Null((await LookAsync(link)).Replaced);
    }

    [Fact]
    public async Task Of_answers_at_the_same_moment_the_last_counts()
    {
        var question = await AskAsync(1);
        var link = await LinkAsync(question, 0);

        var results = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => Book.AnswerAsync(link, Says(DateAnswer.Works), Cancellation))));

        Assert.All(results, result => Assert.IsType<DateReplyResult.Recorded>(result));
        Assert.Equal(6, (await LookAsync(link)).Revision);
    }

    [Fact]
    public async Task A_late_answer_counts_and_is_marked_and_nothing_said_is_told_so()
    {
        var question = await AskAsync(2);
        var link = await LinkAsync(question, 0);
        Assert.IsType<DateReplyResult.NothingSaid>(await Book.AnswerAsync(link, Says(null), Cancellation));
        Assert.IsType<DateReplyResult.NothingSaid>(await Book.AnswerAsync(
            link, new DateReply(new Dictionary<string, DateAnswer> { ["1999-01-01T10:00"] = DateAnswer.Works }, 0, Guid.NewGuid()), Cancellation));
        Clock.Reset(Instant.FromUtc(2027, 1, 5, 12, 0));

        Assert.True((await LookAsync(link)).IsPastDeadline);
        Assert.Equal(new DateReplyResult.Recorded(true), await Book.AnswerAsync(link, Says(DateAnswer.Works), Cancellation));

        var seen = await SeenAsync(question);
        Assert.True(seen.IsPastDeadline);
        Assert.Equal([true, false], seen.Asked.Select(row => row.IsLate));

        // The other one is counted as one who does not answer.
        Assert.Equal(0.2, seen.Forecast.Evenings[0].Chances[question.Guests[1].ToString()].Value, 1e-9);
    }

    [Fact]
    public async Task A_link_that_reached_somebody_else_is_shown_and_renewed_and_opens_nothing_else()
    {
        var question = await AskAsync(1);
        var link = await LinkAsync(question, 0);
        Assert.True(await Book.DisownAsync(link, Cancellation));
        Assert.True((await SeenAsync(question)).Asked[0].LinkWasDisowned);
        Assert.Null(await Sending.LookAsync(link));

        await Desk.RenewLinkAsync(question.Group.Access, question.Id, question.Guests[0], Cancellation);

        Assert.IsType<DateLookup.LinkNotValid>(await Book.LookAsync(link, Cancellation));
        Assert.False((await LookAsync(await LinkAsync(question, 0))).WasDisowned);
    }

    [Fact]
    public async Task A_guest_who_leaves_takes_their_answers_and_link_along()
    {
        var question = await AskAsync(2);
        var link = await LinkAsync(question, 0);
        await Book.AnswerAsync(link, Says(DateAnswer.Works), Cancellation);

        await Sending.Get<GuestRemoval>().RemoveAsync(question.Group.Access, question.Guests[0], Cancellation);

        Assert.Equal(question.Guests[1], Assert.Single((await SeenAsync(question)).Asked).Id);
        Assert.Equal(new DateLookup.LinkNotValid(false), await Book.LookAsync(link, Cancellation));
        Assert.Equal(["1"], await Rows.ReadAsync(
            Database.AdminConnectionString, $"select count(*)::text from link_directory where group_id = '{question.Group.Id.Value}'"));
    }

    [Fact]
    public async Task Thirty_days_after_the_last_evening_the_question_is_gone()
    {
        var question = await AskAsync(1);
        var link = await LinkAsync(question, 0);
        await Book.AnswerAsync(link, Says(DateAnswer.Works), Cancellation);
        var retention = Sending.Get<Retention>();

        Clock.Reset(Instant.FromUtc(2027, 2, 15, 18, 0));
        await retention.EraseAsync(Cancellation);
        Assert.Single((await SeenAsync(question)).Asked);

        Clock.Reset(Instant.FromUtc(2027, 2, 15, 19, 0));
        Assert.Equal(new DateLookup.LinkNotValid(true), await Book.LookAsync(link, Cancellation));
        await retention.EraseAsync(Cancellation);
        Assert.Null(await Desk.QuestionAsync(question.Group.Access, question.Id, Cancellation));
    }

    [Fact]
    public async Task A_guests_own_copy_holds_what_they_said()
    {
        var question = await AskAsync(1);
        await Book.AnswerAsync(await LinkAsync(question, 0), Says(DateAnswer.AtAPinch), Cancellation);
        var night = NightId.New();
        await Choosing.ChooseAsync(question.Group.Access, question.Id, First, night, Cancellation);

        var copy = await Sending.Get<OwnCopy>().WriteAsync(await Sending.LinkAsync(question.Group, night, question.Guests[0]), Cancellation);

        Assert.Contains("\"2027-01-09T19:30\":\"atAPinch\"", System.Text.Encoding.UTF8.GetString(copy!), StringComparison.Ordinal);
    }
}
