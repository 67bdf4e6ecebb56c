using GameNight.Nights.Dates;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.TestKit.Postgres;

namespace GameNight.Nights.Tests.Dates;

/// <summary>Links of a question that go by mail.</summary>
public sealed class DateMailTests(ClassDatabase database) : DatesTest(database)
{
    [Fact]
    public async Task Links_go_out_once_to_who_has_an_address_and_has_said_nothing()
    {
        var question = await AskAsync(3);
        await Sending.GuestList.ReachAsync(question.Group.Access, question.Guests[1], "", Cancellation);
        await Book.AnswerAsync(await LinkAsync(question, 2), Says(DateAnswer.Works), Cancellation);

        await SendAsync(question);
        await SendAsync(question);
        await DeliverAsync();
        await SendAsync(question);
        await DeliverAsync();

        var letter = Assert.Single(Carrier.Questions);
        Assert.Equal(("guest1@example.org", "Guest 1", "January table"), (letter.To, letter.GuestName, letter.Title));
        Assert.Equal([First, Second], letter.Evenings);
        Assert.Equal(await LinkAsync(question, 0), letter.Answer);
        var seen = (await SeenAsync(question)).Asked;
        Assert.Equal([MessageState.Sent, null, null], question.Guests.Select(guest => seen.Single(row => row.Id == guest).Mail?.State));
        Assert.DoesNotContain(seen, row => row.CanBeMailed);
    }

    [Fact]
    public async Task Another_link_is_another_mail()
    {
        var question = await AskAsync(1);
        await SendAsync(question);
        await DeliverAsync();

        await Desk.RenewLinkAsync(question.Group.Access, question.Id, question.Guests[0], Cancellation);
        Assert.True((await SeenAsync(question)).Asked[0].CanBeMailed);
        await SendAsync(question);
        await DeliverAsync();

        Assert.Equal([1, 2], Carrier.Questions.Select(letter => letter.Generation));
        Assert.NotEqual(Carrier.Questions[0].Answer, Carrier.Questions[1].Answer);
    }

    [Theory]
    [InlineData("answered")]
    [InlineData("withdrawn")]
    [InlineData("stopped")]
    [InlineData("renewed")]
    public async Task What_holds_no_more_is_not_sent(string what)
    {
        var question = await AskAsync(1);
        await SendAsync(question);
        switch (what)
        {
            case "answered":
                await Book.AnswerAsync(await LinkAsync(question, 0), Says(DateAnswer.No), Cancellation);
                break;
            case "withdrawn":
                await Desk.WithdrawAsync(question.Group.Access, question.Id, Cancellation);
                break;
            case "stopped":
                await Sending.GuestList.ReachAsync(question.Group.Access, question.Guests[0], "", Cancellation);
                break;
            default:
                await Desk.RenewLinkAsync(question.Group.Access, question.Id, question.Guests[0], Cancellation);
                break;
        }

        await DeliverAsync();

        Assert.Empty(Carrier.Questions);
        Assert.NotEqual(MessageState.Waiting, (await SeenAsync(question)).Asked[0].Mail?.State);
    }

    [Fact]
    public async Task A_server_that_is_away_is_tried_again_and_an_address_it_refuses_is_told()
    {
        var question = await AskAsync(1);
        Carrier.ToQuestions = new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true);
        await SendAsync(question);
        await DeliverAsync();
        Assert.Equal((MessageState.Waiting, MessageFault.ServerAway), Standing(await SeenAsync(question)));

        Carrier.ToQuestions = new CarryResult.Refused(MessageFault.AddressRefused);
        Clock.AdvanceMinutes(5);
        await DeliverAsync();

        Assert.Equal((MessageState.GivenUp, MessageFault.AddressRefused), Standing(await SeenAsync(question)));
        Assert.True((await SeenAsync(question)).Asked[0].CanBeMailed);

        static (MessageState?, MessageFault?) Standing(DateView view) => (view.Asked[0].Mail?.State, view.Asked[0].Mail?.Fault);
    }

    [Fact]
    public async Task Without_a_mail_server_nothing_is_offered_and_links_are_passed_on()
    {
        var question = await AskAsync(1);
        Carrier.CanCarry = false;

        Assert.False((await SeenAsync(question)).Asked[0].CanBeMailed);
        await SendAsync(question);
        Assert.Null((await SeenAsync(question)).Asked[0].Mail);
    }

    private async Task SendAsync(Question question) =>
        Assert.IsType<DateResult.Kept>(await Desk.SendLinksAsync(question.Group.Access, question.Id, Cancellation));
}
