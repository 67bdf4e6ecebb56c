using System.Buffers.Text;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.SignIn;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.Account;

/// <summary>A host's passkeys: added with a name, renamed, removed.</summary>
internal static class PasskeyEndpoints
{
    private const string Home = "/account/passkeys";

    public static void MapPasskeys(this IEndpointRouteBuilder pages, IEndpointRouteBuilder forms)
    {
        pages.MapGet("/passkeys", (HttpContext context, UserManager<HostAccount> users, string? done) =>
            ShowAsync(context, users, done, null)).RequireFreshSignIn(Home);
        forms.MapPost("/passkeys/options", AskAsync).RequireFreshSignIn(Home);
        forms.MapPost("/passkeys", AddAsync).RequireFreshSignIn(Home);
        forms.MapPost("/passkeys/{id}/name", RenameAsync).RequireFreshSignIn(Home);
        forms.MapPost("/passkeys/{id}/remove", RemoveAsync).RequireFreshSignIn(Home);
    }

    private static async Task<IResult> ShowAsync(HttpContext context, UserManager<HostAccount> users, string? done, string? problem) =>
        AccountEndpoints.Page<PasskeysPage>(problem, new
        {
            Passkeys = (await users.GetPasskeysAsync(SignedInAccount.Of(context))).OrderBy(passkey => passkey.CreatedAt).ToList(),
            context.RequestServices.GetRequiredService<PasskeyPlace>().Domain,
            Works = context.RequestServices.GetRequiredService<PasskeyPlace>().WorksFor(context.Request),
            Done = done,
            Problem = problem,
            Token = context.Token(),
        });

    private static async Task<IResult> AskAsync(HttpContext context, SignInManager<HostAccount> signIn)
    {
        var account = SignedInAccount.Of(context);
        return Results.Content(
            await signIn.MakePasskeyCreationOptionsAsync(new PasskeyUserEntity
            {
                Id = account.Id.ToString(),
                Name = account.Email!,
                DisplayName = account.DisplayName,
            }),
            "application/json");
    }

    private static async Task<IResult> AddAsync(
        HttpContext context, SignInManager<HostAccount> signIn, UserManager<HostAccount> users, SecurityLog log)
    {
        var account = SignedInAccount.Of(context);
        var name = (await context.TypedAsync("name", AccountRules.LongestPasskeyName)).Trim();
        if (ProblemOf(name) is { } problem)
        {
            return await ShowAsync(context, users, null, problem);
        }

        if ((await users.GetPasskeysAsync(account)).Count >= AccountRules.MostPasskeys)
        {
            return await ShowAsync(context, users, null, Phrase.Fill(AccountPages.TooManyPasskeys, AccountRules.MostPasskeys));
        }

        var passkey = await AttestedAsync(signIn, account, await context.TypedAsync("credential", PasskeyForm.LongestAnswer));
        if (passkey is null)
        {
            return await ShowAsync(context, users, null, AccountPages.PasskeyNotAccepted);
        }

        passkey.Name = name;
        var added = await users.AddOrUpdatePasskeyAsync(account, passkey);
        if (!added.Succeeded)
        {
            return await ShowAsync(context, users, null, AccountPages.AccountChangedMeanwhile);
        }

        log.PasskeyAdded(account.Id);
        return TypedResults.LocalRedirect(Home + "?done=added");
    }

    private static async Task<UserPasskeyInfo?> AttestedAsync(SignInManager<HostAccount> signIn, HostAccount account, string credential)
    {
        try
        {
            // Made for this account and not for one that was signed in here a minute ago.
            var made = await signIn.PerformPasskeyAttestationAsync(credential);
            return made.Succeeded && made.UserEntity.Id == account.Id.ToString() ? made.Passkey : null;
        }
        catch (InvalidOperationException)
        {
            // No question is open: the cookie with it is gone, or the answer was made up.
            return null;
        }
    }

    private static async Task<IResult> RenameAsync(HttpContext context, UserManager<HostAccount> users, string id)
    {
        var account = SignedInAccount.Of(context);
        var name = (await context.TypedAsync("name", AccountRules.LongestPasskeyName)).Trim();
        if (ProblemOf(name) is { } problem)
        {
            return await ShowAsync(context, users, null, problem);
        }

        if (IdOf(id) is not { } known || await users.GetPasskeyAsync(account, known) is not { } passkey)
        {
            return await ShowAsync(context, users, null, AccountPages.PasskeyGone);
        }

        passkey.Name = name;
        var renamed = await users.AddOrUpdatePasskeyAsync(account, passkey);
        return renamed.Succeeded
            ? TypedResults.LocalRedirect(Home + "?done=renamed")
            : await ShowAsync(context, users, null, AccountPages.AccountChangedMeanwhile);
    }

    private static async Task<IResult> RemoveAsync(
        HttpContext context, UserManager<HostAccount> users, WaysIn ways, SecurityLog log, string id)
    {
        var account = SignedInAccount.Of(context);
        if (IdOf(id) is { } passkey
            && await ways.RemovePasskeyAsync(new HostId(account.Id), passkey, context.RequestAborted) == WayInRemoval.LastOne)
        {
            return await ShowAsync(context, users, null, AccountPages.PasskeyIsOnlyWay);
        }

        log.PasskeyRemoved(account.Id);
        return TypedResults.LocalRedirect(Home + "?done=removed");
    }

    private static string? ProblemOf(string name) => name.Length is 0 or > AccountRules.LongestPasskeyName
        ? Phrase.Fill(AccountPages.NamePasskey, AccountRules.LongestPasskeyName)
        : null;

    private static byte[]? IdOf(string text) => Base64Url.IsValid(text) ? Base64Url.DecodeFromChars(text) : null;
}
