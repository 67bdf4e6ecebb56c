using GameNight.Nights;
using GameNight.Web.Shell;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace GameNight.Web.Startup;

/// <summary>What people and programs are told when something fails: plain words, no innards.</summary>
internal static class PlainErrors
{
    public static void Handle(IApplicationBuilder app) => app.Run(async context =>
    {
        var fault = context.Features.Get<IExceptionHandlerFeature>()?.Error;
        if (fault is NightsUnavailableException)
        {
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            context.Response.Headers.RetryAfter = "5";
            await SayAsync(context, Faults.NotReachableTitle, Faults.NotReachable);
            return;
        }

        if (fault is BadHttpRequestException bad)
        {
            context.Response.StatusCode = bad.StatusCode;
            await SayAsync(context, Faults.BrokenRequestTitle, Faults.BrokenRequest);
            return;
        }

        await SayAsync(context, Faults.BrokeTitle, Faults.Broke);
    });

    public static Task SayStatusAsync(StatusCodeContext context) => context.HttpContext.Response.StatusCode switch
    {
        StatusCodes.Status404NotFound => SayAsync(context.HttpContext, Faults.NothingHereTitle, Faults.NothingHere),
        StatusCodes.Status405MethodNotAllowed => SayAsync(context.HttpContext, Faults.NothingHereTitle, Faults.NotLikeThat),
        _ => Task.CompletedTask,
    };

    public static async Task SayAsync(HttpContext context, string title, string sentence)
    {
        if (context.Request.Path.StartsWithSegments("/api"))
        {
            await TypedResults.Problem(new ProblemDetails
            {
                Title = title,
                Detail = sentence,
                Status = context.Response.StatusCode,
            }).ExecuteAsync(context);
            return;
        }

        await new RazorComponentResult<MessagePage>(new { Title = title, Sentence = sentence })
        {
            StatusCode = context.Response.StatusCode,
        }.ExecuteAsync(context);
    }
}
