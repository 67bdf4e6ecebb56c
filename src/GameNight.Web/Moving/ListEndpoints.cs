using GameNight.Nights.Membership;
using GameNight.Nights.Moving;
using GameNight.Nights.Records;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Moving;

/// <summary>Lists as CSV: people, past nights, the guests of a night with their answers.</summary>
internal static class ListEndpoints
{
    private static readonly LocalTimePattern Times = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public static void MapLists(this IEndpointRouteBuilder group)
    {
        group.MapGet("people.csv", PeopleAsync);
        group.MapGet("past-nights.csv", PastNightsAsync);
        group.MapGet("/n/{night:guid}/guests.csv", GuestsAsync);
    }

    private static async Task<IResult> PeopleAsync(
        Guid group, HttpContext context, GroupDesk groups, GroupLists lists, IClock clock, CancellationToken cancellation) =>
        await Entrance.OfAsync(context, groups, group, HostRole.Organiser, cancellation) is not { } access
            ? TypedResults.NotFound()
            : Send(context, clock, "people", Csv.Write(
                ["name", "eats like", "host", "invited to every night", "shows their name", "household", "for one night only"],
                (await lists.PeopleAsync(access, cancellation)).Select(person => (IReadOnlyList<object?>)[
                    person.Name, WordText.Say(person.Portion), YesNo(person.IsHost), YesNo(person.IsStanding), YesNo(person.ShowsName), person.Household,
                    YesNo(person.IsOneOff),
                ])));

    private static async Task<IResult> PastNightsAsync(
        Guid group, HttpContext context, GroupDesk groups, GroupLists lists, IClock clock, CancellationToken cancellation) =>
        await Entrance.OfAsync(context, groups, group, HostRole.Organiser, cancellation) is not { } access
            ? TypedResults.NotFound()
            : Send(context, clock, "past-nights", Csv.Write(
                ["night", "served", "time zone", "called off", "invited", "said coming", "came", "pies planned", "pies baked", "slices left"],
                (await lists.PastNightsAsync(access, cancellation)).Select(night => (IReadOnlyList<object?>)[
                    night.Title, Local(night.ServeAt), night.Zone, YesNo(night.WasCancelled), night.Invited, night.SaidComing,
                    night.Came, night.PiesPlanned, night.PiesBaked, night.SlicesLeft,
                ])));

    private static async Task<IResult> GuestsAsync(
        Guid group, Guid night, HttpContext context, GroupDesk groups, GroupLists lists, IClock clock, CancellationToken cancellation)
    {
        if (await Entrance.OfAsync(context, groups, group, HostRole.Organiser, cancellation) is not { } access
            || await lists.GuestsAsync(access, new NightId(night), cancellation) is not { } found)
        {
            return TypedResults.NotFound();
        }

        return Send(context, clock, $"guests-{found.Night.Title}", Csv.Write(
            ["name", "eats like", "answer", "from elsewhere", "hunger", "companions", "answered", "after the dough was begun", "comes at",
                "leaves at", "place on the waiting list", "household", "for one night only"],
            found.Guests.Select(guest => (IReadOnlyList<object?>)[
                guest.Name.Length > 0 ? guest.Name : MovingPages.FormerGuest,
                WordText.Say(guest.Portion),
                guest.Answer is { } answer ? WordText.Say(answer.Presence) : MovingPages.AnswerMissing,
                guest.Answer is { } from ? YesNo(from.Remotely) : "",
                guest.Answer is { } hungry ? WordText.Say(hungry.Hunger) : "",
                guest.Answer is { } along ? string.Join("; ", along.Companions.Select(companion => WordText.Say(companion.Portion))) : "",
                guest.AnsweredAt is { } at ? InstantPattern.General.Format(at) : "",
                guest.Answer is null ? "" : YesNo(guest.IsLate),
                TimeOf(guest.Answer?.ComesAtMinute),
                TimeOf(guest.Answer?.LeavesAtMinute),
                guest.WaitingPlace,
                guest.Household,
                YesNo(guest.IsOneOff),
            ])));
    }

    private static FileContentHttpResult Send(HttpContext context, IClock clock, string about, byte[] csv)
    {
        Download.Declare(context.Response, "text/csv; charset=utf-8; header=present", about, clock.GetCurrentInstant(), "csv");
        return TypedResults.Bytes(csv, context.Response.ContentType);
    }

    private static string Local(LocalDateTime time) => LocalDateTimePattern.GeneralIso.Format(time);

    private static string TimeOf(int? minute) =>
        minute is { } at ? Times.Format(LocalTime.FromMinutesSinceMidnight(at)) : "";

    private static string YesNo(bool says) => says ? MovingPages.Yes : MovingPages.No;
}
