using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.SignIn;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.Account;

/// <summary>A new password, or none beside a passkey. Either ends the sign-ins on other devices.</summary>
internal static class PasswordEndpoints
{
    public static void MapPasswords(this IEndpointRouteBuilder pages, IEndpointRouteBuilder forms)
    {
        pages.MapGet("/password", (HttpContext context, UserManager<HostAccount> users) => ShowAsync(context, users, null)).RequireFreshSignIn();
        forms.MapPost("/password", SetAsync).RequireFreshSignIn();
        forms.MapPost("/password/remove", RemoveAsync).RequireFreshSignIn("/account/password");
    }

    private static async Task<IResult> ShowAsync(HttpContext context, UserManager<HostAccount> users, string? problem)
    {
        var account = SignedInAccount.Of(context);
        return AccountEndpoints.Page<PasswordPage>(problem, new
        {
            Email = account.Email ?? "",
            HasPassword = account.PasswordHash is not null,
            HasPasskey = (await users.GetPasskeysAsync(account)).Count > 0,
            Problem = problem,
            Token = context.Token(),
        });
    }

    private static async Task<IResult> SetAsync(
        HttpContext context, UserManager<HostAccount> users, SignInManager<HostAccount> signIn, SecurityLog log)
    {
        var account = SignedInAccount.Of(context);
        var password = await context.TypedAsync("password", AccountRules.LongestPassword);
        if (CommonPasswords.ProblemOf(password, account.Email) is { } problem)
        {
            return await ShowAsync(context, users, problem);
        }

        // The sign-in is fresh, which stands for the old password: it may be lost.
        var changed = await users.ResetPasswordAsync(account, await users.GeneratePasswordResetTokenAsync(account), password);
        if (!changed.Succeeded)
        {
            return await ShowAsync(context, users, AccountPages.PasswordChangedMeanwhile);
        }

        log.PasswordChanged(account.Id);
        await signIn.RefreshSignInAsync(account);
        return TypedResults.LocalRedirect("/account?done=password");
    }

    private static async Task<IResult> RemoveAsync(
        HttpContext context, UserManager<HostAccount> users, SignInManager<HostAccount> signIn, WaysIn ways, SecurityLog log)
    {
        var account = SignedInAccount.Of(context);
        if (await ways.RemovePasswordAsync(new HostId(account.Id), context.RequestAborted) == WayInRemoval.LastOne)
        {
            return await ShowAsync(context, users, AccountPages.PasswordIsOnlyWay);
        }

        log.PasswordChanged(account.Id);
        await signIn.RefreshSignInAsync((await ReadAnewAsync(context, account))!);
        return TypedResults.LocalRedirect("/account?done=no-password");
    }

    /// <summary>The services of this request remember the account as it was.</summary>
    private static async Task<HostAccount?> ReadAnewAsync(HttpContext context, HostAccount account)
    {
        await using var scope = context.RequestServices.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<UserManager<HostAccount>>().FindByIdAsync(account.Id.ToString());
    }
}
