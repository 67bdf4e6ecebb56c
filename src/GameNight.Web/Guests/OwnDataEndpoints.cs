using GameNight.Nights;
using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Moving;
using GameNight.Web.Moving;
using GameNight.Web.Startup;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;

namespace GameNight.Web.Guests;

/// <summary>What a guest can do about what is kept of them: read it, take it along, have it removed.</summary>
internal static class OwnDataEndpoints
{
    public static void MapOwnDataPages(this IEndpointRouteBuilder routes)
    {
        var own = routes.MapGroup("/i/{token}/my-data").ExcludeFromDescription();
        own.MapGet("", ShowAsync);
        own.MapGet("copy.json", CopyAsync).RequireRateLimiting(RateLimits.Export);
        own.MapPost("remove", RemoveAsync).RequireRateLimiting(RateLimits.GuestForm);
    }

    private static async Task<IResult> ShowAsync(string token, GuestBook book, CancellationToken cancellation) =>
        await book.LookAsync(LinkToken.TryParse(token), cancellation) switch
        {
            InvitationLookup.Found found => Page(token, found.Invitation),
            InvitationLookup.LinkNotValid invalid => GuestEndpoints.NotValid(invalid.IsExpired),
            var other => throw new InvalidOperationException($"Unknown lookup {other}."),
        };

    private static async Task<IResult> CopyAsync(
        string token, HttpContext context, OwnCopy copies, IClock clock, CancellationToken cancellation)
    {
        if (await copies.WriteAsync(LinkToken.TryParse(token), cancellation) is not { } copy)
        {
            return GuestEndpoints.NotValid(false);
        }

        Download.Declare(context.Response, "application/json; charset=utf-8", "my-game-nights", clock.GetCurrentInstant(), "json");
        return TypedResults.Bytes(copy, context.Response.ContentType);
    }

    private static async Task<IResult> RemoveAsync(
        string token, HttpContext context, GuestBook book, GuestRemoval removal, CancellationToken cancellation)
    {
        var link = LinkToken.TryParse(token);
        if (GuestEndpoints.ComesFromElsewhere(context.Request))
        {
            return GuestEndpoints.LinkMessage(
                StatusCodes.Status403Forbidden, GuestPages.FromElsewhereTitle, LookBackPages.RemoveFromElsewhere);
        }

        if (await book.LookAsync(link, cancellation) is not InvitationLookup.Found { Invitation: var invitation })
        {
            return Nothing();
        }

        // A small form: its limits are those of every request.
        var form = await context.Request.ReadFormAsync(cancellation);
        if (form["sure"] != "on")
        {
            return Page(token, invitation, LookBackPages.TickFirst, StatusCodes.Status400BadRequest);
        }

        try
        {
            return await removal.RemoveOwnAsync(link, cancellation) switch
            {
                RemovalResult.Removed => GuestEndpoints.LinkMessage(
                    StatusCodes.Status200OK, LookBackPages.RemovedTitle, LookBackPages.Removed),
                RemovalResult.IsHost => Page(token, invitation, LookBackPages.YouAreHost, StatusCodes.Status409Conflict),
                _ => Nothing(),
            };
        }
        catch (NightsUnavailableException)
        {
            context.Response.Headers.RetryAfter = "5";
            return Page(token, invitation, LookBackPages.CouldNotBeRemoved, StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static RazorComponentResult<LinkPage> Nothing() => GuestEndpoints.LinkMessage(
        StatusCodes.Status404NotFound, LookBackPages.NothingBehindLinkTitle, LookBackPages.NothingBehindLink);

    private static RazorComponentResult<OwnDataPage> Page(
        string token, InvitationView invitation, string? problem = null, int status = StatusCodes.Status200OK) =>
        new(new { Token = token, Invitation = invitation, Problem = problem }) { StatusCode = status };
}
