using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.Startup;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>Signing in and out, and the first account. Plain pages: a cookie is set by a plain request.</summary>
internal static class SignInEndpoints
{
    public static void MapSignIn(this IEndpointRouteBuilder routes)
    {
        var pages = routes.MapGroup("").ExcludeFromDescription();
        pages.MapGet("/sign-in", ShowSignInAsync);
        pages.MapGet("/sign-in/code", (HttpContext context) => CodePage(context, null));
        pages.MapGet("/sign-out", (HttpContext context) => new RazorComponentResult<SignOutPage>(new { Token = context.Token() }));
        pages.MapGet("/first", ShowFirstAsync);
        var forms = pages.MapGroup("").RequireRateLimiting(RateLimits.SignIn);
        forms.MapPost("/sign-in", ByPasswordAsync);
        forms.MapPost("/sign-in/code", ByCodeAsync);
        forms.MapPost("/sign-in/passkey", ByPasskeyAsync);
        forms.MapPost("/sign-in/passkey/options", async (HttpContext context, SignInManager<HostAccount> signIn) =>
            await context.IsOurFormAsync()
                ? Results.Content(await signIn.MakePasskeyRequestOptionsAsync(null), "application/json")
                : Results.BadRequest());
        forms.MapPost("/first", MakeFirstAsync);
        pages.MapPost("/sign-out", SignOutAsync);
    }

    private static async Task<IResult> ShowSignInAsync(
        HttpContext context, HostAccounts accounts, string? to, CancellationToken cancellation) =>
        await accounts.AreNoneAsync(cancellation)
            ? TypedResults.LocalRedirect("/first")
            : SignInPage(context, "", PlainForms.LocalTarget(to), null);

    private static async Task<IResult> ByPasswordAsync(HttpContext context, Proofs proofs)
    {
        var email = await context.TypedAsync("email", AccountRules.LongestEmail);
        var to = PlainForms.LocalTarget((await context.Request.ReadFormAsync())["to"]);
        if (!await context.IsOurFormAsync())
        {
            return SignInPage(context, email, to, Faults.OpenTooLong);
        }

        var proof = await proofs.ByPasswordAsync(email, await context.TypedAsync("password", AccountRules.LongestPassword));
        return await EnterAsync(context, WayIn.Password, proof, to)
            ?? SignInPage(context, email, to, SignInText.Problem(WayIn.Password, proof));
    }

    private static async Task<IResult> ByPasskeyAsync(HttpContext context, Proofs proofs)
    {
        var to = PlainForms.LocalTarget((await context.Request.ReadFormAsync())["to"]);
        if (!await context.IsOurFormAsync())
        {
            return SignInPage(context, "", to, Faults.OpenTooLong);
        }

        var proof = await proofs.ByPasskeyAsync(await context.TypedAsync("credential", PasskeyForm.LongestAnswer));
        return await EnterAsync(context, WayIn.Passkey, proof, to)
            ?? SignInPage(context, "", to, SignInText.Problem(WayIn.Passkey, proof));
    }

    private static async Task<IResult> ByCodeAsync(HttpContext context, Proofs proofs)
    {
        if (!await context.IsOurFormAsync())
        {
            return CodePage(context, Faults.OpenTooLong);
        }

        // Leads to the account, where what was lost is replaced.
        var proof = await proofs.ByCodeAsync(
            await context.TypedAsync("code", AccountRules.LongestTypedCode), null, context.RequestAborted);
        return await EnterAsync(context, WayIn.RecoveryCode, proof, "/account?done=code")
            ?? CodePage(context, SignInText.Problem(WayIn.RecoveryCode, proof));
    }

    /// <returns>Null when there is no proof.</returns>
    private static async Task<IResult?> EnterAsync(HttpContext context, WayIn way, Proof proof, string to)
    {
        if (proof is not Proof.Given given)
        {
            return null;
        }

        await context.RequestServices.GetRequiredService<SignInManager<HostAccount>>().SignInAsync(given.Account, isPersistent: true);
        context.RequestServices.GetRequiredService<SecurityLog>().SignedIn(given.Account.Id, way);
        return TypedResults.LocalRedirect(to);
    }

    private static async Task<IResult> SignOutAsync(
        HttpContext context, SignInManager<HostAccount> signIn)
    {
        if (await context.IsOurFormAsync())
        {
            await signIn.SignOutAsync();
        }

        return TypedResults.LocalRedirect("/sign-in");
    }

    private static async Task<IResult> ShowFirstAsync(
        HttpContext context, HostAccounts accounts, CancellationToken cancellation) =>
        await accounts.AreNoneAsync(cancellation)
            ? FirstPage(context, FirstAccount.Empty, [])
            : TypedResults.LocalRedirect("/sign-in");

    private static async Task<IResult> MakeFirstAsync(
        HttpContext context, HostAccounts accounts, UserManager<HostAccount> users, SignInManager<HostAccount> signIn,
        GroupDesk groups, SetupCode code, CancellationToken cancellation)
    {
        if (!await accounts.AreNoneAsync(cancellation))
        {
            return TypedResults.LocalRedirect("/sign-in");
        }

        var form = await context.Request.ReadFormAsync(cancellation);
        var first = FirstAccount.From(form);
        var problems = first.Problems(code).ToList();
        if (!await context.IsOurFormAsync())
        {
            problems.Add(Faults.OpenTooLong);
        }

        if (problems.Count > 0)
        {
            return FirstPage(context, first, problems);
        }

        var account = new HostAccount
        {
            Id = Guid.CreateVersion7(),
            UserName = first.Email,
            Email = first.Email,
            DisplayName = first.Name,
        };
        var made = await users.CreateAsync(account, first.Password);
        if (!made.Succeeded)
        {
            return FirstPage(context, first, [.. SignInText.Problems(made)]);
        }

        var group = await groups.FoundAsync(new HostId(account.Id), first.Name, first.GroupName, first.Zone, cancellation);
        await signIn.SignInAsync(account, isPersistent: true);
        return TypedResults.LocalRedirect($"/g/{group}");
    }

    private static RazorComponentResult<SignInPage> SignInPage(HttpContext context, string email, string to, string? problem) =>
        new(new
        {
            Email = email,
            To = to,
            Problem = problem,
            WithPasskey = context.RequestServices.GetRequiredService<PasskeyPlace>().WorksFor(context.Request),
            Token = context.Token(),
        })
        {
            StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };

    private static RazorComponentResult<CodeSignInPage> CodePage(HttpContext context, string? problem) =>
        new(new { Problem = problem, Token = context.Token() })
        {
            StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };

    private static RazorComponentResult<FirstAccountPage> FirstPage(
        HttpContext context, FirstAccount first, List<string> problems) =>
        new(new { First = first, Problems = problems, Token = context.Token() })
        {
            StatusCode = problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };
}
