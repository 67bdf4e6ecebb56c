using GameNight.Nights.ForHosts;
using GameNight.Nights.Live;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Contract;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Messages;

/// <summary>Mails to hosts before work in the kitchen begins.</summary>
public sealed class WorkReminderTests(ClassDatabase database) : MessagesTest(database)
{
    private static readonly HostHours Hours = HostHours.Usual;

    private WorkReminderDesk Reminders => Sending.Get<WorkReminderDesk>();

    [Fact]
    public void Steps_that_follow_closely_are_one_stretch_and_a_pause_begins_another()
    {
        var begins = Instant.FromUtc(2026, 12, 10, 17, 0);
        TimelineStep At(StepKind kind, int fromMinute, int minutes, bool hands = true) =>
            new($"{kind}", kind, 0, begins + Duration.FromMinutes(fromMinute), begins + Duration.FromMinutes(fromMinute + minutes), hands, Duration.Zero);

        var stretches = WorkStretch.Of([
            At(StepKind.Mix, 0, 15), At(StepKind.BulkRest, 15, 60, hands: false), At(StepKind.Knead, 104, 10),
            At(StepKind.ColdFerment, 114, 2880, hands: false), At(StepKind.Temper, 204, 120, hands: false), At(StepKind.Preheat, 290, 25, hands: false)]);

        Assert.Equal(2, stretches.Count);
        Assert.Equal([StepKind.Mix, StepKind.Knead], stretches[0].Steps.Select(step => step.Kind));
        Assert.Equal(begins + Duration.FromMinutes(114), stretches[0].Until);

        // What goes by itself has to be begun, and is over for the hands once it is.
        Assert.Equal([StepKind.Temper, StepKind.Preheat], stretches[1].Steps.Select(step => step.Kind));
        Assert.Equal(begins + Duration.FromMinutes(290), stretches[1].Until);
    }

    /// <summary>Sleep is from 23:00 to 7:00; the clocks of Berlin go forward on 2026-03-29 and back on 2026-10-25.</summary>
    [Theory]
    [InlineData("2026-12-10T18:30", 60, "2026-12-10T17:30")]
    [InlineData("2026-12-10T07:30", 60, "2026-12-09T22:00")]
    [InlineData("2026-12-10T23:40", 30, "2026-12-10T22:00")]
    [InlineData("2026-12-10T08:00", 60, "2026-12-10T07:00")]
    [InlineData("2026-12-10T12:00", 720, "2026-12-09T22:00")]
    [InlineData("2026-03-29T07:30", 60, "2026-03-28T22:00")]
    [InlineData("2026-10-25T07:30", 120, "2026-10-24T22:00")]
    public void It_comes_so_long_ahead_but_not_while_the_host_sleeps(string begins, int ahead, string told)
    {
        Instant At(string local) => NightTime.ToInstant(NodaTime.Text.LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(local).Value, "Europe/Berlin");

        Assert.Equal(At(told), new WorkStretch(At(begins), At(begins), []).TellAt(Duration.FromMinutes(ahead), Hours, "Europe/Berlin"));
    }

    [Fact]
    public async Task Each_stretch_of_work_is_told_once_to_the_host_who_wants_it_and_to_nobody_else()
    {
        var (group, night, stretches) = await PlannedAsync();
        await Reminders.RemindAsync(group.Access, 60, Cancellation);
        Assert.InRange(stretches.Count, 2, 5);

        foreach (var stretch in stretches)
        {
            var at = stretch.TellAt(Duration.FromHours(1), Hours, "Europe/Berlin");
            Clock.Reset(at - Duration.FromSeconds(1));
            await DeliverAsync();
            var before = Carrier.Works.Count;

            Clock.Reset(at);
            await DeliverAsync();
            await PassAsync(Duration.FromMinutes(5));

            Assert.Equal(before + 1, Carrier.Works.Count);
            Assert.Equal(stretch.From, Carrier.Works[^1].Stretch.From);
        }

        Assert.Equal(stretches.Count, Carrier.Works.Count);
        Assert.All(Carrier.Works, letter => Assert.Equal((night, "Hana", "Pizza and tiles"), (letter.Night, letter.HostName, letter.Title)));
        Assert.Equal(stretches.Count, Carrier.Works.Select(letter => letter.Id).Distinct().Count());
        Assert.Empty(Carrier.Letters);
        Assert.Equal(MessageState.Sent, (await Reminders.MineAsync(group.Access, night, Cancellation))!.Newest!.State);
    }

    [Fact]
    public async Task A_plan_that_moves_the_work_a_little_tells_nobody_twice_and_one_that_moves_it_far_tells_again()
    {
        var (group, night, stretches) = await PlannedAsync();
        await Reminders.RemindAsync(group.Access, 60, Cancellation);
        Clock.Reset(stretches[0].From - Duration.FromMinutes(60));
        await DeliverAsync();
        Assert.Single(Carrier.Works);

        await MovePlanAsync(group, night, Duration.FromMinutes(20));
        await PassAsync(Duration.FromMinutes(1));
        Assert.Single(Carrier.Works);

        await MovePlanAsync(group, night, Duration.FromMinutes(120));
        await PassAsync(Duration.FromMinutes(140));
        Assert.Equal(2, Carrier.Works.Count);
        Assert.Equal(stretches[0].From + Duration.FromMinutes(140), Carrier.Works[1].Stretch.From);
    }

    [Fact]
    public async Task What_is_begun_called_off_or_not_wanted_any_more_is_not_told()
    {
        var (group, night, stretches) = await PlannedAsync();
        Assert.Null((await Reminders.MineAsync(group.Access, night, Cancellation))!.MinutesAhead);
        Clock.Reset(stretches[0].From - Duration.FromMinutes(30));
        await DeliverAsync();
        Assert.Empty(Carrier.Works);

        // Wanted, and begun already; then not wanted; then called off.
        await Reminders.RemindAsync(group.Access, 120, Cancellation);
        var tap = new LiveMark("a", Clock.GetCurrentInstant(), LiveMarkKind.StepBegun, stretches[0].Steps[0].Id);
        Assert.IsType<LiveResult.Counted>(await Sending.Lives.TapAsync(group.Access, night, Guid.CreateVersion7(), tap, Cancellation));
        await DeliverAsync();
        Assert.Empty(Carrier.Works);

        await Reminders.RemindAsync(group.Access, null, Cancellation);
        Clock.Reset(stretches[1].From - Duration.FromMinutes(30));
        await DeliverAsync();
        Assert.Empty(Carrier.Works);

        await Reminders.RemindAsync(group.Access, 30, Cancellation);
        await Sending.Nights.CancelAsync(group.Access, night, Cancellation);
        await DeliverAsync();
        Assert.Empty(Carrier.Works);
    }

    [Fact]
    public async Task Work_that_began_while_the_mail_server_was_away_is_not_told_any_more()
    {
        var (group, _, stretches) = await PlannedAsync();
        await Reminders.RemindAsync(group.Access, 60, Cancellation);
        Carrier.ToWork = new CarryResult.TryLater(MessageFault.ServerAway, IsForAll: true);
        Clock.Reset(stretches[0].From - Duration.FromMinutes(60));
        await DeliverAsync();
        var tried = Carrier.Works.Count;
        Assert.True(tried > 0);

        Carrier.ToWork = new CarryResult.Accepted();
        Clock.Reset(stretches[0].From + Duration.FromMinutes(11));
        await DeliverAsync();
        Assert.Equal(tried, Carrier.Works.Count);
    }

    [Fact]
    public async Task Without_a_mail_server_nothing_is_queued()
    {
        Carrier.CanCarry = false;
        var (group, night, stretches) = await PlannedAsync();
        await Reminders.RemindAsync(group.Access, 60, Cancellation);
        Clock.Reset(stretches[0].From - Duration.FromMinutes(60));
        await DeliverAsync();

        var mine = (await Reminders.MineAsync(group.Access, night, Cancellation))!;
        Assert.Equal((false, 60, null), (mine.CanCarry, mine.MinutesAhead, mine.Newest));
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Reminders.RemindAsync(group.Access, 7, Cancellation));
    }

    /// <summary>A night with a plan, and its stretches of work.</summary>
    private async Task<(FoundedGroup Group, NightId Night, IReadOnlyList<WorkStretch> Stretches)> PlannedAsync()
    {
        var (group, night, _) = await NightAsync(2);
        return (group, night, WorkStretch.Of((await SavePlanAsync(group, night, plan => plan)).Timeline.Steps));
    }

    private Duration _moved = Duration.Zero;

    private async Task MovePlanAsync(FoundedGroup group, NightId night, Duration by)
    {
        _moved += by;
        await SavePlanAsync(group, night, plan => plan with
        {
            Timeline = plan.Timeline with { Steps = [.. plan.Timeline.Steps.Select(step => step with { Start = step.Start + _moved, End = step.End + _moved })] },
        });
    }

    private async Task<NightPlan> SavePlanAsync(FoundedGroup group, NightId night, Func<NightPlan, NightPlan> but)
    {
        await using var session = await Sending.Get<GroupSessions>().OpenAsync(group.Access, Cancellation);
        var snapshot = (await Sending.Get<NightSnapshots>().LoadAsync(session, night, Cancellation))!;
        var plan = but(Sending.Get<NightPlanner>().Plan(snapshot, NightBuilder.Now, Effort.Quick, cancellation: Cancellation));
        await Sending.Get<PlanBook>().SaveAsync(
            group.Id, night, PlanJson.Fingerprint(snapshot, SharedFolder.Tables), plan, Clock.GetCurrentInstant(), Cancellation);
        return plan;
    }
}
