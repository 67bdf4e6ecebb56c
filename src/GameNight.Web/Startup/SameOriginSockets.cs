namespace GameNight.Web.Startup;

/// <summary>
/// The live connection of host pages is opened from our own pages only. Browsers let any site open one and send the cookie
/// along; unlike other requests nothing else stops them.
/// </summary>
internal sealed class SameOriginSockets(RequestDelegate next, GameNightOptions options)
{
    private static readonly PathString Live = "/_blazor";

    public Task InvokeAsync(HttpContext context)
    {
        if (context.Request.Path.StartsWithSegments(Live) && !IsOurs(context.Request))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }

        return next(context);
    }

    /// <summary>Browsers always say from where a live connection comes; programs that say nothing carry no cookie of a host.</summary>
    private bool IsOurs(HttpRequest request) =>
        request.Headers.Origin.ToString() is not { Length: > 0 } origin
        || Same(origin, $"{request.Scheme}://{request.Host}")
        || (options.PublicAddress.Length > 0 && Same(origin, options.PublicAddress.TrimEnd('/')));

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
