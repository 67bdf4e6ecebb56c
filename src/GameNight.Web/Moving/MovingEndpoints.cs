using GameNight.Nights.Erasure;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Membership;
using GameNight.Nights.Moving;
using GameNight.Nights.Records;
using GameNight.Web.SignIn;
using GameNight.Web.Startup;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;

namespace GameNight.Web.Moving;

/// <summary>
/// Leaving and moving: a group as a document, lists, and its end. Plain pages: files are sent and received by plain requests.
/// </summary>
internal static class MovingEndpoints
{
    public static void MapMoving(this IEndpointRouteBuilder routes)
    {
        var group = routes.MapGroup("/g/{group:guid}").RequireAuthorization().ExcludeFromDescription();
        group.MapGet("moving", ShowAsync);
        group.MapPost("moving/document", ExportAsync).RequireRateLimiting(RateLimits.Export).RequireFreshSignIn(Page);
        group.MapPost("moving/delete", DeleteAsync).RequireFreshSignIn(Page);
        group.MapGroup("moving").MapLists();
        routes.MapBringIn();
    }

    /// <summary>A phone left on the table must neither take a whole group along nor delete it.</summary>
    private static string Page(HttpRequest request) => $"/g/{request.RouteValues["group"]}/moving";

    private static async Task<IResult> ShowAsync(
        Guid group, HttpContext context, GroupDesk groups, HostDesk nights, IAntiforgery antiforgery, CancellationToken cancellation) =>
        await Entrance.OfAsync(context, groups, group, HostRole.Organiser, cancellation) is { } access
            ? await PageAsync(context, access, groups, nights, antiforgery, null, cancellation)
            : TypedResults.NotFound();

    private static async Task<IResult> ExportAsync(
        Guid group, HttpContext context, GroupDesk groups, HostDesk nights, GroupExport export, IAntiforgery antiforgery,
        IClock clock, ILogger<GroupDownload> log,
        CancellationToken cancellation)
    {
        if (await Entrance.OfAsync(context, groups, group, HostRole.Owner, cancellation) is not { } access)
        {
            return TypedResults.NotFound();
        }

        if (!await antiforgery.IsRequestValidAsync(context))
        {
            return await PageAsync(context, access, groups, nights, antiforgery, new(MovingPart.Document, Faults.OpenTooLong), cancellation);
        }

        var busy = await PageAsync(
            context, access, groups, nights, antiforgery,
            new(MovingPart.Document, MovingPages.StillDownloading), cancellation);
        return new GroupDownload(export, access, clock, () => busy, log);
    }

    private static async Task<IResult> DeleteAsync(
        Guid group, HttpContext context, GroupDesk groups, HostDesk nights, GroupRemoval removal, IAntiforgery antiforgery,
        CancellationToken cancellation)
    {
        if (await Entrance.OfAsync(context, groups, group, HostRole.Owner, cancellation) is not { } access)
        {
            return TypedResults.NotFound();
        }

        if (!await antiforgery.IsRequestValidAsync(context))
        {
            return await PageAsync(context, access, groups, nights, antiforgery, new(MovingPart.End, Faults.OpenTooLong), cancellation);
        }

        var form = await context.Request.ReadFormAsync(cancellation);
        return await removal.DeleteAsync(access, form["name"].ToString(), cancellation) switch
        {
            GroupRemovalResult.OtherName => await PageAsync(
                context, access, groups, nights, antiforgery,
                new(MovingPart.End, MovingPages.NotThatName), cancellation),
            GroupRemovalResult.Deleted => new RazorComponentResult<Shell.MessagePage>(new
            {
                Title = MovingPages.DeletedTitle,
                Sentence = MovingPages.Deleted,
            }),
            _ => TypedResults.NotFound(),
        };
    }

    private static async Task<IResult> PageAsync(
        HttpContext context, GroupAccess access, GroupDesk groups, HostDesk nights, IAntiforgery antiforgery,
        MovingProblem? problem, CancellationToken cancellation)
    {
        var here = (await groups.GroupsOfAsync(access.HostId!.Value, cancellation)).SingleOrDefault(group => group.Id == access.GroupId);
        if (here is null)
        {
            return TypedResults.NotFound();
        }

        context.Response.Headers.CacheControl = "no-store";
        return new RazorComponentResult<MovingPage>(new
        {
            Group = here,
            SeesNotes = access.SeesNotes,
            Nights = await nights.NightsAsync(access, cancellation),
            Token = antiforgery.GetAndStoreTokens(context),
            Problem = problem,
        })
        {
            StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };
    }
}
