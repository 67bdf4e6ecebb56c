using GameNight.Nights;
using GameNight.Nights.Links;
using GameNight.Nights.PastNights;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GameNight.Web.Guests;

/// <summary>What a guest reaches through the look-back link, by the rules of every guest page.</summary>
internal static class LookBackEndpoints
{
    private const string Thanks = "Thank you. It is kept, and you can still change it here.";

    public static void MapLookBackPages(this IEndpointRouteBuilder routes)
    {
        var links = routes.MapGroup($"{SecretPaths.LookBack}/{{token}}").ExcludeFromDescription()
            .AddEndpointFilter(routes.ServiceProvider.GetRequiredService<UnknownLinks>());
        links.MapGet("", ShowAsync);
        links.MapPost("", SayAsync).RequireRateLimiting(RateLimits.GuestForm);
    }

    private static async Task<IResult> ShowAsync(string token, LookBackBook book, string? sent, CancellationToken cancellation) =>
        await book.LookAsync(LinkToken.TryParse(token), cancellation) switch
        {
            LookBackLookup.Found { View: var view } => Page(
                token, view, LookBackForm.Of(view), sent is not null && view.Revision > 0 ? Thanks : null, isCare: false),
            LookBackLookup.LinkNotValid invalid => NotValid(invalid.IsExpired),
            var other => throw new InvalidOperationException($"Unknown lookup {other}."),
        };

    private static async Task<IResult> SayAsync(
        string token, HttpContext context, LookBackBook book, CancellationToken cancellation)
    {
        if (GuestEndpoints.ComesFromElsewhere(context.Request))
        {
            return GuestEndpoints.LinkMessage(
                StatusCodes.Status403Forbidden, "Not from here", "This was sent from another site. Open your link and look back there.");
        }

        if (await GuestEndpoints.ReadFormAsync(context, cancellation) is not { } form)
        {
            return GuestEndpoints.LinkMessage(
                StatusCodes.Status413PayloadTooLarge, "Too much text", "What was sent is too long. Go back, shorten your line, and send it again.");
        }

        var link = LinkToken.TryParse(token);
        var lookup = await book.LookAsync(link, cancellation);
        if (lookup is not LookBackLookup.Found { View: var view })
        {
            return NotValid(lookup is LookBackLookup.LinkNotValid { IsExpired: true });
        }

        var typed = LookBackForm.Parse(form);
        if (typed.ToLookBack() is not { } lookBack)
        {
            return Refused($"Type the slices as a number from 0 to {GuestLookBack.MostSlices}, or leave it empty.");
        }

        try
        {
            return await book.SayAsync(link, lookBack, cancellation) switch
            {
                LookBackResult.Kept => new GuestEndpoints.SeeOther($"/b/{token}?sent=yes"),
                LookBackResult.NothingSaid => Refused("Nothing is filled in, so nothing was sent. Tap one thing, or just close the page."),
                LookBackResult.SaidElsewhere { Current: var current } => Page(
                    token, current, typed.Renewed(current.Revision),
                    $"Something was said from elsewhere meanwhile: {PastNightText.Said(current.Said, current.Pies)} Yours is below, not sent yet; send it again to replace that.",
                    isCare: true, StatusCodes.Status409Conflict),
                LookBackResult.Refused { Fault: LookBackFault.WordsTooLong } refused => Refused(
                    $"The line is too long: {refused.Most} characters fit."),
                LookBackResult.Refused refused => Refused($"Type the slices as a number from 0 to {refused.Most}, or leave it empty."),
                LookBackResult.NotOpen => Page(token, view, typed, null, isCare: false, StatusCodes.Status409Conflict),
                LookBackResult.LinkNotValid invalid => NotValid(invalid.IsExpired),
                var other => throw new InvalidOperationException($"Unknown result {other}."),
            };
        }
        catch (NightsUnavailableException)
        {
            context.Response.Headers.RetryAfter = "5";
            return Page(
                token, view, typed, "It could not be saved just now. It is still below: send it again in a moment.",
                isCare: true, StatusCodes.Status503ServiceUnavailable);
        }

        RazorComponentResult<LookBackPage> Refused(string sentence) =>
            Page(token, view, typed, sentence, isCare: true, StatusCodes.Status400BadRequest);
    }

    private static RazorComponentResult<LookBackPage> Page(
        string token, LookBackView view, LookBackForm form, string? notice, bool isCare, int status = StatusCodes.Status200OK) =>
        new(new { View = view, Form = form, Token = token, Notice = notice, NoticeIsCare = isCare }) { StatusCode = status };

    private static RazorComponentResult<LinkPage> NotValid(bool isExpired) => isExpired
        ? GuestEndpoints.LinkMessage(
            StatusCodes.Status410Gone, "This link has ended", "Its time is over. The link of your next night shows this one too.")
        : GuestEndpoints.NotValid(isExpired: false);
}
