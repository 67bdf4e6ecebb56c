using GameNight.Nights.Records;
using GameNight.Web.Startup;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>"Confirm it is you": one of the account's own ways in, shown again.</summary>
internal static class ConfirmEndpoints
{
    public static void MapConfirm(this IEndpointRouteBuilder routes)
    {
        var pages = routes.MapGroup("/confirm").RequireAuthorization().AddEndpointFilter<SignedInAccount>().ExcludeFromDescription();
        pages.MapGet("", (HttpContext context, UserManager<HostAccount> users, string? to) => ShowAsync(context, users, to, null));
        var forms = pages.MapGroup("").RequireRateLimiting(RateLimits.SignIn);
        forms.MapPost("", async (HttpContext context, Proofs proofs) => await AnswerAsync(
            context, WayIn.Password, await proofs.ByPasswordAsync(
                SignedInAccount.Of(context).UserName!, await context.TypedAsync("password", AccountRules.LongestPassword))));
        forms.MapPost("/code", async (HttpContext context, Proofs proofs) => await AnswerAsync(
            context, WayIn.RecoveryCode, await proofs.ByCodeAsync(
                await context.TypedAsync("code", AccountRules.LongestTypedCode), new HostId(SignedInAccount.Of(context).Id), context.RequestAborted)));
        forms.MapPost("/passkey", async (HttpContext context, Proofs proofs) => await AnswerAsync(
            context, WayIn.Passkey, await proofs.ByPasskeyAsync(await context.TypedAsync("credential", PasskeyForm.LongestAnswer))));
        forms.MapPost("/passkey/options", async (HttpContext context, SignInManager<HostAccount> signIn) => Results.Content(
            await signIn.MakePasskeyRequestOptionsAsync(SignedInAccount.Of(context)), "application/json"));
    }

    private static async Task<IResult> AnswerAsync(HttpContext context, WayIn way, Proof proof)
    {
        var account = SignedInAccount.Of(context);
        var services = context.RequestServices;
        var to = (await context.Request.ReadFormAsync(context.RequestAborted))["to"].ToString();
        if (proof is not Proof.Given given || given.Account.Id != account.Id)
        {
            return await ShowAsync(context, services.GetRequiredService<UserManager<HostAccount>>(), to, SignInText.Problem(way, proof));
        }

        var ticket = (await context.AuthenticateAsync(IdentityConstants.ApplicationScheme)).Properties!;
        HostSession.Prove(ticket, HostSession.Now(context));
        await services.GetRequiredService<SignInManager<HostAccount>>().SignInWithClaimsAsync(given.Account, ticket, []);
        services.GetRequiredService<SecurityLog>().SignedIn(account.Id, way);
        return TypedResults.LocalRedirect(PlainForms.LocalTarget(to));
    }

    private static async Task<RazorComponentResult<ConfirmPage>> ShowAsync(
        HttpContext context, UserManager<HostAccount> users, string? to, string? problem)
    {
        var account = SignedInAccount.Of(context);
        var place = context.RequestServices.GetRequiredService<PasskeyPlace>();
        return new RazorComponentResult<ConfirmPage>(new
        {
            To = PlainForms.LocalTarget(to),
            Problem = problem,
            Email = account.Email,
            HasPassword = account.PasswordHash is not null,
            HasPasskey = place.WorksFor(context.Request) && (await users.GetPasskeysAsync(account)).Count > 0,
            Token = context.Token(),
        })
        {
            StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };
    }
}
