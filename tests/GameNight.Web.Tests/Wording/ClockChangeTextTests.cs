using GameNight.Planning;
using GameNight.Planning.Live;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Wording;

/// <summary>The rules of the zone are those of the IANA time zone database: in Berlin on 28 March and on 31 October 2027.</summary>
public class ClockChangeTextTests
{
    private const string Berlin = "Europe/Berlin";

    private static readonly NightPlanner Planner = new(SharedFolder.Tables);

    [Theory]
    [InlineData("2027-10-30T23:30:00Z", "The clocks go back on Sunday, 31 October: at 03:00 it is 02:00 again")]
    [InlineData("2027-03-27T23:30:00Z", "The clocks go forward on Sunday, 28 March: from 02:00 at once to 03:00")]
    public void A_night_across_the_change_is_told_and_every_step_keeps_its_length(string serveAt, string says)
    {
        var serve = NodaTime.Text.InstantPattern.General.Parse(serveAt).Value;
        var night = NightBuilder.ANight().WithGuests(9).But(one => one with { ServeAt = serve, Away = [] }).Build();
        var plan = Planner.Plan(night, serve - Duration.FromDays(6), Effort.Quick, cancellation: TestContext.Current.CancellationToken);
        var usual = Planner.Plan(night with { ServeAt = serve + Duration.FromDays(14) }, serve + Duration.FromDays(8), Effort.Quick, cancellation: TestContext.Current.CancellationToken);

        Assert.Contains(says, ClockChangeText.Of(plan.Timeline.Steps, Berlin)!.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Null(ClockChangeText.Of(plan.Timeline.Steps, "Asia/Tokyo"));
        Assert.Null(ClockChangeText.Of(usual.Timeline.Steps, Berlin));
        Assert.Null(ClockChangeText.Of([], Berlin));

        // By the clock of the world it is the same night: every step is as long, and as far from the first pie.
        Assert.Equal(
            usual.Timeline.Steps.Select(step => (step.Id, step.Start - usual.Timeline.FirstPieAt!.Value, step.End - step.Start)),
            plan.Timeline.Steps.Select(step => (step.Id, step.Start - plan.Timeline.FirstPieAt!.Value, step.End - step.Start)));
    }

    /// <summary>A pie that goes in at ten to three comes out seven minutes later, although the wall then says three minutes to two.</summary>
    [Fact]
    public void A_clock_that_runs_across_the_change_ends_when_its_time_is_over()
    {
        var change = Instant.FromUtc(2027, 10, 31, 1, 0);
        var night = NightBuilder.ANight().WithGuests(9).But(one => one with { ServeAt = change - Duration.FromMinutes(60), Away = [] }).Build();
        var plan = Planner.Plan(night, change - Duration.FromDays(6), Effort.Quick, cancellation: TestContext.Current.CancellationToken);
        var bake = plan.Timeline.Steps.First(step => step.Kind == StepKind.Bake && step.End > change);
        var topped = plan.Timeline.Steps.Single(step => step.Kind == StepKind.Top && step.Number == bake.Number);
        var at = change - Duration.FromMinutes(3);

        var live = Planner.Live(night, plan, [new LiveMark("in", at, LiveMarkKind.StepDone, topped.Id)], at)!;

        var clock = Assert.Single(live.Clocks, clock => clock.Kind == LiveClockKind.PieOut && clock.Number == bake.Number);
        Assert.Equal(at + night.Kitchen.Bake, clock.Ends);
        Assert.Equal((new LocalTime(2, 57), new LocalTime(2, 57).PlusMinutes((long)night.Kitchen.Bake.TotalMinutes - 60)),
            (QuantityText.Local(at, Berlin).TimeOfDay, QuantityText.Local(clock.Ends, Berlin).TimeOfDay));
    }
}
