using System.Security.Claims;
using GameNight.Nights.Records;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>An open host page loses its rights soon after the account was signed out everywhere or removed.</summary>
internal sealed class AccountRevalidation(ILoggerFactory loggers, IServiceScopeFactory scopes)
    : RevalidatingServerAuthenticationStateProvider(loggers)
{
    protected override TimeSpan RevalidationInterval => AccountRules.StampInterval;

    protected override async Task<bool> ValidateAuthenticationStateAsync(
        AuthenticationState authenticationState, CancellationToken cancellationToken)
    {
        await using var scope = scopes.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<HostAccount>>();
        var account = await accounts.GetUserAsync(authenticationState.User);
        return account is not null
            && authenticationState.User.FindFirstValue(accounts.Options.ClaimsIdentity.SecurityStampClaimType)
                == await accounts.GetSecurityStampAsync(account);
    }
}
