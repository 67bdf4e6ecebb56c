using System.Text;
using GameNight.Nights;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.PastNights;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using NodaTime;

namespace GameNight.Web.Guests;

/// <summary>
/// What a guest reaches through the private link: plain pages without cookie or script. The link is the authority, so no
/// antiforgery cookie is asked for; browsers that say where a form comes from are listened to.
/// </summary>
internal static class GuestEndpoints
{
    private const long LargestForm = 64 * 1024;

    /// <summary>Up to here a form that is too large is told so; beyond, the connection is cut.</summary>
    private const long LargestDrained = 4 * 1024 * 1024;

    private static readonly FormOptions Limits = new()
    {
        ValueCountLimit = 400,
        ValueLengthLimit = 16 * 1024,
        KeyLengthLimit = 100,
        BufferBodyLengthLimit = LargestForm,
    };

    public static void MapGuestPages(this IEndpointRouteBuilder routes)
    {
        var links = routes.MapGroup("/i/{token}").ExcludeFromDescription()
            .AddEndpointFilter(routes.ServiceProvider.GetRequiredService<UnknownLinks>());
        links.MapGet("", ShowAsync);
        links.MapPost("", AnswerAsync).RequireRateLimiting(RateLimits.GuestForm);
        links.MapGet("night.ics", CalendarAsync);
        links.MapPost("not-me", DisownAsync).RequireRateLimiting(RateLimits.GuestForm);
        links.MapPost("confirm", ConfirmAsync).RequireRateLimiting(RateLimits.GuestForm);
        links.MapPost("forget", ForgetAsync).RequireRateLimiting(RateLimits.GuestForm);
    }

    private static async Task<IResult> ShowAsync(
        string token, GuestBook book, LookBackBook lookBacks, IClock clock, string? sent, [FromQuery(Name = "as")] string? sentAs, string? zone,
        CancellationToken cancellation) =>
        await book.LookAsync(LinkToken.TryParse(token), cancellation) switch
        {
            InvitationLookup.Found found => Page(
                token, found.Invitation, AnswerForm.Of(found.Invitation), Thanks(sent, sentAs, found.Invitation),
                lookBack: found.Invitation.ServeAtInstant <= clock.GetCurrentInstant()
                    ? await lookBacks.LinkOfAsync(LinkToken.TryParse(token), cancellation)
                    : null,
                zone: DateForm.Short(zone)),
            InvitationLookup.LinkNotValid invalid => NotValid(invalid.IsExpired),
            var other => throw new InvalidOperationException($"Unknown lookup {other}."),
        };

    private static async Task<IResult> AnswerAsync(
        string token, HttpContext context, GuestBook book, CancellationToken cancellation)
    {
        if (ComesFromElsewhere(context.Request))
        {
            return LinkMessage(
                StatusCodes.Status403Forbidden, GuestPages.FromElsewhereTitle, GuestPages.FromElsewhere);
        }

        if (await ReadFormAsync(context, cancellation) is not { } form)
        {
            return LinkMessage(
                StatusCodes.Status413PayloadTooLarge, GuestPages.TooMuchTitle, GuestPages.TooMuch);
        }

        var link = LinkToken.TryParse(token);
        var lookup = await book.LookAsync(link, cancellation);
        if (lookup is not InvitationLookup.Found { Invitation: var invitation })
        {
            return NotValid(lookup is InvitationLookup.LinkNotValid { IsExpired: true });
        }

        var typed = AnswerForm.Parse(form, invitation);
        if (typed.ToAnswer() is not { } answer)
        {
            return Page(token, invitation, typed, new(GuestPages.SayWhetherYouCome, IsCare: true), StatusCodes.Status400BadRequest);
        }

        try
        {
            return await book.AnswerAsync(link, answer, cancellation) switch
            {
                AnswerResult.Recorded => Sent(token, KeptNothing(typed) ? "unsaid" : "yes", typed.Key),
                AnswerResult.RecordedAsLateChange => Sent(token, KeptNothing(typed) ? "late-unsaid" : "late", typed.Key),
                AnswerResult.Refused refused => Refused(token, invitation, typed, refused),
                AnswerResult.NightIsCancelled => Sent(token, "cancelled"),
                AnswerResult.LinkNotValid invalid => NotValid(invalid.IsExpired),
                var other => throw new InvalidOperationException($"Unknown result {other}."),
            };
        }
        catch (NightsUnavailableException)
        {
            context.Response.Headers.RetryAfter = "5";
            return Page(
                token, invitation, typed,
                new(GuestPages.CouldNotBeSaved, IsCare: true),
                StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static async Task<IResult> CalendarAsync(string token, GuestBook book, IClock clock, CancellationToken cancellation) =>
        await book.LookAsync(LinkToken.TryParse(token), cancellation) is InvitationLookup.Found found
            ? TypedResults.File(
                Encoding.UTF8.GetBytes(NightCalendar.Write(found.Invitation.Calendar, clock.GetCurrentInstant())),
                $"{NightCalendar.MediaType}; charset=utf-8; method={NightCalendar.MethodOf(found.Invitation.Calendar)}",
                "night.ics")
            : NotValid(false);

    private static async Task<IResult> DisownAsync(string token, HttpContext context, GuestBook book, CancellationToken cancellation) =>
        !ComesFromElsewhere(context.Request) && await book.DisownAsync(LinkToken.TryParse(token), cancellation)
            ? LinkMessage(
                StatusCodes.Status200OK, GuestPages.ThankYou, GuestPages.LinkReachedAnother)
            : NotValid(false);

    private static async Task<IResult> ConfirmAsync(string token, HttpContext context, GuestBook book, CancellationToken cancellation)
    {
        if (ComesFromElsewhere(context.Request))
        {
            return NotValid(false);
        }

        return await book.ConfirmAsync(LinkToken.TryParse(token), cancellation) switch
        {
            AnswerResult.LinkNotValid invalid => NotValid(invalid.IsExpired),
            AnswerResult.NightIsCancelled => Sent(token, "cancelled"),
            _ => Sent(token, "confirmed"),
        };
    }

    private static async Task<IResult> ForgetAsync(string token, HttpContext context, GuestBook book, CancellationToken cancellation) =>
        !ComesFromElsewhere(context.Request) && await book.ForgetAsync(LinkToken.TryParse(token), cancellation)
            ? Sent(token, "forgotten")
            : NotValid(false);

    /// <returns>Null when it is too large or broken.</returns>
    internal static async Task<IFormCollection?> ReadFormAsync(HttpContext context, CancellationToken cancellation)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = LargestDrained;
        }

        try
        {
            if (context.Request.ContentLength > LargestForm)
            {
                // Read to the end and thrown away: a browser that is cut off while sending shows its own error page.
                await context.Request.Body.CopyToAsync(Stream.Null, cancellation);
                return null;
            }

            return await context.Request.ReadFormAsync(Limits, cancellation);
        }
        catch (Exception fault) when (fault is BadHttpRequestException or InvalidDataException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>True when the browser says that another site sent this form. Old browsers say nothing and are let in.</summary>
    internal static bool ComesFromElsewhere(HttpRequest request)
    {
        if (request.Headers["Sec-Fetch-Site"].ToString() is { Length: > 0 } site)
        {
            return site is not ("same-origin" or "none");
        }

        return request.Headers.Origin.ToString() is { Length: > 0 } origin
            && origin != "null"
            && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase);
    }

    private static bool KeptNothing(AnswerForm form) =>
        !form.Consents && (form.Note.Trim().Length > 0 || form.Needs.Any(needs => !needs.IsNone));

    private static string Summary(InvitationView invitation) =>
        invitation.Answer is { } answer ? ReplacedText.Say(answer) : GuestPages.NoAnswer;

    /// <summary>303: reloading or going back never sends the form again.</summary>
    /// <param name="key">Of the answer that was sent: whoever looks again is told when it is not the last any more.</param>
    private static SeeOther Sent(string token, string how, Guid? key = null) =>
        new(key is { } sent ? $"/i/{token}?sent={how}&as={sent:N}" : $"/i/{token}?sent={how}");

    /// <summary>A link that was copied with these thanks promises nothing to whoever has not answered.</summary>
    private static Message? Thanks(string? sent, string? sentAs, InvitationView invitation) => sent switch
    {
        "forgotten" when invitation.Remembered is null => new(GuestPages.NothingRemembered, IsCare: false),
        _ when invitation.Answer is null || invitation.IsCancelled => null,
        // The page says at length what gave way, where both came at once.
        not null when WasReplaced(sentAs, invitation) => invitation.Replaced is null
            ? new(Phrase.Fill(AnswerPages.ReplacedSince, Summary(invitation)), IsCare: true)
            : null,
        "confirmed" when invitation.Moved is null => new(Phrase.Fill(GuestPages.AnswerHolds, invitation.GuestName), IsCare: false),
        "yes" => new(Phrase.Fill(GuestPages.Kept, invitation.GuestName), IsCare: false),
        "late" => new(GuestPages.KeptAsLate, IsCare: false),
        "unsaid" => new(GuestPages.KeptWithoutNeeds, IsCare: true),
        "late-unsaid" => new(GuestPages.KeptAsLateWithoutNeeds, IsCare: true),
        _ => null,
    };

    private static bool WasReplaced(string? sentAs, InvitationView invitation) =>
        Guid.TryParse(sentAs, out var key) && invitation.LastKey != key;

    private static RazorComponentResult<InvitationPage> Refused(
        string token, InvitationView invitation, AnswerForm typed, AnswerResult.Refused refused)
    {
        var (field, sentence) = AnswerFaultText.Say(refused.Fault, refused.Most, invitation.ServeAt, invitation.EndsAt);
        return Page(
            token, invitation, typed, new(sentence, IsCare: true), StatusCodes.Status400BadRequest,
            problems: new Dictionary<string, string> { [field] = sentence });
    }

    private static RazorComponentResult<InvitationPage> Page(
        string token, InvitationView invitation, AnswerForm form, Message? message, int status = StatusCodes.Status200OK,
        LinkToken? lookBack = null, IReadOnlyDictionary<string, string>? problems = null, string zone = "") =>
        new(new
        {
            Invitation = invitation,
            Form = form,
            Token = token,
            Notice = message?.Text,
            NoticeIsCare = message?.IsCare ?? false,
            LookBack = lookBack?.Text,
            Zone = zone,
            Problems = problems ?? new Dictionary<string, string>(),
        })
        {
            StatusCode = status,
        };

    internal static RazorComponentResult<LinkPage> NotValid(bool isExpired) => isExpired
        ? LinkMessage(StatusCodes.Status410Gone, GuestPages.LinkEndedTitle, GuestPages.LinkEnded)
        : LinkMessage(StatusCodes.Status404NotFound, GuestPages.LinkNotValidTitle, GuestPages.LinkNotValid);

    internal static RazorComponentResult<LinkPage> LinkMessage(int status, string title, string sentence) =>
        new(new { Title = title, Sentence = sentence }) { StatusCode = status };

    private sealed record Message(string Text, bool IsCare);

    internal sealed class SeeOther(string location) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
            httpContext.Response.Headers.Location = location;
            return Task.CompletedTask;
        }
    }
}
