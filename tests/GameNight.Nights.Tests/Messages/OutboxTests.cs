using GameNight.Nights.ForHosts;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Nights.Tests.Storage;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Messages;

public sealed class OutboxTests(ClassDatabase database) : MessagesTest(database)
{
    [Fact]
    public async Task Invitations_go_once_to_who_has_an_address_and_become_texts_for_the_others()
    {
        var (group, night, _) = await NightAsync(2);
        var without = await Sending.AddGuestAsync(group, "No Mail");
        await Sending.Invitations.InviteAsync(group.Access, night, without, Cancellation);
        var before = await SeenAsync(group, night);
        Assert.Equal((2, 1), (before.ToInvite, before.ToHand));

        await InviteAsync(group, night);
        await InviteAsync(group, night);

        Assert.Equal(["Invitation guest1", "Invitation guest2"], Sent(night));
        var after = await SeenAsync(group, night);
        Assert.Equal((0, 0), (after.ToInvite, after.ToHand));
        var byHand = Assert.Single(after.Lines, line => line.State == MessageState.ForHand);
        Assert.Equal(("No Mail", MessageKind.Invitation), (byHand.GuestName, byHand.Kind));
        Assert.Equal((await Sending.LinkAsync(group, night, without)).Text, byHand.Text!.Answer.Text);
    }

    [Fact]
    public async Task A_link_made_anew_is_one_more_thing_to_send()
    {
        var (group, night, guests) = await NightAsync(1);
        await InviteAsync(group, night);
        await Sending.Invitations.RenewLinkAsync(group.Access, night, guests[0], Cancellation);

        await InviteAsync(group, night);

        Assert.Equal(2, Sent(night).Count);
        Assert.Equal((await Sending.LinkAsync(group, night, guests[0])).Text, Carrier.Letters[^1].Answer.Text);
    }

    [Fact]
    public async Task Nothing_is_queued_of_a_change_that_was_not_kept()
    {
        var (group, night, _) = await NightAsync(1);
        await InviteAsync(group, night);
        var stale = await Sending.ViewAsync(group, night);
        await MoveAsync(group, night, facts => facts with { Title = "Another title" });

        var lost = await Sending.Nights.ChangeNightAsync(
            group.Access, night, stale.Facts with { ServeAt = stale.Facts.ServeAt.PlusHours(1) }, stale.Version, Cancellation);
        await DeliverAsync();

        Assert.IsType<NightResult.ChangedMeanwhile>(lost);
        Assert.Equal(["Invitation guest1"], Sent(night));
        Assert.Equal(["1"], await Rows.ReadAsync(Database.AdminConnectionString, $"select count(*)::text from messages where night_id = '{night.Value}'"));
    }

    [Fact]
    public async Task A_change_is_told_once_to_who_comes_or_has_not_answered_with_what_changed()
    {
        var (group, night, guests) = await NightAsync(3);
        await InviteAsync(group, night);
        await AnswerAsync(group, night, guests[0], Answers.Coming());
        await AnswerAsync(group, night, guests[1], Answers.NotComing());
        Clock.AdvanceMinutes(1);

        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1), Address = "9 Oak Street" });
        await DeliverAsync();
        await DeliverAsync();

        Assert.Equal(["Change guest1", "Change guest3"], Sent(night).Where(sent => sent.StartsWith("Change", StringComparison.Ordinal)));
        var told = Carrier.Letters.Where(letter => letter.Kind == MessageKind.Change).ToList();
        Assert.All(told, letter => Assert.Equal((19, 20, true), (letter.Moved!.From.Hour, letter.Moved.To.Hour, letter.IsElsewhere)));
        Assert.Equal("9 Oak Street", told.Single(letter => letter.To.StartsWith("guest1", StringComparison.Ordinal)).Night.Address);
        Assert.Null(told.Single(letter => letter.To.StartsWith("guest3", StringComparison.Ordinal)).Night.Address);
    }

    [Fact]
    public async Task Another_place_alone_asks_nobody_to_confirm_and_raises_the_sequence()
    {
        var (group, night, guests) = await NightAsync(1);
        await InviteAsync(group, night);
        await AnswerAsync(group, night, guests[0], Answers.Coming());
        var before = (await Sending.LookAsync(await Sending.LinkAsync(group, night, guests[0])))!;
        Clock.AdvanceMinutes(1);

        await MoveAsync(group, night, facts => facts with { Address = "9 Oak Street" });
        await DeliverAsync();

        var after = (await Sending.LookAsync(await Sending.LinkAsync(group, night, guests[0])))!;
        Assert.Null(after.Moved);
        Assert.True(after.Calendar.Sequence > before.Calendar.Sequence);
        Assert.True(Carrier.Letters[^1] is { Kind: MessageKind.Change, IsElsewhere: true, Moved: null });
    }

    [Fact]
    public async Task Who_was_not_invited_from_here_and_has_not_answered_is_not_told_of_a_change()
    {
        var (group, night, _) = await NightAsync(2);

        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) });
        await Sending.Nights.CancelAsync(group.Access, night, Cancellation);
        await DeliverAsync();

        Assert.Empty(Sent(night));
        Assert.Empty((await SeenAsync(group, night)).Lines);
    }

    [Fact]
    public async Task Two_moves_before_anything_went_out_become_one_message_from_what_the_guest_knew()
    {
        var (group, night, _) = await NightAsync(1);
        await InviteAsync(group, night);
        Clock.AdvanceMinutes(1);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) });
        Clock.AdvanceMinutes(1);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) });

        await DeliverAsync();
        await PassAsync(Duration.FromMinutes(1));

        var told = Assert.Single(Carrier.Letters, letter => letter.Kind == MessageKind.Change);
        Assert.Equal((19, 21), (told.Moved!.From.Hour, told.Moved.To.Hour));
    }

    [Fact]
    public async Task Moved_away_and_back_before_anything_went_out_tells_nothing()
    {
        var (group, night, _) = await NightAsync(1);
        await InviteAsync(group, night);
        Clock.AdvanceMinutes(1);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) });
        Clock.AdvanceMinutes(1);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(-1) });

        await DeliverAsync();
        await PassAsync(Duration.FromMinutes(1));

        Assert.Equal(["Invitation guest1"], Sent(night));
        Assert.Equal(2, (await SeenAsync(group, night)).Lines.Count(line => line.State == MessageState.Dropped));
    }

    [Fact]
    public async Task A_move_while_the_invitation_is_on_its_way_is_told_afterwards()
    {
        var (group, night, _) = await NightAsync(1);
        await Sending.Messages.SendInvitationsAsync(group.Access, night, Cancellation);
        Carrier.Says = async letter =>
        {
            if (letter.Kind == MessageKind.Invitation)
            {
                await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) });
            }

            return new CarryResult.Accepted();
        };

        await DeliverAsync();
        await PassAsync(Duration.FromMinutes(1));

        Assert.Equal(19, Carrier.Letters[0].Night.ServeAt.Hour);
        Assert.Equal(["Change guest1", "Invitation guest1"], Sent(night));
    }

    [Fact]
    public async Task Calling_off_and_taking_place_again_are_each_told_once()
    {
        var (group, night, _) = await NightAsync(1);
        await InviteAsync(group, night);
        for (var time = 0; time < 2; time++)
        {
            Clock.AdvanceMinutes(1);
            await Sending.Nights.CancelAsync(group.Access, night, Cancellation);
            await Sending.Nights.CancelAsync(group.Access, night, Cancellation);
            await DeliverAsync();
        }

        Clock.AdvanceMinutes(1);
        await Sending.Nights.ReinstateAsync(group.Access, night, Cancellation);
        await DeliverAsync();
        Assert.Equal(["Cancellation guest1", "Invitation guest1", "Reinstatement guest1"], Sent(night));

        Clock.AdvanceMinutes(1);
        await Sending.Nights.CancelAsync(group.Access, night, Cancellation);
        await DeliverAsync();
        Assert.Equal(2, Carrier.Letters.Count(letter => letter.Kind == MessageKind.Cancellation));
        Assert.True(Carrier.Letters[^1].Night.IsCancelled);
    }

    [Fact]
    public async Task A_night_called_off_before_its_invitations_went_out_is_told_to_nobody()
    {
        var (group, night, _) = await NightAsync(1);
        await Sending.Messages.SendInvitationsAsync(group.Access, night, Cancellation);
        Clock.AdvanceMinutes(1);
        await Sending.Nights.CancelAsync(group.Access, night, Cancellation);

        await DeliverAsync();
        await PassAsync(Duration.FromMinutes(1));

        Assert.Empty(Sent(night));
        Assert.All((await SeenAsync(group, night)).Lines, line => Assert.Equal(MessageState.Dropped, line.State));
    }

    [Fact]
    public async Task Without_a_mail_server_everything_is_a_text_to_pass_on()
    {
        Carrier.CanCarry = false;
        var (group, night, _) = await NightAsync(1);
        await InviteAsync(group, night);
        var text = Assert.Single((await SeenAsync(group, night)).Lines);
        await Sending.Messages.PassedOnAsync(group.Access, night, text.Id, Cancellation);
        Clock.AdvanceMinutes(1);
        await MoveAsync(group, night, facts => facts with { ServeAt = facts.ServeAt.PlusHours(1) });
        await DeliverAsync();

        Assert.Empty(Carrier.Letters);
        Assert.Equal(
            [(MessageKind.Change, MessageState.ForHand), (MessageKind.Invitation, MessageState.PassedOn)],
            (await SeenAsync(group, night)).Lines.Select(line => (line.Kind, line.State)));
    }
}
