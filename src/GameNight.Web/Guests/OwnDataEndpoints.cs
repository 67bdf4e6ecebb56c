using GameNight.Nights;
using GameNight.Nights.Erasure;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Moving;
using GameNight.Web.Moving;
using GameNight.Web.Startup;
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
                StatusCodes.Status403Forbidden, "Not from here", "This was sent from another site. Open your link and do it there.");
        }

        if (await book.LookAsync(link, cancellation) is not InvitationLookup.Found { Invitation: var invitation })
        {
            return Nothing();
        }

        // A small form: its limits are those of every request.
        var form = await context.Request.ReadFormAsync(cancellation);
        if (form["sure"] != "on")
        {
            return Page(token, invitation, "Tick first that you are sure. Nothing was removed.", StatusCodes.Status400BadRequest);
        }

        try
        {
            return await removal.RemoveOwnAsync(link, cancellation) switch
            {
                RemovalResult.Removed => GuestEndpoints.LinkMessage(
                    StatusCodes.Status200OK, "Your data is removed",
                    "Your name, wishes, must-nots, notes and words are erased, and your links lead nowhere any more. What is kept are counts of past nights without a name: how many came, and how much was eaten."),
                RemovalResult.IsHost => Page(
                    token, invitation, "You are a host of this group. Leave it as a host first, then your data can be removed.",
                    StatusCodes.Status409Conflict),
                _ => Nothing(),
            };
        }
        catch (NightsUnavailableException)
        {
            context.Response.Headers.RetryAfter = "5";
            return Page(
                token, invitation, "That could not be done just now, and nothing was removed. Send it again in a moment.",
                StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static RazorComponentResult<LinkPage> Nothing() => GuestEndpoints.LinkMessage(
        StatusCodes.Status404NotFound, "Nothing is behind this link",
        "If you have just removed your data, it is done. Otherwise the link was replaced, or a letter is missing: ask your host.");

    private static RazorComponentResult<OwnDataPage> Page(
        string token, InvitationView invitation, string? problem = null, int status = StatusCodes.Status200OK) =>
        new(new { Token = token, Invitation = invitation, Problem = problem }) { StatusCode = status };
}
