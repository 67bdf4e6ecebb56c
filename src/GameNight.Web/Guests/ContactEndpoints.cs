using GameNight.Nights;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Web.Startup;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GameNight.Web.Guests;

/// <summary>How a guest hears of nights: an address, a calendar that keeps itself up to date, and an end to messages.</summary>
internal static class ContactEndpoints
{
    public static void MapContactPages(this IEndpointRouteBuilder routes)
    {
        var unknown = routes.ServiceProvider.GetRequiredService<UnknownLinks>();
        var own = routes.MapGroup($"{SecretPaths.Answer}/{{token}}/messages").ExcludeFromDescription().AddEndpointFilter(unknown);
        own.MapGet("", ShowAsync);
        var sending = own.MapGroup("").RequireRateLimiting(RateLimits.GuestForm);
        sending.MapPost("", ReachAsync);
        sending.MapPost("stop", (string token, HttpContext context, ContactBook book, CancellationToken cancellation) =>
            ChangeAsync(token, context, link => book.StopAsync(link, LinkScope.Answer, cancellation)));
        sending.MapPost("start", (string token, HttpContext context, ContactBook book, CancellationToken cancellation) =>
            ChangeAsync(token, context, link => book.StartAsync(link, LinkScope.Answer, cancellation)));
        sending.MapPost("calendar", (string token, HttpContext context, ContactBook book, CancellationToken cancellation) =>
            ChangeAsync(token, context, link => book.RenewFeedAsync(link, cancellation)));

        var stop = routes.MapGroup($"{SecretPaths.Unsubscribe}/{{token}}").ExcludeFromDescription().AddEndpointFilter(unknown);
        stop.MapGet("", (string token, ContactBook book, CancellationToken cancellation) => StopPageAsync(
            token, link => book.LookAsync(link, LinkScope.Unsubscribe, cancellation)));

        // Mail programs send this by themselves (RFC 8058): without cookie, from wherever, and without following redirects.
        stop.MapPost("", (string token, ContactBook book, CancellationToken cancellation) => StopPageAsync(
            token, link => book.StopAsync(link, LinkScope.Unsubscribe, cancellation))).RequireRateLimiting(RateLimits.GuestForm);
        stop.MapPost("start", (string token, ContactBook book, CancellationToken cancellation) => StopPageAsync(
            token, link => book.StartAsync(link, LinkScope.Unsubscribe, cancellation))).RequireRateLimiting(RateLimits.GuestForm);
    }

    private static async Task<IResult> ShowAsync(
        string token, ContactBook book, GameNightOptions options, HttpRequest request, CancellationToken cancellation) =>
        await book.LookAsync(LinkToken.TryParse(token), LinkScope.Answer, cancellation) is { } contact
            ? Page(token, contact, AddressOf(options, request))
            : GuestEndpoints.NotValid(false);

    private static async Task<IResult> ReachAsync(
        string token, HttpContext context, ContactBook book, GameNightOptions options, CancellationToken cancellation)
    {
        var link = LinkToken.TryParse(token);
        if (GuestEndpoints.ComesFromElsewhere(context.Request)
            || await book.LookAsync(link, LinkScope.Answer, cancellation) is not { } contact)
        {
            return GuestEndpoints.NotValid(false);
        }

        if (await GuestEndpoints.ReadFormAsync(context, cancellation) is not { } form)
        {
            return GuestEndpoints.LinkMessage(
                StatusCodes.Status413PayloadTooLarge, GuestPages.TooMuchTitle, GuestPages.TooMuch);
        }

        var typed = form["address"].ToString().Trim();
        var problem = typed.Length == 0 ? null
            : MailAddressCheck.Plain(typed) is null ? MessagePages.NoAddress
            : !form.ContainsKey("consent") ? MessagePages.AgreeFirst
            : null;
        if (problem is not null)
        {
            return Page(token, contact with { Address = typed }, AddressOf(options, context.Request), problem, StatusCodes.Status400BadRequest);
        }

        try
        {
            await book.ReachAsync(link, typed, cancellation);
            return Sent(token);
        }
        catch (NightsUnavailableException)
        {
            context.Response.Headers.RetryAfter = "5";
            return Page(
                token, contact with { Address = typed }, AddressOf(options, context.Request), GuestPages.CouldNotBeSaved,
                StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static async Task<IResult> ChangeAsync(
        string token, HttpContext context, Func<LinkToken?, Task<ContactView?>> change) =>
        !GuestEndpoints.ComesFromElsewhere(context.Request) && await change(LinkToken.TryParse(token)) is not null
            ? Sent(token)
            : GuestEndpoints.NotValid(false);

    private static async Task<IResult> StopPageAsync(string token, Func<LinkToken?, Task<ContactView?>> act) =>
        await act(LinkToken.TryParse(token)) is { } contact
            ? new RazorComponentResult<StopPage>(new { Token = token, Contact = contact })
            : GuestEndpoints.NotValid(false);

    private static GuestEndpoints.SeeOther Sent(string token) => new($"{SecretPaths.Answer}/{token}/messages");

    private static Uri AddressOf(GameNightOptions options, HttpRequest request) =>
        new(options.PublicAddress.Length > 0 ? options.PublicAddress : $"{request.Scheme}://{request.Host}");

    private static RazorComponentResult<ContactPage> Page(
        string token, ContactView contact, Uri address, string? problem = null, int status = StatusCodes.Status200OK) =>
        new(new { Token = token, Contact = contact, Address = address, Problem = problem }) { StatusCode = status };
}
