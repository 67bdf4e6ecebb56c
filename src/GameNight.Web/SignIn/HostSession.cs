using System.Globalization;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace GameNight.Web.SignIn;

/// <summary>
/// How long a sign-in lasts. The times lie in the properties of its ticket, which live through every renewal of the cookie,
/// unlike its claims.
/// </summary>
internal static class HostSession
{
    private const string Since = "gn.since";
    private const string ProvenAt = "gn.proven-at";

    /// <summary>Sliding, with an end; called after the identity services have set their own events.</summary>
    public static void Limit(CookieAuthenticationOptions cookie)
    {
        cookie.ExpireTimeSpan = AccountRules.IdleSession;
        cookie.SlidingExpiration = true;
        cookie.Events.OnSigningIn = context =>
        {
            Begin(context.Properties, Now(context.HttpContext));
            return Task.CompletedTask;
        };
        var checkStamp = cookie.Events.OnValidatePrincipal;
        cookie.Events.OnValidatePrincipal = async context =>
        {
            if (IsOver(context.Properties, Now(context.HttpContext)))
            {
                context.RejectPrincipal();
                await context.HttpContext.SignOutAsync(context.Scheme.Name);
                return;
            }

            await checkStamp(context);
        };
    }

    public static bool IsOver(AuthenticationProperties ticket, DateTimeOffset now) =>
        Read(ticket, Since) is not { } since || now - since >= AccountRules.LongestSession;

    public static bool IsFresh(AuthenticationProperties ticket, DateTimeOffset now) =>
        Read(ticket, ProvenAt) is { } proven && now - proven <= AccountRules.FreshFor;

    /// <summary>The host has just shown again that it is them. The end of the session stays where it is.</summary>
    public static void Prove(AuthenticationProperties ticket, DateTimeOffset now)
    {
        Write(ticket, ProvenAt, now);
        ticket.IssuedUtc = null;
        ticket.ExpiresUtc = null;
    }

    public static DateTimeOffset Now(HttpContext context) =>
        context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();

    private static void Begin(AuthenticationProperties ticket, DateTimeOffset now)
    {
        foreach (var time in new[] { Since, ProvenAt }.Where(time => Read(ticket, time) is null))
        {
            Write(ticket, time, now);
        }
    }

    private static DateTimeOffset? Read(AuthenticationProperties ticket, string time) =>
        ticket.Items.TryGetValue(time, out var text)
        && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var at) ? at : null;

    private static void Write(AuthenticationProperties ticket, string time, DateTimeOffset at) =>
        ticket.Items[time] = at.ToString("O", CultureInfo.InvariantCulture);
}
