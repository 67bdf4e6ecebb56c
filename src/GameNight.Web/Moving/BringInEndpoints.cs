using GameNight.Nights;
using GameNight.Nights.Moving;
using GameNight.Nights.Records;
using GameNight.Web.SignIn;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GameNight.Web.Moving;

/// <summary>Takes a group in from a document.</summary>
internal static class BringInEndpoints
{
    /// <summary>Room for the form around the file.</summary>
    private const long LargestForm = 64 * 1024;

    /// <summary>Up to here a document that is too large is told so; beyond, the connection is cut.</summary>
    private const long LargestDrained = 64 * 1024 * 1024;

    /// <summary>All in memory: a document with notes must not be left in a folder for temporary files.</summary>
    private static readonly FormOptions Limits = new()
    {
        ValueCountLimit = 10,
        MemoryBufferThreshold = GroupImport.Largest + 1,
        MultipartBodyLengthLimit = GroupImport.Largest,
        BufferBodyLengthLimit = GroupImport.Largest + LargestForm,
    };

    public static void MapBringIn(this IEndpointRouteBuilder routes)
    {
        var page = routes.MapGroup("/bring-in").RequireAuthorization().ExcludeFromDescription();
        page.MapGet("", (HttpContext context, IAntiforgery antiforgery) => Page(context, antiforgery, []));
        page.MapPost("", TakeInAsync);
    }

    private static async Task<IResult> TakeInAsync(
        HttpContext context, GroupImport import, IAntiforgery antiforgery, CancellationToken cancellation)
    {
        if (context.User.HostIdOf() is not { } host)
        {
            return TypedResults.LocalRedirect("/sign-in");
        }

        using var turn = import.TryTakeTurn(host);
        if (turn is null)
        {
            context.Response.Headers.RetryAfter = "10";
            return Page(context, antiforgery, [MovingPages.TakingInAlready], StatusCodes.Status429TooManyRequests);
        }

        if (await ReadAsync(context, cancellation) is not { } form)
        {
            return Page(
                context, antiforgery, [Phrase.Fill(MovingPages.TooLarge, BringInPage.LargestMegabytes)],
                StatusCodes.Status413PayloadTooLarge);
        }

        if (!await antiforgery.IsRequestValidAsync(context) || !Guid.TryParse(form["id"], out var id))
        {
            return Page(context, antiforgery, [MovingPages.ChooseFileAgain]);
        }

        if (form.Files.GetFile("document") is not { Length: > 0 } file)
        {
            return Page(context, antiforgery, [MovingPages.ChooseFile]);
        }

        var bytes = new byte[file.Length];
        await using (var content = file.OpenReadStream())
        {
            await content.ReadExactlyAsync(bytes, cancellation);
        }

        return await FoundAsync(context, import, antiforgery, host, new GroupId(id), bytes, cancellation);
    }

    private static async Task<IResult> FoundAsync(
        HttpContext context, GroupImport import, IAntiforgery antiforgery, HostId host, GroupId id, byte[] bytes,
        CancellationToken cancellation)
    {
        try
        {
            return await import.FoundAsync(host, id, bytes, cancellation) switch
            {
                ImportResult.Imported imported => new SeeOther($"/g/{imported.Group}"),
                ImportResult.AlreadyThere there => new RazorComponentResult<AlreadyTherePage>(new { Group = there.Group })
                {
                    StatusCode = StatusCodes.Status409Conflict,
                },
                ImportResult.NotOurs => Page(context, antiforgery, [Phrase.Fill(MovingPages.NotOurs, MovingPages.DownloadDocument)]),
                ImportResult.FromTheFuture future => Page(
                    context, antiforgery, [Phrase.Fill(MovingPages.FromTheFuture, future.Version, future.Newest)]),
                ImportResult.Refused refused => Page(
                    context, antiforgery, [.. refused.Problems.Select(DocumentProblemText.Say)]),
                var other => throw new InvalidOperationException($"Unknown result {other}."),
            };
        }
        catch (NightsUnavailableException)
        {
            context.Response.Headers.RetryAfter = "5";
            return Page(context, antiforgery, [MovingPages.NotReachable], StatusCodes.Status503ServiceUnavailable, id);
        }
    }

    /// <returns>Null when it is too large or broken.</returns>
    private static async Task<IFormCollection?> ReadAsync(HttpContext context, CancellationToken cancellation)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = LargestDrained;
        }

        try
        {
            if (context.Request.ContentLength > GroupImport.Largest + LargestForm)
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

    private static RazorComponentResult<BringInPage> Page(
        HttpContext context, IAntiforgery antiforgery, IReadOnlyList<string> problems, int? status = null, GroupId? id = null)
    {
        context.Response.Headers.CacheControl = "no-store";
        return new(new { Id = id ?? GroupId.New(), Problems = problems, Token = antiforgery.GetAndStoreTokens(context) })
        {
            StatusCode = status ?? (problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest),
        };
    }

    private sealed class SeeOther(string location) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
            httpContext.Response.Headers.Location = location;
            return Task.CompletedTask;
        }
    }
}
