using System.Security.Claims;
using GameNight.Nights.Records;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace GameNight.Web.SignIn;

/// <summary>
/// Carries the measures that a host chose along with the sign-in, so that every page knows them before it asks the database.
/// Another browser of the same host learns of a change when its sign-in is next confirmed.
/// </summary>
internal sealed class MeasuresClaim(UserManager<HostAccount> users, IOptions<IdentityOptions> options)
    : UserClaimsPrincipalFactory<HostAccount>(users, options)
{
    private const string Type = "measures";

    public static Measures Of(ClaimsPrincipal person) =>
        Enum.TryParse<MeasureSystem>(person.FindFirstValue(Type), out var system) ? Measures.Of(system) : Measures.Metric;

    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(HostAccount user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        identity.AddClaim(new Claim(Type, user.Measures.ToString()));
        return identity;
    }
}
