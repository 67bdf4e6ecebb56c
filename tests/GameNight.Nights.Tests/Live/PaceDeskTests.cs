using GameNight.Nights.ForHosts;
using GameNight.Nights.Live;
using GameNight.Nights.Tests.Plans;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit.Postgres;
using NodaTime;

namespace GameNight.Nights.Tests.Live;

public sealed class PaceDeskTests(ClassDatabase database) : PlannerTest(database)
{
    /// <summary>Every step is told done when the plan ends it: what is seen is the plan's own pace, whole minutes rounded up.</summary>
    [Fact]
    public async Task What_taps_tell_is_shown_first_planned_with_when_a_host_says_so_and_forgotten_as_easily()
    {
        var night = await OnTheNightAsync();
        var (desk, access) = (App.Get<PaceDesk>(), night.Group.Access);
        Assert.Empty((await desk.PaceAsync(access, Cancellation)).Seen);
        var steps = (await App.Lives.LiveAsync(access, night.Night, Cancellation))!.Plan.Plan!.Timeline.Steps;
        foreach (var step in steps.Where(step => step.NeedsHands && step.Kind != StepKind.Shape).OrderBy(step => step.End))
        {
            App.Clock.Reset(step.End);
            Assert.IsType<LiveResult.Counted>(await App.Lives.TapAsync(
                access, night.Night, Guid.CreateVersion7(), new LiveMark("", default, LiveMarkKind.StepDone, step.Id), Cancellation));
        }

        // Not while it goes on: what is told of it now is half of it.
        App.Clock.Reset(steps.Where(step => step.Kind == StepKind.Serve).Max(step => step.End) - Duration.FromMinutes(1));
        Assert.Empty((await desk.PaceAsync(access, Cancellation)).Seen);

        App.Clock.Advance(Duration.FromDays(1));
        var seen = (await desk.PaceAsync(access, Cancellation)).Seen;
        Assert.NotEmpty(seen);
        Assert.All(seen, one => Assert.InRange(one.SeenMinutes / one.TableMinutes, 0.9, 1.3));
        Assert.Null((await App.Kitchen.KitchenAsync(access, Cancellation)).Facts.Kitchen.Pace);

        Assert.IsType<SaveResult.Saved>(await desk.KeepAsync(access, Cancellation));
        var kept = (await App.Kitchen.KitchenAsync(access, Cancellation)).Facts.Kitchen.Pace!;
        Assert.Equal(seen.Select(one => (one.Step, one.Minutes)), kept.Select(one => (one.Step, one.Minutes)));

        Assert.IsType<SaveResult.Saved>(await desk.ForgetAsync(access, Cancellation));
        Assert.Null((await App.Kitchen.KitchenAsync(access, Cancellation)).Facts.Kitchen.Pace);
    }

    [Fact]
    public async Task Nothing_is_kept_where_nothing_was_seen()
    {
        var group = await App.FoundGroupAsync();

        Assert.IsType<SaveResult.Saved>(await App.Get<PaceDesk>().KeepAsync(group.Access, Cancellation));

        Assert.Null((await App.Kitchen.KitchenAsync(group.Access, Cancellation)).Facts.Kitchen.Pace);
    }
}
