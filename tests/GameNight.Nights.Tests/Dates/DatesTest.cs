using GameNight.Nights.Dates;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Messages;
using GameNight.Planning.Dates;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Dates;

/// <summary>A group that is asked for one of two Saturdays in January.</summary>
public abstract class DatesTest(ClassDatabase database) : MessagesTest(database)
{
    protected static readonly LocalDateTime First = new(2027, 1, 9, 19, 30);
    protected static readonly LocalDateTime Second = new(2027, 1, 16, 19, 30);

    protected sealed record Question(FoundedGroup Group, DateChoiceId Id, IReadOnlyList<GuestId> Guests);

    protected DateDesk Desk => Sending.Get<DateDesk>();

    protected DateBook Book => Sending.Get<DateBook>();

    protected DateChoosing Choosing => Sending.Get<DateChoosing>();

    protected static DateChoiceFacts Facts { get; } = new("January table", "Europe/Berlin", [First, Second], 3, First.PlusDays(-5));

    protected async Task<Question> AskAsync(int guests, Func<DateChoiceFacts, DateChoiceFacts>? but = null)
    {
        var group = await Sending.FoundGroupAsync();
        List<GuestId> known = [];
        for (var number = 1; number <= guests; number++)
        {
            known.Add(await Sending.AddGuestAsync(group, $"Guest {number}"));
            await Sending.GuestList.ReachAsync(group.Access, known[^1], $"guest{number}@example.org", Cancellation);
        }

        var (id, facts) = (DateChoiceId.New(), Facts with { Quorum = Math.Min(3, guests + 1) });
        Assert.IsType<DateResult.Kept>(await Desk.AskAsync(
            group.Access, id, but is null ? facts : but(facts), new Asking(known, []), Cancellation));
        return new Question(group, id, known);
    }

    protected async Task<DateView> SeenAsync(Question question) =>
        (await Desk.QuestionAsync(question.Group.Access, question.Id, Cancellation))!;

    protected async Task<LinkToken> LinkAsync(Question question, int guest) => LinkToken.TryParse(
        (await SeenAsync(question)).Asked.Single(row => row.Id == question.Guests[guest]).LinkToken)!.Value;

    protected static DateReply Says(DateAnswer? first, DateAnswer? second = null, int revision = 0, Guid? key = null)
    {
        var answers = new Dictionary<string, DateAnswer>();
        if (first is { } one)
        {
            answers[DateChoiceFacts.IdOf(First)] = one;
        }

        if (second is { } two)
        {
            answers[DateChoiceFacts.IdOf(Second)] = two;
        }

        return new DateReply(answers, revision, key ?? Guid.NewGuid());
    }

    protected async Task<DateQuestion> LookAsync(LinkToken link) =>
        Assert.IsType<DateLookup.Found>(await Book.LookAsync(link, Cancellation)).Question;
}
