using GameNight.Nights;
using GameNight.Nights.Dates;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;

namespace GameNight.Web.Guests;

/// <summary>What a guest reaches who is asked for a date, by the rules of every guest page.</summary>
internal static class DateEndpoints
{
    public static void MapDatePages(this IEndpointRouteBuilder routes)
    {
        var links = routes.MapGroup($"{SecretPaths.Dates}/{{token}}").ExcludeFromDescription()
            .AddEndpointFilter(routes.ServiceProvider.GetRequiredService<UnknownLinks>());
        links.MapGet("", ShowAsync);
        links.MapPost("", AnswerAsync).RequireRateLimiting(RateLimits.GuestForm);
        links.MapPost("not-me", DisownAsync).RequireRateLimiting(RateLimits.GuestForm);
    }

    private static async Task<IResult> ShowAsync(
        string token, DateBook book, IClock clock, string? sent, string? zone, CancellationToken cancellation) =>
        await book.LookAsync(LinkToken.TryParse(token), cancellation) switch
        {
            DateLookup.Found { Question: var question } => Page(
                token, question, DateForm.Of(question, zone), clock, Thanks(sent, question), isCare: false),
            DateLookup.LinkNotValid invalid => GuestEndpoints.NotValid(invalid.IsExpired),
            var other => throw new InvalidOperationException($"Unknown lookup {other}."),
        };

    private static async Task<IResult> AnswerAsync(
        string token, HttpContext context, DateBook book, IClock clock, CancellationToken cancellation)
    {
        if (GuestEndpoints.ComesFromElsewhere(context.Request))
        {
            return GuestEndpoints.LinkMessage(StatusCodes.Status403Forbidden, GuestPages.FromElsewhereTitle, GuestPages.FromElsewhere);
        }

        if (await GuestEndpoints.ReadFormAsync(context, cancellation) is not { } form)
        {
            return GuestEndpoints.LinkMessage(StatusCodes.Status413PayloadTooLarge, GuestPages.TooMuchTitle, GuestPages.TooMuch);
        }

        var link = LinkToken.TryParse(token);
        var lookup = await book.LookAsync(link, cancellation);
        if (lookup is not DateLookup.Found { Question: var question })
        {
            return GuestEndpoints.NotValid(lookup is DateLookup.LinkNotValid { IsExpired: true });
        }

        var typed = DateForm.Parse(form, question);
        var back = typed.Zone.Length > 0 ? $"&zone={Uri.EscapeDataString(typed.Zone)}" : "";
        try
        {
            return await book.AnswerAsync(link, typed.ToReply(), cancellation) switch
            {
                DateReplyResult.Recorded recorded => new GuestEndpoints.SeeOther($"/d/{token}?sent={(recorded.IsLate ? "late" : "yes")}{back}"),
                DateReplyResult.NoLongerAsked => new GuestEndpoints.SeeOther($"/d/{token}"),
                DateReplyResult.NothingSaid => Page(
                    token, question, typed, clock, DateGuestPages.SaySomething, isCare: true, StatusCodes.Status400BadRequest),
                DateReplyResult.LinkNotValid invalid => GuestEndpoints.NotValid(invalid.IsExpired),
                var other => throw new InvalidOperationException($"Unknown result {other}."),
            };
        }
        catch (NightsUnavailableException)
        {
            context.Response.Headers.RetryAfter = "5";
            return Page(
                token, question, typed, clock, DateGuestPages.CouldNotBeSaved, isCare: true, StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static async Task<IResult> DisownAsync(string token, HttpContext context, DateBook book, CancellationToken cancellation) =>
        !GuestEndpoints.ComesFromElsewhere(context.Request) && await book.DisownAsync(LinkToken.TryParse(token), cancellation)
            ? GuestEndpoints.LinkMessage(StatusCodes.Status200OK, GuestPages.ThankYou, GuestPages.LinkReachedAnother)
            : GuestEndpoints.NotValid(false);

    /// <summary>A link that was copied with these thanks promises nothing to whoever has not answered.</summary>
    private static string? Thanks(string? sent, DateQuestion question) => sent switch
    {
        _ when question.Revision == 0 || question.State != DateChoiceState.Open => null,
        "yes" => Phrase.Fill(DateGuestPages.Kept, question.GuestName),
        "late" => Phrase.Fill(DateGuestPages.KeptLate, question.GuestName),
        _ => null,
    };

    private static RazorComponentResult<DatePage> Page(
        string token, DateQuestion question, DateForm form, IClock clock, string? notice, bool isCare, int status = StatusCodes.Status200OK) =>
        new(new { Question = question, Form = form, Token = token, Now = clock.GetCurrentInstant(), Notice = notice, NoticeIsCare = isCare })
        {
            StatusCode = status,
        };
}
