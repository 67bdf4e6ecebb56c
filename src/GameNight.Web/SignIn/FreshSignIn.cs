using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>
/// What is hard to undo asks again who it is, unless that was shown within ten minutes; then it leads back to where one was.
/// </summary>
/// <param name="page">Where to come back to; gives null for the same address, asked for as a page.</param>
internal sealed class FreshSignIn(Func<HttpRequest, string?> page) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        var signedIn = await http.AuthenticateAsync(IdentityConstants.ApplicationScheme);
        if (signedIn.Properties is { } ticket && HostSession.IsFresh(ticket, HostSession.Now(http)))
        {
            return await next(context);
        }

        var back = page(http.Request) ?? http.Request.Path + (HttpMethods.IsGet(http.Request.Method) ? http.Request.QueryString.ToString() : "");
        return TypedResults.LocalRedirect($"/confirm?to={Uri.EscapeDataString(back)}");
    }
}

internal static class FreshSignInExtensions
{
    /// <inheritdoc cref="FreshSignIn"/>
    public static T RequireFreshSignIn<T>(this T endpoint, string? page = null)
        where T : IEndpointConventionBuilder => endpoint.RequireFreshSignIn(_ => page);

    /// <inheritdoc cref="FreshSignIn"/>
    public static T RequireFreshSignIn<T>(this T endpoint, Func<HttpRequest, string?> page)
        where T : IEndpointConventionBuilder => endpoint.AddEndpointFilter(new FreshSignIn(page));
}
