using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Messages;

public sealed class PostmanTests(ClassDatabase database) : MessagesTest(database)
{
    private static readonly CarryResult Away = new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true);

    [Fact]
    public async Task A_refused_address_is_given_up_and_told_and_another_address_can_be_tried()
    {
        var (group, night, guests) = await NightAsync(2);
        Carrier.Says = letter => Task.FromResult<CarryResult>(letter.To.StartsWith("guest1", StringComparison.Ordinal)
            ? new CarryResult.Refused(MessageFault.AddressRefused)
            : new CarryResult.Accepted());

        await InviteAsync(group, night);
        var refused = Assert.Single((await SeenAsync(group, night)).Lines, line => line.State == MessageState.GivenUp);
        Assert.Equal(("Guest 1", MessageFault.AddressRefused), (refused.GuestName, refused.Fault));
        await PassAsync(Duration.FromHours(5));
        Assert.Equal(2, Carrier.Letters.Count);

        await Sending.GuestList.ReachAsync(group.Access, guests[0], "better@example.org", Cancellation);
        await Sending.Messages.SendAsync(group.Access, night, refused.Id, Cancellation);
        await DeliverAsync();
        Assert.Equal(["Invitation better", "Invitation guest1", "Invitation guest2"], Sent(night));
        Assert.All((await SeenAsync(group, night)).Lines, line => Assert.Equal(MessageState.Sent, line.State));
    }

    [Fact]
    public async Task A_server_that_is_away_is_asked_again_later_and_not_once_for_every_message()
    {
        var (group, night, _) = await NightAsync(5);
        Carrier.Says = _ => Task.FromResult(Away);
        await InviteAsync(group, night);
        Assert.Single(Carrier.Letters);
        Assert.Contains((await SeenAsync(group, night)).Lines, line => line is { State: MessageState.Waiting, Fault: MessageFault.ServerAway });

        Carrier.Says = null;
        for (var minutes = 0; minutes < 10; minutes++)
        {
            await PassAsync(Duration.FromMinutes(1));
        }

        Assert.Equal(6, Carrier.Letters.Count);
        Assert.Equal(5, Carrier.Letters.Select(letter => letter.Id).Distinct().Count());
        Assert.All((await SeenAsync(group, night)).Lines, line => Assert.Equal(MessageState.Sent, line.State));
    }

    [Fact]
    public async Task One_message_that_is_put_off_does_not_hold_up_the_others()
    {
        var (group, night, _) = await NightAsync(3);
        Carrier.Says = letter => Task.FromResult<CarryResult>(letter.To.StartsWith("guest2", StringComparison.Ordinal)
            ? new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: false)
            : throw new InvalidOperationException("nobody foresaw this"));
        await InviteAsync(group, night);
        Assert.Equal(3, Carrier.Letters.Count);
        Assert.All((await SeenAsync(group, night)).Lines, line => Assert.Equal(MessageState.Waiting, line.State));

        Carrier.Says = null;
        await PassAsync(Duration.FromMinutes(5));
        Assert.All((await SeenAsync(group, night)).Lines, line => Assert.Equal(MessageState.Sent, line.State));
    }

    [Fact]
    public async Task After_three_days_of_trying_a_message_is_given_up()
    {
        var (group, night, _) = await NightAsync(1);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusDays(20) });
        Carrier.Says = _ => Task.FromResult(Away);
        await InviteAsync(group, night);
        for (var hours = 0; hours < 75; hours++)
        {
            await PassAsync(Duration.FromHours(1));
        }

        Assert.Equal(
            (MessageState.GivenUp, MessageFault.ServerAway),
            Assert.Single((await SeenAsync(group, night)).Lines) is var line ? (line.State, line.Fault) : default);
        Assert.InRange(Carrier.Letters.Count, 60, 90);
        Assert.Empty(await ErrandsAsync(group));
    }

    [Theory]
    [InlineData(0, 30)]
    [InlineData(1, 60)]
    [InlineData(6, 1920)]
    [InlineData(7, 3600)]
    [InlineData(1000, 3600)]
    public void Waits_longer_each_time_up_to_an_hour(int tries, int seconds) =>
        Assert.Equal(Duration.FromSeconds(seconds), Postman.WaitAfter(tries));

    [Fact]
    public async Task Two_postmen_at_once_send_every_message_once()
    {
        var (group, night, _) = await NightAsync(20);
        await Sending.Messages.SendInvitationsAsync(group.Access, night, Cancellation);
        await using var other = NightsApp.On(Database.AppConnectionString, Clock, carrier: Carrier);
        Carrier.Says = async _ =>
        {
            await Task.Delay(5, Cancellation);
            return new CarryResult.Accepted();
        };

        await Task.WhenAll(DeliverAsync(), Task.Run(
            async () =>
            {
                while (await other.Get<Postman>().RunOneAsync(Cancellation))
                {
                }
            },
            Cancellation));

        Assert.Equal(20, Carrier.Letters.Count);
        Assert.Equal(20, Carrier.Letters.Select(letter => letter.Id).Distinct().Count());
        Assert.Equal(20, (await SeenAsync(group, night)).Lines.Count(line => line.State == MessageState.Sent));
    }

    [Fact]
    public async Task No_more_than_the_days_mails_go_out_and_the_rest_goes_the_next_day()
    {
        var (group, night, _) = await NightAsync(3);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusDays(20) });
        await Rows.TellAsync(
            Database.AdminConnectionString,
            $"""
             insert into messages (group_id, id, night_id, guest_id, kind, about, state, queued_at, settled_at, tries)
             select group_id, gen_random_uuid(), night_id, guest_id, 'Reminder', n, 'Sent', '{Clock.GetCurrentInstant()}', '{Clock.GetCurrentInstant()}', 0
             from invitations, generate_series(100, {99 + Postman.MostPerDay - 2}) n
             where night_id = '{night.Value}' and guest_id = (select guest_id from invitations where night_id = '{night.Value}' limit 1)
             """);

        await InviteAsync(group, night);
        Assert.Equal(2, Sent(night).Count);
        Assert.True((await SeenAsync(group, night)).IsFull);

        await PassAsync(Duration.FromHours(25));
        Assert.Equal(3, Sent(night).Count);
        Assert.False((await SeenAsync(group, night)).IsFull);
    }

    [Fact]
    public async Task Who_stops_messages_gets_none_any_more_and_a_host_cannot_undo_it()
    {
        var (group, night, guests) = await NightAsync(1);
        await InviteAsync(group, night);
        var stop = Carrier.Letters[0].Unsubscribe;
        Assert.False((await Sending.Contacts.LookAsync(stop, LinkScope.Unsubscribe, Cancellation))!.IsStopped);
        Assert.True((await Sending.Contacts.StopAsync(stop, LinkScope.Unsubscribe, Cancellation))!.IsStopped);
        await Sending.GuestList.ReachAsync(group.Access, guests[0], "other@example.org", Cancellation);

        Clock.AdvanceMinutes(1);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) });
        await DeliverAsync();
        Assert.Equal(["Invitation guest1"], Sent(night));
        Assert.Equal(MessageState.ForHand, (await SeenAsync(group, night)).Lines.Single(line => line.Kind == MessageKind.Change).State);

        Assert.False((await Sending.Contacts.StartAsync(stop, LinkScope.Unsubscribe, Cancellation))!.IsStopped);
        Clock.AdvanceMinutes(1);
        await Sending.Nights.CancelAsync(group.Access, night, Cancellation);
        await DeliverAsync();
        Assert.Contains("Cancellation other", Sent(night));
    }

    [Fact]
    public async Task Links_of_one_scope_open_nothing_of_another()
    {
        var (group, night, guests) = await NightAsync(1);
        await InviteAsync(group, night);
        var (answer, stop) = (Carrier.Letters[0].Answer, Carrier.Letters[0].Unsubscribe);
        var feed = (await Sending.Contacts.RenewFeedAsync(answer, Cancellation))!.Feed!.Value;

        Assert.NotNull(await Sending.Contacts.FeedAsync(feed, Cancellation));
        Assert.Null(await Sending.Contacts.FeedAsync(answer, Cancellation));
        Assert.Null(await Sending.Contacts.FeedAsync(stop, Cancellation));
        Assert.Null(await Sending.Contacts.LookAsync(feed, LinkScope.Unsubscribe, Cancellation));
        Assert.Null(await Sending.Contacts.LookAsync(feed, LinkScope.Answer, Cancellation));
        Assert.IsType<InvitationLookup.LinkNotValid>(await Sending.GuestBook.LookAsync(stop, Cancellation));

        var next = (await Sending.Contacts.RenewFeedAsync(answer, Cancellation))!.Feed!.Value;
        Assert.Null(await Sending.Contacts.FeedAsync(feed, Cancellation));
        Assert.NotNull(await Sending.Contacts.FeedAsync(next, Cancellation));
        Assert.Empty(await Rows.ReadAsync(Database.AdminConnectionString, $"select 'x' from guests where id = '{guests[0].Value}' and feed_generation <> 2"));
    }

    [Fact]
    public async Task A_removed_guest_gets_nothing_and_neither_address_nor_message_is_left()
    {
        var (group, night, guests) = await NightAsync(2);
        await Sending.Messages.SendInvitationsAsync(group.Access, night, Cancellation);
        await Sending.Get<GuestRemoval>().RemoveAsync(group.Access, guests[0], Cancellation);

        await DeliverAsync();

        Assert.Equal(["Invitation guest2"], Sent(night));
        Assert.Empty(await Rows.ReadAsync(Database.AdminConnectionString, $"select id::text from messages where guest_id = '{guests[0].Value}'"));
        Assert.DoesNotContain(
            await Rows.EverythingAsync(Database),
            row => row.Contains("guest1@example.org", StringComparison.Ordinal) && row.Contains(group.Id.Value.ToString(), StringComparison.Ordinal));
        Assert.DoesNotContain(await ErrandsAsync(group), errand => errand == "Message");
    }

    [Fact]
    public async Task An_invitation_that_is_taken_back_is_not_sent_and_one_given_again_is()
    {
        var (group, night, guests) = await NightAsync(1);
        await Sending.Messages.SendInvitationsAsync(group.Access, night, Cancellation);
        await Sending.Invitations.UninviteAsync(group.Access, night, guests[0], Cancellation);
        await DeliverAsync();
        Assert.Empty(Sent(night));

        await Sending.Invitations.InviteAsync(group.Access, night, guests[0], Cancellation);
        await InviteAsync(group, night);
        Assert.Single(Sent(night));
    }

    [Fact]
    public async Task A_group_that_is_deleted_while_a_message_is_on_its_way_leaves_nothing_behind()
    {
        var (group, night, _) = await NightAsync(2);
        await Sending.Messages.SendInvitationsAsync(group.Access, night, Cancellation);
        Carrier.Says = async _ =>
        {
            await Sending.Get<GroupRemoval>().DeleteAsync(group.Access, "Thursday table", Cancellation);
            return new CarryResult.Accepted();
        };

        await DeliverAsync();

        Assert.Single(Carrier.Letters);
        Assert.DoesNotContain(
            await Rows.EverythingAsync(Database), row => row.Contains(group.Id.Value.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Thirty_days_after_the_night_nobody_knows_any_more_what_went_to_whom()
    {
        var (group, night, _) = await NightAsync(1);
        await InviteAsync(group, night);
        Clock.AdvanceDays(32);
        await Sending.Get<Retention>().EraseAsync(Cancellation);
        Assert.NotEmpty((await SeenAsync(group, night)).Lines);

        Clock.AdvanceDays(2);
        await Sending.Get<Retention>().EraseAsync(Cancellation);
        Assert.Empty((await SeenAsync(group, night)).Lines);
    }

    [Fact]
    public async Task A_message_says_no_must_not_and_no_note()
    {
        var (group, night, guests) = await NightAsync(1);
        await InviteAsync(group, night);
        await AnswerAsync(group, night, guests[0], Answers.Coming().WithNote("Zirbelmark", Answers.Avoiding(Planning.Guests.Allergen.Lupin)));
        Clock.AdvanceMinutes(1);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) });
        await DeliverAsync();

        Assert.Equal(2, Carrier.Letters.Count);
        Assert.All(Carrier.Letters, letter => Assert.DoesNotMatch("(?i)zirbelmark|lupin", letter.ToString()));
    }

    [Theory]
    [InlineData("ines@example.org", true)]
    [InlineData("  ines+pizza@sub.example.org ", true)]
    [InlineData("ines@müller.example", true)]
    [InlineData("", false)]
    [InlineData("ines", false)]
    [InlineData("ines@", false)]
    [InlineData("@example.org", false)]
    [InlineData("Ines <ines@example.org>", false)]
    [InlineData("ines@example.org, rui@example.org", false)]
    [InlineData("ines@example.org\r\nBcc: rui@example.org", false)]
    [InlineData("ines@example..org", false)]
    [InlineData("<ines@example.org>", false)]
    public void One_plain_address_is_taken_and_nothing_else(string typed, bool isOne) =>
        Assert.Equal(isOne ? typed.Trim() : null, MailAddressCheck.Plain(typed));

    private async Task<List<string>> ErrandsAsync(FoundedGroup group) => await Rows.ReadAsync(
        Database.AdminConnectionString,
        $"select errand from post_queue where group_id = '{group.Id.Value}' and errand = 'Message'");
}
