using System.Security.Claims;
using GameNight.Nights.Records;
using GameNight.Web.Startup;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>
/// Before every page about an account: it is there, the sign-in has not been ended elsewhere, and what is sent comes from our
/// own form.
/// </summary>
internal sealed class SignedInAccount : IEndpointFilter
{
    private static readonly object Key = new();

    public static HostAccount Of(HttpContext context) => (HostAccount)context.Items[Key]!;

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        var users = http.RequestServices.GetRequiredService<UserManager<HostAccount>>();
        var account = await users.GetUserAsync(http.User);
        if (account is null || http.User.SignInStamp() != account.SecurityStamp)
        {
            await http.RequestServices.GetRequiredService<SignInManager<HostAccount>>().SignOutAsync();
            return TypedResults.LocalRedirect("/sign-in");
        }

        http.Items[Key] = account;
        http.Response.Headers.CacheControl = "no-store";
        if (HttpMethods.IsPost(http.Request.Method) && !await http.IsOurFormAsync())
        {
            http.Response.StatusCode = StatusCodes.Status400BadRequest;
            await PlainErrors.SayAsync(http, Faults.NotTakenTitle, Faults.NotTaken);
            return Results.Empty;
        }

        return await next(context);
    }
}

/// <summary>From a signed-in person to their account.</summary>
public static class HostPrincipal
{
    public static HostId? HostIdOf(this ClaimsPrincipal person) =>
        Guid.TryParse(person.FindFirstValue(ClaimTypes.NameIdentifier), out var id) ? new HostId(id) : null;

    /// <summary>Changes when the account is signed out everywhere.</summary>
    public static string? SignInStamp(this ClaimsPrincipal person) =>
        person.FindFirstValue(new ClaimsIdentityOptions().SecurityStampClaimType);
}
