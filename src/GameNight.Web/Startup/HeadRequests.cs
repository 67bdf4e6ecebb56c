
namespace GameNight.Web.Startup;

/// <summary>Answers HEAD like GET without a body: link previewers ask so, and page endpoints would refuse it.</summary>
internal sealed class HeadRequests(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context)
    {
        if (HttpMethods.IsHead(context.Request.Method))
        {
            context.Request.Method = HttpMethods.Get;
            context.Response.Body = Stream.Null;
        }

        await next(context);
    }
}
