using GameNight.Nights.ForGuests;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.ForHosts;

public sealed class MovedNightTests(ClassDatabase database) : NightsTest(database)
{
    [Fact]
    public async Task Who_answered_before_a_move_is_told_what_changed_and_has_to_confirm()
    {
        var night = await AnsweredAsync();
        await MoveAsync(night, facts => facts with { ServeAt = facts.ServeAt.PlusDays(1) });

        var moved = (await App.LookAsync(night.Link))!.Moved!;
        Assert.Equal((new LocalDateTime(2026, 12, 12, 19, 30), new LocalDateTime(2026, 12, 13, 19, 30)), (moved.From, moved.To));
        Assert.True((await App.InvitedAsync(night.Group, night.Night, night.Guest)).HasNotConfirmed);

        App.Clock.AdvanceMinutes(1);
        Assert.IsType<AnswerResult.Recorded>(await App.GuestBook.ConfirmAsync(night.Link, Cancellation));

        Assert.Null((await App.LookAsync(night.Link))!.Moved);
        Assert.Equal(Presence.Coming, (await App.LookAsync(night.Link))!.Answer!.Presence);
        Assert.False((await App.InvitedAsync(night.Group, night.Night, night.Guest)).HasNotConfirmed);
    }

    [Fact]
    public async Task A_night_moved_away_and_back_asks_nobody()
    {
        var night = await AnsweredAsync();
        await MoveAsync(night, facts => facts with { ServeAt = facts.ServeAt.PlusDays(1) });
        await MoveAsync(night, facts => facts with { ServeAt = facts.ServeAt.PlusDays(-1) });

        Assert.Null((await App.LookAsync(night.Link))!.Moved);
        Assert.Equal(4, (await App.LookAsync(night.Link))!.Calendar.Sequence);
    }

    [Theory]
    [InlineData(2027, 3, 28, ClockChange.Skipped, 1)]
    [InlineData(2027, 10, 31, ClockChange.Doubled, 0)]
    [InlineData(2027, 3, 29, ClockChange.None, 0)]
    public async Task A_night_moved_across_a_clock_change_keeps_the_local_time_that_was_meant(
        int year, int month, int day, ClockChange change, int utcHour)
    {
        var night = await AnsweredAsync();
        var meant = new LocalDateTime(year, month, day, 2, 30);

        var kept = await MoveAsync(night, facts => facts with { ServeAt = meant });

        var view = await App.ViewAsync(night.Group, night.Night);
        Assert.Equal((change, change), (kept.Clock, view.Clock));
        Assert.Equal(meant, view.Facts.ServeAt);
        Assert.Equal(Instant.FromUtc(year, month, day, utcHour, 30), view.ServeAt);
        Assert.Equal(meant, (await App.LookAsync(night.Link))!.Moved!.To);
    }

    [Fact]
    public async Task A_weekly_evening_stays_at_its_hour_when_the_clock_changed_in_between()
    {
        var night = await AnsweredAsync(facts => facts with { ServeAt = new LocalDateTime(2027, 3, 27, 19, 30) });

        await MoveAsync(night, facts => facts with { ServeAt = new LocalDateTime(2027, 3, 28, 19, 30) });

        Assert.Equal(Instant.FromUtc(2027, 3, 28, 17, 30), (await App.ViewAsync(night.Group, night.Night)).ServeAt);
        Assert.Equal(19, (await App.LookAsync(night.Link))!.Moved!.From.Hour);
    }

    [Fact]
    public async Task A_cancelled_night_takes_no_answers_and_reads_on()
    {
        var night = await AnsweredAsync();
        Assert.IsType<SaveResult.Saved>(await App.Nights.CancelAsync(night.Group.Access, night.Night, Cancellation));
        Assert.IsType<SaveResult.Saved>(await App.Nights.CancelAsync(night.Group.Access, night.Night, Cancellation));

        Assert.IsType<AnswerResult.NightIsCancelled>(await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1)));
        Assert.IsType<AnswerResult.NightIsCancelled>(await App.GuestBook.ConfirmAsync(night.Link, Cancellation));
        var view = (await App.LookAsync(night.Link))!;
        Assert.Equal((true, Presence.Coming), (view.IsCancelled, view.Answer!.Presence));
        Assert.True(Assert.Single(await App.Nights.NightsAsync(night.Group.Access, Cancellation)).IsCancelled);
    }

    [Fact]
    public async Task A_night_that_takes_place_after_all_asks_again_and_is_newer_for_calendars()
    {
        var night = await AnsweredAsync();
        App.Clock.AdvanceMinutes(1);
        await App.Nights.CancelAsync(night.Group.Access, night.Night, Cancellation);
        var cancelled = (await App.LookAsync(night.Link))!.Calendar.Sequence;
        await App.Nights.ReinstateAsync(night.Group.Access, night.Night, Cancellation);

        var view = (await App.LookAsync(night.Link))!;

        Assert.True(view.Calendar.Sequence > cancelled);
        Assert.True(view.Moved!.TakesPlaceAgain);
        Assert.IsType<AnswerResult.Recorded>(await App.AnswerAsync(night.Link, Answers.NotComing(revision: 1)));
    }

    [Fact]
    public async Task A_night_that_is_over_is_corrected_but_not_moved_into_the_past()
    {
        var night = await AnsweredAsync();
        var view = await App.ViewAsync(night.Group, night.Night);
        App.Clock.Reset(view.ServeAt + Duration.FromDays(3));

        var corrected = await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night,
            view.Facts with { Title = "Another name", Address = "9 Oak Street", EndsAt = view.Facts.ServeAt.PlusHours(5) }, view.Version, Cancellation);
        var after = await App.ViewAsync(night.Group, night.Night);
        var moved = await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, after.Facts with { ServeAt = after.Facts.ServeAt.PlusHours(1) }, after.Version, Cancellation);

        Assert.IsType<NightResult.Kept>(corrected);
        Assert.Equal("9 Oak Street", after.Facts.Address);
        Assert.Equal(DraftFault.HasPassed, Assert.Single(Assert.IsType<NightResult.Refused>(moved).Problems).Fault);
    }

    [Fact]
    public async Task Nights_are_counted_with_the_host_and_without_whoever_does_not_come()
    {
        var night = await AnsweredAsync();
        var other = await App.AddGuestAsync(night.Group, "Jonas");
        await App.Invitations.InviteAsync(night.Group.Access, night.Night, other, Cancellation);
        await App.AnswerAsync(await App.LinkAsync(night.Group, night.Night, other), Answers.NotComing());

        var line = Assert.Single(await App.Nights.NightsAsync(night.Group.Access, Cancellation));

        Assert.Equal((3, 2), (line.Invited, line.Coming));
    }

    private async Task<GuestNight> AnsweredAsync(Func<NightFacts, NightFacts>? but = null)
    {
        var night = await App.OpenNightForOneGuestAsync(but);
        await App.AnswerAsync(night.Link, Answers.Coming());
        return night;
    }

    private async Task<NightResult.Kept> MoveAsync(GuestNight night, Func<NightFacts, NightFacts> but)
    {
        App.Clock.AdvanceMinutes(1);
        var view = await App.ViewAsync(night.Group, night.Night);
        return Assert.IsType<NightResult.Kept>(await App.Nights.ChangeNightAsync(
            night.Group.Access, night.Night, but(view.Facts), view.Version, Cancellation));
    }
}
