using GameNight.Nights.Records;
using GameNight.Web.Host.Timeline;
using GameNight.Web.Tests.Panels;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Calendar;

public class StepCalendarTests
{
    private static readonly NightId Night = NightId.New();
    private static readonly Instant Made = Instant.FromUtc(2026, 12, 1, 12, 0);

    [Fact]
    public void Each_step_for_hands_is_an_event_with_an_alarm_before_it()
    {
        var events = Read(Made).Events.ToDictionary(one => one.Uid!);

        foreach (var step in Plans.Usual.Timeline.Steps.Where(step => step.NeedsHands))
        {
            var one = events[$"{Night}-{step.Id}@gamenight"];
            Assert.Equal((step.Start.ToDateTimeUtc(), step.End.ToDateTimeUtc()), (one.Start!.AsUtc, one.End!.AsUtc));
            Assert.Equal(-10, Assert.Single(one.Alarms).Trigger!.Duration!.Value.ToTimeSpanUnspecified().TotalMinutes);
        }

        Assert.DoesNotContain(events.Keys, uid => uid.Contains("cold-ferment", StringComparison.Ordinal));
        Assert.Contains(events.Keys, uid => uid.Contains("preheat", StringComparison.Ordinal));
    }

    [Fact]
    public void A_later_plan_moves_the_same_events()
    {
        var (before, after) = (Read(Made), Read(Made + Duration.FromMinutes(1)));

        Assert.Equal(before.Events.Select(one => one.Uid).Order(), after.Events.Select(one => one.Uid).Order());
        Assert.True(after.Events.Min(one => one!.Sequence) > before.Events.Max(one => one!.Sequence));
    }

    private static Ical.Net.Calendar Read(Instant madeAt) =>
        Ical.Net.Calendar.Load(StepCalendar.Write(Night, "Board games", Plans.Usual.Timeline.Steps, OwnStepNames.None, madeAt, madeAt))!;
}
