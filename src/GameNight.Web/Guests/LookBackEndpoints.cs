using GameNight.Nights;
using GameNight.Nights.Links;
using GameNight.Nights.PastNights;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GameNight.Web.Guests;

/// <summary>What a guest reaches through the look-back link, by the rules of every guest page.</summary>
internal static class LookBackEndpoints
{
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
                token, view, LookBackForm.Of(view), sent is not null && view.Revision > 0 ? LookBackPages.Thanks : null, isCare: false),
            LookBackLookup.LinkNotValid invalid => NotValid(invalid.IsExpired),
            var other => throw new InvalidOperationException($"Unknown lookup {other}."),
        };

    private static async Task<IResult> SayAsync(
        string token, HttpContext context, LookBackBook book, CancellationToken cancellation)
    {
        if (GuestEndpoints.ComesFromElsewhere(context.Request))
        {
            return GuestEndpoints.LinkMessage(
                StatusCodes.Status403Forbidden, GuestPages.FromElsewhereTitle, LookBackPages.FromElsewhere);
        }

        if (await GuestEndpoints.ReadFormAsync(context, cancellation) is not { } form)
        {
            return GuestEndpoints.LinkMessage(
                StatusCodes.Status413PayloadTooLarge, GuestPages.TooMuchTitle, LookBackPages.TooMuch);
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
            return Refused(Phrase.Fill(LookBackPages.TypeSlices, GuestLookBack.MostSlices));
        }

        try
        {
            return await book.SayAsync(link, lookBack, cancellation) switch
            {
                LookBackResult.Kept => new GuestEndpoints.SeeOther($"/b/{token}?sent=yes"),
                LookBackResult.NothingSaid => Refused(LookBackPages.NothingIsFilledIn),
                LookBackResult.SaidElsewhere { Current: var current } => Page(
                    token, current, typed.Renewed(current.Revision),
                    Phrase.Fill(LookBackPages.SaidElsewhere, PastNightText.Said(current.Said, current.Pies)),
                    isCare: true, StatusCodes.Status409Conflict),
                LookBackResult.Refused { Fault: LookBackFault.WordsTooLong } refused => Refused(
                    Phrase.Fill(LookBackPages.LineTooLong, refused.Most)),
                LookBackResult.Refused refused => Refused(Phrase.Fill(LookBackPages.TypeSlices, refused.Most)),
                LookBackResult.NotOpen => Page(token, view, typed, null, isCare: false, StatusCodes.Status409Conflict),
                LookBackResult.LinkNotValid invalid => NotValid(invalid.IsExpired),
                var other => throw new InvalidOperationException($"Unknown result {other}."),
            };
        }
        catch (NightsUnavailableException)
        {
            context.Response.Headers.RetryAfter = "5";
            return Page(
                token, view, typed, LookBackPages.CouldNotBeSaved,
                isCare: true, StatusCodes.Status503ServiceUnavailable);
        }

        RazorComponentResult<LookBackPage> Refused(string sentence) =>
            Page(token, view, typed, sentence, isCare: true, StatusCodes.Status400BadRequest);
    }

    private static RazorComponentResult<LookBackPage> Page(
        string token, LookBackView view, LookBackForm form, string? notice, bool isCare, int status = StatusCodes.Status200OK) =>
        new(new { View = view, Form = form, Token = token, Notice = notice, NoticeIsCare = isCare }) { StatusCode = status };

    private static RazorComponentResult<LinkPage> NotValid(bool isExpired) => isExpired
        ? GuestEndpoints.LinkMessage(StatusCodes.Status410Gone, GuestPages.LinkEndedTitle, LookBackPages.LinkEnded)
        : GuestEndpoints.NotValid(isExpired: false);
}
