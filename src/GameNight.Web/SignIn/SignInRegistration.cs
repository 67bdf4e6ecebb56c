using GameNight.Nights;
using GameNight.Nights.Records;
using GameNight.Web.Startup;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>Accounts, their passwords and passkeys, and the cookie of a sign-in.</summary>
internal static class SignInRegistration
{
    public static void AddSignIn(this IServiceCollection services, GameNightOptions options)
    {
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.AddAuthorization();
        services.AddIdentityCore<HostAccount>(identity =>
            {
                identity.User.RequireUniqueEmail = true;

                // The user name is the e-mail, and those may hold more than the usual letters.
                identity.User.AllowedUserNameCharacters = "";
                identity.Password.RequiredLength = AccountRules.ShortestPassword;
                identity.Password.RequireDigit = false;
                identity.Password.RequireLowercase = false;
                identity.Password.RequireUppercase = false;
                identity.Password.RequireNonAlphanumeric = false;
                identity.Lockout.MaxFailedAccessAttempts = 10;
                identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
            })
            .AddHostAccounts()
            .AddClaimsPrincipalFactory<MeasuresClaim>()
            .AddPasswordValidator<CommonPasswords>()
            .AddSignInManager()
            .AddDefaultTokenProviders();
        services.AddSingleton<SecurityLog>();
        services.AddScoped<Proofs>();
        var place = new PasskeyPlace(options);
        services.AddSingleton(place);
        services.Configure<IdentityPasskeyOptions>(place.Apply);
        services.Configure<SecurityStampValidatorOptions>(stamp => stamp.ValidationInterval = AccountRules.StampInterval);
        services.Configure<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme, cookie =>
        {
            cookie.Cookie.Name = options.CookieName("gn-host");
            cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            cookie.Cookie.SameSite = SameSiteMode.Lax;
            cookie.LoginPath = "/sign-in";
            cookie.AccessDeniedPath = "/sign-in";
            cookie.ReturnUrlParameter = "to";
            HostSession.Limit(cookie);
        });

        // Holds what a passkey is asked for, from the question to its answer.
        services.Configure<CookieAuthenticationOptions>(IdentityConstants.TwoFactorUserIdScheme, cookie =>
        {
            cookie.Cookie.Name = options.CookieName("gn-passkey");
            cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            cookie.Cookie.SameSite = SameSiteMode.Strict;
        });
    }
}
