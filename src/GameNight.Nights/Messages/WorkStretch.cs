using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Nights.Messages;

/// <summary>Steps that follow one another so closely that one reminder does for all of them.</summary>
/// <param name="Until">The hands are free again, and nothing else is to be begun soon.</param>
/// <param name="Steps">What needs hands or has to be begun by them, first things first.</param>
public sealed record WorkStretch(Instant From, Instant Until, IReadOnlyList<TimelineStep> Steps)
{
    /// <summary>Who has so long to do other things may forget what comes next. Our own choice.</summary>
    public static readonly Duration Pause = Duration.FromMinutes(90);

    /// <summary>A plan made anew may move a stretch by so much and it is still the one a host was told of; less than a pause.</summary>
    public static readonly Duration SameWithin = Duration.FromMinutes(60);

    /// <summary>Before a host goes to bed: what would be told in the night is told so long before it.</summary>
    private static readonly Duration BeforeBed = Duration.FromHours(1);

    public static IReadOnlyList<WorkStretch> Of(IReadOnlyList<TimelineStep> steps)
    {
        var stretches = new List<WorkStretch>();
        foreach (var step in steps.Where(IsForHands).OrderBy(step => step.Start).ThenBy(step => step.End))
        {
            var end = step.NeedsHands ? step.End : step.Start;
            if (stretches.Count > 0 && stretches[^1] is var open && step.Start - open.Until < Pause)
            {
                stretches[^1] = new WorkStretch(open.From, Instant.Max(open.Until, end), [.. open.Steps, step]);
            }
            else
            {
                stretches.Add(new WorkStretch(step.Start, end, [step]));
            }
        }

        return stretches;
    }

    public bool IsAbout(Instant begins) => From - begins <= SameWithin && begins - From <= SameWithin;

    /// <summary>When to tell of it: so long ahead, but not while the host sleeps.</summary>
    public Instant TellAt(Duration ahead, HostHours hours, string zone)
    {
        var at = From - ahead;
        var local = at.InZone(NightTime.Zone(zone)!).LocalDateTime;
        return IsAsleep(local.TimeOfDay, hours)
            ? NightTime.ToInstant((local.TimeOfDay >= hours.SleepFrom ? local.Date : local.Date.PlusDays(-1)).At(hours.SleepFrom), zone) - BeforeBed
            : at;
    }

    private static bool IsForHands(TimelineStep step) => step.NeedsHands || step.Kind is StepKind.Temper or StepKind.Preheat or StepKind.WakeYeast or StepKind.Own;

    private static bool IsAsleep(LocalTime time, HostHours hours) => hours.SleepFrom <= hours.SleepUntil
        ? hours.SleepFrom <= time && time < hours.SleepUntil
        : time >= hours.SleepFrom || time < hours.SleepUntil;
}
