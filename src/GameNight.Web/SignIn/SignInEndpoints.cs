using System.Security.Claims;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.Startup;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>Signing in and out, and the first account. Plain pages: a cookie is set by a plain request.</summary>
internal static class SignInEndpoints
{
    public static void MapSignIn(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/sign-in", ShowSignInAsync).ExcludeFromDescription();
        routes.MapPost("/sign-in", SignInAsync).RequireRateLimiting(RateLimits.SignIn).ExcludeFromDescription();
        routes.MapGet("/sign-out", (HttpContext context, IAntiforgery antiforgery) =>
            new RazorComponentResult<SignOutPage>(new { Token = Token(context, antiforgery) })).ExcludeFromDescription();
        routes.MapPost("/sign-out", SignOutAsync).ExcludeFromDescription();
        routes.MapGet("/first", ShowFirstAsync).ExcludeFromDescription();
        routes.MapPost("/first", MakeFirstAsync).RequireRateLimiting(RateLimits.SignIn).ExcludeFromDescription();
    }

    private static async Task<IResult> ShowSignInAsync(
        HttpContext context, HostAccounts accounts, IAntiforgery antiforgery, string? to, CancellationToken cancellation) =>
        await accounts.AreNoneAsync(cancellation)
            ? TypedResults.LocalRedirect("/first")
            : SignInPage(context, antiforgery, "", LocalTarget(to), null);

    private static async Task<IResult> SignInAsync(
        HttpContext context, SignInManager<HostAccount> signIn, IAntiforgery antiforgery, CancellationToken cancellation)
    {
        var form = await context.Request.ReadFormAsync(cancellation);
        var (email, to) = (Text(form, "email", AccountRules.LongestEmail), LocalTarget(form["to"]));
        if (!await antiforgery.IsRequestValidAsync(context))
        {
            return SignInPage(context, antiforgery, email, to, "This page was open for too long. Send it again.");
        }

        var result = await signIn.PasswordSignInAsync(
            email, Text(form, "password", AccountRules.LongestPassword), isPersistent: true, lockoutOnFailure: true);
        return result.Succeeded
            ? TypedResults.LocalRedirect(to)
            : SignInPage(context, antiforgery, email, to, result.IsLockedOut
                ? "Too many tries. Wait five minutes, then try again."
                : "That e-mail and password do not belong together.");
    }

    private static async Task<IResult> SignOutAsync(
        HttpContext context, SignInManager<HostAccount> signIn, IAntiforgery antiforgery)
    {
        if (await antiforgery.IsRequestValidAsync(context))
        {
            await signIn.SignOutAsync();
        }

        return TypedResults.LocalRedirect("/sign-in");
    }

    private static async Task<IResult> ShowFirstAsync(
        HttpContext context, HostAccounts accounts, IAntiforgery antiforgery, CancellationToken cancellation) =>
        await accounts.AreNoneAsync(cancellation)
            ? FirstPage(context, antiforgery, FirstAccount.Empty, [])
            : TypedResults.LocalRedirect("/sign-in");

    private static async Task<IResult> MakeFirstAsync(
        HttpContext context, HostAccounts accounts, UserManager<HostAccount> users, SignInManager<HostAccount> signIn,
        GroupDesk groups, SetupCode code, IAntiforgery antiforgery, CancellationToken cancellation)
    {
        if (!await accounts.AreNoneAsync(cancellation))
        {
            return TypedResults.LocalRedirect("/sign-in");
        }

        var form = await context.Request.ReadFormAsync(cancellation);
        var first = FirstAccount.From(form);
        var problems = first.Problems(code).ToList();
        if (!await antiforgery.IsRequestValidAsync(context))
        {
            problems.Add("This page was open for too long. Send it again.");
        }

        if (problems.Count > 0)
        {
            return FirstPage(context, antiforgery, first, problems);
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
            return FirstPage(context, antiforgery, first, [.. made.Errors.Select(error => error.Description)]);
        }

        var group = await groups.FoundAsync(new HostId(account.Id), first.Name, first.GroupName, first.Zone, cancellation);
        await signIn.SignInAsync(account, isPersistent: true);
        return TypedResults.LocalRedirect($"/g/{group}");
    }

    private static RazorComponentResult<SignInPage> SignInPage(
        HttpContext context, IAntiforgery antiforgery, string email, string to, string? problem) =>
        new(new { Email = email, To = to, Problem = problem, Token = Token(context, antiforgery) })
        {
            StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };

    private static RazorComponentResult<FirstAccountPage> FirstPage(
        HttpContext context, IAntiforgery antiforgery, FirstAccount first, List<string> problems) =>
        new(new { First = first, Problems = problems, Token = Token(context, antiforgery) })
        {
            StatusCode = problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };

    private static AntiforgeryTokenSet Token(HttpContext context, IAntiforgery antiforgery) =>
        antiforgery.GetAndStoreTokens(context);

    /// <summary>Only paths of this app: never another site's address.</summary>
    private static string LocalTarget(string? to) =>
        to is ['/', not ('/' or '\\'), ..] && !to.Any(char.IsControl) ? to : "/";

    private static string Text(IFormCollection form, string name, int longest)
    {
        var text = form[name].ToString();
        return text.Length > longest ? text[..longest] : text;
    }
}

/// <summary>From a signed-in person to their account.</summary>
public static class HostPrincipal
{
    public static HostId? HostIdOf(this ClaimsPrincipal person) =>
        Guid.TryParse(person.FindFirstValue(ClaimTypes.NameIdentifier), out var id) ? new HostId(id) : null;
}
