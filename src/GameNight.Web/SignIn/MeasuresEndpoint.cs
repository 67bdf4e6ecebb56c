using GameNight.Nights.Records;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>Where <see cref="MeasuresChoice"/> is sent: keeps the choice on the account and renews the sign-in with it.</summary>
internal static class MeasuresEndpoint
{
    public const string Path = "/account/measures";

    public static void MapMeasuresChoice(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Path, ChooseAsync).RequireAuthorization().ExcludeFromDescription();

    private static async Task<IResult> ChooseAsync(
        HttpContext context, UserManager<HostAccount> users, SignInManager<HostAccount> signIn, IAntiforgery antiforgery)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var to = LocalTarget(form["to"]);
        if (await antiforgery.IsRequestValidAsync(context)
            && Enum.TryParse<MeasureSystem>(form["measures"], out var chosen) && Enum.IsDefined(chosen)
            && await users.GetUserAsync(context.User) is { } account
            && account.Measures != chosen)
        {
            account.Measures = chosen;
            if ((await users.UpdateAsync(account)).Succeeded)
            {
                await signIn.RefreshSignInAsync(account);
            }
        }

        return TypedResults.LocalRedirect(to);
    }

    /// <summary>Only paths of this app: never another site's address.</summary>
    private static string LocalTarget(string? to) =>
        to is ['/', not ('/' or '\\'), ..] && !to.Any(char.IsControl) ? to : "/";
}
