using System.ComponentModel.DataAnnotations;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.SignIn;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.Account;

/// <summary>A host's own account: who they are, how they get in, and how they leave. Plain pages, as with signing in.</summary>
internal static class AccountEndpoints
{
    public static void MapAccount(this IEndpointRouteBuilder routes)
    {
        var pages = routes.MapGroup("/account").RequireAuthorization().AddEndpointFilter<SignedInAccount>().ExcludeFromDescription();
        pages.MapGet("", (HttpContext context, UserManager<HostAccount> users, RecoveryCodes codes, string? done) =>
            ShowAsync(context, users, codes, done, null));
        var forms = pages.MapGroup("").RequireRateLimiting(RateLimits.SignIn);
        forms.MapPost("", SaveAsync);
        forms.MapPost("/sign-out-everywhere", SignOutEverywhereAsync);

        pages.MapGet("/mail", (HttpContext context) => MailPage(context, SignedInAccount.Of(context).Email, null)).RequireFreshSignIn();
        forms.MapPost("/mail", ChangeMailAsync).RequireFreshSignIn();
        pages.MapGet("/codes", ShowCodesAsync).RequireFreshSignIn();
        forms.MapPost("/codes", RenewCodesAsync).RequireFreshSignIn();
        pages.MapGet("/remove", ShowRemovalAsync).RequireFreshSignIn();
        forms.MapPost("/remove", RemoveAsync).RequireFreshSignIn();
        pages.MapPasswords(forms);
        pages.MapPasskeys(forms);
    }

    private static async Task<IResult> ShowAsync(
        HttpContext context, UserManager<HostAccount> users, RecoveryCodes codes, string? done, string? problem, string? typedName = null)
    {
        var account = SignedInAccount.Of(context);
        return Page<AccountPage>(problem, new
        {
            Account = account,
            Name = typedName ?? account.DisplayName,
            Passkeys = (await users.GetPasskeysAsync(account)).Count,
            Codes = await codes.LeftAsync(new HostId(account.Id), context.RequestAborted),
            Done = done,
            Problem = problem,
            Token = context.Token(),
        });
    }

    private static async Task<IResult> SaveAsync(
        HttpContext context, UserManager<HostAccount> users, SignInManager<HostAccount> signIn, RecoveryCodes codes)
    {
        var account = SignedInAccount.Of(context);
        var name = (await context.TypedAsync("name", HostAccount.LongestName)).Trim();
        if (name.Length is 0 or > HostAccount.LongestName)
        {
            return await ShowAsync(context, users, codes, null, Phrase.Fill(SignInPages.SayName, HostAccount.LongestName), name);
        }

        account.DisplayName = name;
        account.Measures = await context.TypedAsync("measures", 20) == nameof(MeasureSystem.UsCustomary)
            ? MeasureSystem.UsCustomary
            : MeasureSystem.Metric;
        var saved = await users.UpdateAsync(account);
        if (saved.Succeeded)
        {
            // The sign-in carries the measures, so that every page knows them at once.
            await signIn.RefreshSignInAsync(account);
            return TypedResults.LocalRedirect("/account?done=saved");
        }

        return await ShowAsync(context, users, codes, null, AccountPages.ChangedMeanwhile, name);
    }

    private static async Task<IResult> SignOutEverywhereAsync(
        HttpContext context, UserManager<HostAccount> users, SignInManager<HostAccount> signIn, SecurityLog log)
    {
        var account = SignedInAccount.Of(context);
        var ended = await users.UpdateSecurityStampAsync(account);
        if (!ended.Succeeded)
        {
            return TypedResults.LocalRedirect("/account?done=retry");
        }

        log.SignedOutEverywhere(account.Id);
        await signIn.SignOutAsync();
        return TypedResults.LocalRedirect("/sign-in");
    }

    private static RazorComponentResult<MailPage> MailPage(HttpContext context, string? email, string? problem) =>
        Page<MailPage>(problem, new { Email = email ?? "", Problem = problem, Token = context.Token() });

    private static async Task<IResult> ChangeMailAsync(
        HttpContext context, UserManager<HostAccount> users, SignInManager<HostAccount> signIn, SecurityLog log)
    {
        var account = SignedInAccount.Of(context);
        var email = (await context.TypedAsync("email", AccountRules.LongestEmail)).Trim();
        if (!new EmailAddressAttribute().IsValid(email) || email.Length is 0 or > AccountRules.LongestEmail)
        {
            return MailPage(context, email, SignInPages.EmailIncomplete);
        }

        (account.Email, account.UserName) = (email, email);
        var changed = await users.UpdateSecurityStampAsync(account);
        if (!changed.Succeeded)
        {
            return MailPage(context, email, AccountPages.EmailNotTaken);
        }

        log.EmailChanged(account.Id);
        await signIn.RefreshSignInAsync(account);
        return TypedResults.LocalRedirect("/account?done=mail");
    }

    private static async Task<IResult> ShowCodesAsync(HttpContext context, RecoveryCodes codes) =>
        Page<CodesPage>(null, new
        {
            Left = await codes.LeftAsync(new HostId(SignedInAccount.Of(context).Id), context.RequestAborted),
            Token = context.Token(),
        });

    private static async Task<IResult> RenewCodesAsync(HttpContext context, RecoveryCodes codes, SecurityLog log)
    {
        var account = SignedInAccount.Of(context);
        var fresh = await codes.RenewAsync(new HostId(account.Id), context.RequestAborted);
        log.CodesRenewed(account.Id);
        return Page<CodesPage>(null, new { Left = fresh.Count, Fresh = fresh, account.Email, Token = context.Token() });
    }

    private static async Task<IResult> ShowRemovalAsync(HttpContext context, HostAccounts accounts) => RemovalPage(
        context, await accounts.OnlyOwnerOfAsync(new HostId(SignedInAccount.Of(context).Id), context.RequestAborted), isRefused: false);

    private static async Task<IResult> RemoveAsync(
        HttpContext context, HostAccounts accounts, SignInManager<HostAccount> signIn, SecurityLog log)
    {
        var account = SignedInAccount.Of(context);
        switch (await accounts.RemoveAsync(new HostId(account.Id), context.RequestAborted))
        {
            case AccountRemoval.OnlyOwner refused:
                return RemovalPage(context, refused.Groups, isRefused: true);
            default:
                log.AccountRemoved(account.Id);
                await signIn.SignOutAsync();
                return new RazorComponentResult<RemovedPage>();
        }
    }

    private static RazorComponentResult<RemovePage> RemovalPage(HttpContext context, IReadOnlyList<GroupLine> groups, bool isRefused) =>
        new(new { Groups = groups, Token = context.Token() })
        {
            StatusCode = isRefused ? StatusCodes.Status409Conflict : StatusCodes.Status200OK,
        };

    /// <summary>The page as it is, or with what is wrong.</summary>
    internal static RazorComponentResult<T> Page<T>(string? problem, object parameters)
        where T : Microsoft.AspNetCore.Components.IComponent => new(parameters)
        {
            StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };
}
