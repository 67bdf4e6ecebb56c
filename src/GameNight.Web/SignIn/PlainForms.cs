using Microsoft.AspNetCore.Antiforgery;

namespace GameNight.Web.SignIn;

/// <summary>What plain forms of hosts have in common.</summary>
internal static class PlainForms
{
    public static AntiforgeryTokenSet Token(this HttpContext context) =>
        context.RequestServices.GetRequiredService<IAntiforgery>().GetAndStoreTokens(context);

    public static Task<bool> IsOurFormAsync(this HttpContext context) =>
        context.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(context);

    public static async Task<string> TypedAsync(this HttpContext context, string field, int longest)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        return form.Typed(field, longest);
    }

    /// <summary>Cut only far beyond what can be right, so that what is too long is told and not taken.</summary>
    public static string Typed(this IFormCollection form, string field, int longest)
    {
        var text = form[field].ToString();
        return text.Length > longest + 1 ? text[..(longest + 1)] : text;
    }

    /// <summary>Only paths of this app: never another site's address.</summary>
    public static string LocalTarget(string? to) =>
        to is "/" or ['/', not ('/' or '\\'), ..] && !to.Any(char.IsControl) ? to : "/";
}
