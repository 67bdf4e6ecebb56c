using GameNight.Nights.Messages;
using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Messages;

public sealed class ReminderTests(ClassDatabase database) : MessagesTest(database)
{
    private static readonly string[] Zones =
        ["Europe/Berlin", "America/New_York", "Asia/Tokyo", "Pacific/Apia", "Australia/Lord_Howe", "Asia/Kathmandu", "America/St_Johns"];

    /// <summary>Every half hour of a year in zones whose clocks change, do not, or change by half an hour.</summary>
    [Fact]
    public void Reminders_come_before_the_answer_by_time_and_never_while_people_sleep()
    {
        foreach (var zone in Zones)
        {
            for (var by = Instant.FromUtc(2026, 1, 1, 0, 0); by < Instant.FromUtc(2027, 1, 1, 0, 0); by += Duration.FromMinutes(30))
            {
                var times = NightMoments.Reminders(by, zone);

                Assert.Equal(2, times.Count);
                Assert.True(times[0] < times[1] && times[1] < by, $"{by} in {zone}");
                Assert.All(times, time => Assert.InRange(
                    time.InZone(DateTimeZoneProviders.Tzdb[zone]).TimeOfDay, new LocalTime(9, 0), new LocalTime(20, 59, 59)));
                Assert.True(by - times[1] <= Duration.FromHours(18 + 13 + 1), $"{by} in {zone}");
                Assert.False(NightMoments.IsQuiet(NightMoments.Awake(by, zone), zone));
                Assert.True(NightMoments.Awake(by, zone) >= by);
            }
        }
    }

    [Fact]
    public async Task Who_has_not_answered_is_reminded_twice_and_not_after_that()
    {
        // Answers move the dough until Saturday, 16:00 in Berlin: reminders on Thursday at 16:00 and Friday at 20:00.
        var (group, night, guests) = await NightAsync(3);
        await InviteAsync(group, night);
        await AnswerAsync(group, night, guests[0], Answers.Coming());
        await PlanAsync(night, Instant.FromUtc(2026, 12, 12, 15, 0));

        Clock.Reset(Instant.FromUtc(2026, 12, 10, 14, 59));
        await DeliverAsync();
        Assert.Empty(Reminded(night));

        Clock.Reset(Instant.FromUtc(2026, 12, 10, 15, 0));
        await DeliverAsync();
        Assert.Equal(["Reminder guest2", "Reminder guest3"], Reminded(night));

        await AnswerAsync(group, night, guests[1], Answers.NotComing());
        Clock.Reset(Instant.FromUtc(2026, 12, 11, 19, 0));
        await DeliverAsync();
        for (var hours = 0; hours < 40; hours++)
        {
            await PassAsync(Duration.FromHours(1));
        }

        Assert.Equal(["Reminder guest2", "Reminder guest3", "Reminder guest3"], Reminded(night));
    }

    [Fact]
    public async Task A_reminder_that_was_held_up_does_not_wake_anybody()
    {
        var (group, night, _) = await NightAsync(1);
        await InviteAsync(group, night);
        await PlanAsync(night, Instant.FromUtc(2026, 12, 12, 15, 0));
        Carrier.Says = _ => Task.FromResult<CarryResult>(new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true));
        Clock.Reset(Instant.FromUtc(2026, 12, 10, 15, 0));
        await DeliverAsync();
        Carrier.Says = null;
        var tried = Carrier.Letters.Count;

        // 23:00 in Berlin, then 8:59 and 9:00.
        Clock.Reset(Instant.FromUtc(2026, 12, 10, 22, 0));
        await DeliverAsync();
        Clock.Reset(Instant.FromUtc(2026, 12, 11, 7, 59));
        await DeliverAsync();
        Assert.Equal(tried, Carrier.Letters.Count);

        Clock.Reset(Instant.FromUtc(2026, 12, 11, 8, 0));
        await DeliverAsync();
        Assert.Equal(tried + 1, Carrier.Letters.Count);
    }

    [Fact]
    public async Task An_answer_that_comes_while_the_reminder_waits_stops_it()
    {
        var (group, night, guests) = await NightAsync(1);
        await InviteAsync(group, night);
        await PlanAsync(night, Instant.FromUtc(2026, 12, 12, 15, 0));
        Carrier.Says = _ => Task.FromResult<CarryResult>(new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: false));
        Clock.Reset(Instant.FromUtc(2026, 12, 10, 15, 0));
        await DeliverAsync();
        Carrier.Says = null;
        var tried = Carrier.Letters.Count;

        await AnswerAsync(group, night, guests[0], Answers.Coming());
        await PassAsync(Duration.FromHours(2));

        Assert.Equal(tried, Carrier.Letters.Count);
        Assert.Contains((await SeenAsync(group, night)).Lines, line => line is { Kind: MessageKind.Reminder, State: MessageState.Dropped });
    }

    [Fact]
    public async Task Who_came_is_thanked_once_on_the_next_morning_with_the_link_to_look_back()
    {
        var (group, night, guests) = await NightAsync(2);
        await InviteAsync(group, night);
        await AnswerAsync(group, night, guests[0], Answers.Coming());

        // Sunday, 11:00 in Berlin.
        Clock.Reset(Instant.FromUtc(2026, 12, 13, 9, 59));
        await DeliverAsync();
        Assert.DoesNotContain(Carrier.Letters, letter => letter.Kind == MessageKind.Thanks);
        for (var hours = 0; hours < 50; hours++)
        {
            Clock.AdvanceMinutes(60);
            await DeliverAsync();
        }

        var thanks = Assert.Single(Carrier.Letters, letter => letter.Kind == MessageKind.Thanks);
        Assert.StartsWith("guest1", thanks.To, StringComparison.Ordinal);
        Assert.NotNull((await Sending.LookBacks.LookAsync(thanks.LookBack, Cancellation) as LookBackLookup.Found)?.View);
    }

    [Fact]
    public async Task A_night_that_was_called_off_reminds_and_thanks_nobody()
    {
        var (group, night, guests) = await NightAsync(2);
        await InviteAsync(group, night);
        await AnswerAsync(group, night, guests[0], Answers.Coming());
        await PlanAsync(night, Instant.FromUtc(2026, 12, 12, 15, 0));
        Clock.AdvanceMinutes(1);
        await Sending.Nights.CancelAsync(group.Access, night, Cancellation);
        for (var hours = 0; hours < 120; hours++)
        {
            await PassAsync(Duration.FromHours(1));
        }

        Assert.DoesNotContain(Carrier.Letters, letter => letter.Kind is MessageKind.Reminder or MessageKind.Thanks);
    }

    private IEnumerable<string> Reminded(NightId night) => Sent(night).Where(sent => sent.StartsWith("Reminder", StringComparison.Ordinal));
}
