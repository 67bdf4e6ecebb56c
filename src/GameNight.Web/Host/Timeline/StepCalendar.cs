using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using GameNight.Web.Moving;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using NodaTime;

namespace GameNight.Web.Host.Timeline;

/// <summary>The steps of a night for the host's own calendar, each with an alarm (RFC 5545). A step keeps its UID: brought in again, it moves.</summary>
internal static class StepCalendar
{
    /// <summary>Long enough to get up and wash hands.</summary>
    private static readonly Ical.Net.DataTypes.Duration Ahead = Ical.Net.DataTypes.Duration.FromMinutes(-10);

    /// <summary>Sequence numbers count seconds from here: a plan made later has a higher one.</summary>
    private static readonly Instant Counted = Instant.FromUtc(2026, 1, 1, 0, 0);

    public static void MapStepCalendar(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/g/{group:guid}/n/{night:guid}/steps.ics", ReadAsync).RequireAuthorization().ExcludeFromDescription();

    public static string Write(NightId night, string title, IReadOnlyList<TimelineStep> steps, OwnStepNames own, Instant madeAt, Instant now)
    {
        var calendar = new Calendar { ProductId = "-//GameNight//Steps//EN", Method = "PUBLISH" };
        foreach (var step in steps.Where(step => step.NeedsHands || step.Kind is StepKind.Temper or StepKind.Preheat or StepKind.WakeYeast or StepKind.Knead or StepKind.Own or StepKind.PutAway))
        {
            // Of what stands on the table the end counts.
            var begins = step.Kind == StepKind.PutAway ? step.End : step.Start;
            var one = new CalendarEvent
            {
                Uid = $"{night}-{step.Id}@gamenight",
                Sequence = (int)Math.Max(0, (madeAt - Counted).TotalSeconds),
                Summary = Phrase.Fill(TimelinePages.StepOfNight, LiveText.Do(step.Kind, step.Number, own), title),
                Description = step.Kind == StepKind.Own ? null : Phrase.Fill(TimelinePages.DoneWhen, CueText.Say(step.Kind)),
                Start = At(begins),
                End = At(step.NeedsHands ? step.End : begins),
                DtStamp = At(now),
                Transparency = step.NeedsHands ? "OPAQUE" : "TRANSPARENT",
            };
            one.Alarms.Add(new Alarm { Action = AlarmAction.Display, Description = one.Summary, Trigger = new Trigger(Ahead) });
            calendar.Events.Add(one);
        }

        return new CalendarSerializer().SerializeToString(calendar)!;
    }

    private static async Task<IResult> ReadAsync(
        Guid group, Guid night, int? by, HttpContext context, GroupDesk groups, HostDesk nights, PlanDesk plans, IClock clock, CancellationToken cancellation)
    {
        if (await Entrance.OfAsync(context, groups, group, HostRole.Cook, cancellation) is not { } access
            || await nights.NightAsync(access, new NightId(night), cancellation) is not { } view
            || await plans.PlanAsync(access, new NightId(night), cancellation) is not { Plan: { } plan, MadeAt: { } madeAt })
        {
            return TypedResults.NotFound();
        }

        var now = clock.GetCurrentInstant();
        Download.Declare(context.Response, "text/calendar; charset=utf-8; method=PUBLISH", $"steps-{view.Facts.Title}", now, "ics");
        return TypedResults.Text(Write(new NightId(night), view.Facts.Title, People.StepsOf(plan.Timeline.Steps, by), new OwnStepNames(view.Overrides.Own), madeAt, now), context.Response.ContentType);
    }

    private static CalDateTime At(Instant at) => new(at.ToDateTimeUtc(), "UTC");
}
