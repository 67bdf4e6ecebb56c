using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Web.Guests;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>Joining a group as a host by the link an owner sent: signed in already, with an account, or new.</summary>
internal static class JoiningEndpoints
{
    public static void MapJoining(this IEndpointRouteBuilder routes)
    {
        var links = routes.MapGroup(SecretPaths.JoinAsHost + "/{token}").ExcludeFromDescription()
            .AddEndpointFilter(routes.ServiceProvider.GetRequiredService<UnknownLinks>());
        links.MapGet("", ShowAsync);
        links.MapPost("", JoinAsync).RequireRateLimiting(RateLimits.SignIn);
    }

    private static async Task<IResult> ShowAsync(
        string token, HttpContext context, JoiningDesk desk, HostAccounts accounts, IAntiforgery antiforgery,
        CancellationToken cancellation) =>
        await desk.LookAsync(LinkToken.TryParse(token), cancellation) is JoiningLookup.Found found
            ? await PageAsync(token, context, accounts, antiforgery, found.Invitation, JoinForm.Empty, [], cancellation)
            : NotValid();

    private static async Task<IResult> JoinAsync(
        string token, HttpContext context, JoiningDesk desk, HostAccounts accounts, UserManager<HostAccount> users,
        SignInManager<HostAccount> signIn, Proofs proofs, IAntiforgery antiforgery, CancellationToken cancellation)
    {
        var link = LinkToken.TryParse(token);
        var form = JoinForm.From(await context.Request.ReadFormAsync(cancellation));
        if (await desk.LookAsync(link, cancellation) is not JoiningLookup.Found { Invitation: var invitation })
        {
            return NotValid();
        }

        if (!await antiforgery.IsRequestValidAsync(context))
        {
            return await AgainAsync(Faults.OpenTooLong);
        }

        var (account, problems) = form.How switch
        {
            JoinForm.NewHere => await MadeAsync(users, form),
            JoinForm.Known => await KnownAsync(proofs, form),
            _ => (await users.GetUserAsync(context.User), [SignInPages.JoinSignInFirst]),
        };
        if (account is null)
        {
            return await AgainAsync([.. problems]);
        }

        if (await desk.JoinAsync(link, new HostId(account.Id), account.DisplayName, cancellation) is not { } group)
        {
            return NotValid();
        }

        if (form.How != JoinForm.SignedIn)
        {
            await signIn.SignInAsync(account, isPersistent: true);
        }

        return TypedResults.LocalRedirect($"/g/{group}");

        Task<RazorComponentResult<JoinPage>> AgainAsync(params IReadOnlyList<string> problems) =>
            PageAsync(token, context, accounts, antiforgery, invitation, form, problems, cancellation);
    }

    private static async Task<(HostAccount? Account, IEnumerable<string> Problems)> MadeAsync(
        UserManager<HostAccount> users, JoinForm form)
    {
        if (form.Problems().ToList() is { Count: > 0 } problems)
        {
            return (null, problems);
        }

        var account = new HostAccount
        {
            Id = Guid.CreateVersion7(),
            UserName = form.Email,
            Email = form.Email,
            DisplayName = form.Name,
        };
        var made = await users.CreateAsync(account, form.Password);
        return made.Succeeded
            ? (account, [])
            : (null, made.Errors.Any(error => error.Code is "DuplicateEmail" or "DuplicateUserName")
                ? [Phrase.Fill(SignInPages.EmailTaken, SignInPages.Known)]
                : SignInText.Problems(made));
    }

    private static async Task<(HostAccount? Account, IEnumerable<string> Problems)> KnownAsync(Proofs proofs, JoinForm form) =>
        await proofs.ByPasswordAsync(form.Email, form.Password) switch
        {
            Proof.Given given => (given.Account, []),
            var refused => (null, [SignInText.Problem(WayIn.Password, refused)]),
        };

    private static async Task<RazorComponentResult<JoinPage>> PageAsync(
        string token, HttpContext context, HostAccounts accounts, IAntiforgery antiforgery, JoiningView invitation,
        JoinForm form, IReadOnlyList<string> problems, CancellationToken cancellation) => new(new
        {
            Invitation = invitation,
            Form = form,
            Problems = problems,
            Link = token,
            SignedInName = context.User.HostIdOf() is { } host ? await accounts.NameOfAsync(host, cancellation) : null,
            Token = antiforgery.GetAndStoreTokens(context),
        })
        {
            StatusCode = problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest,
        };

    private static RazorComponentResult<LinkPage> NotValid() => new(new
    {
        Title = SignInPages.JoinLinkNotValidTitle,
        Sentence = SignInPages.JoinLinkNotValid,
    })
    {
        StatusCode = StatusCodes.Status404NotFound,
    };
}
