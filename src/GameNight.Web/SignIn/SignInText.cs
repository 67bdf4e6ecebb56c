using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>What is said when somebody is not let in. Whether there is such an account is not told.</summary>
internal static class SignInText
{
    public static string Problem(WayIn way, Proof proof) => (way, proof) switch
    {
        (_, Proof.LockedOut) => SignInPages.TooManyTries,
        (WayIn.Password, _) => SignInPages.PasswordRefused,
        (WayIn.Passkey, _) => SignInPages.PasskeyRefused,
        (WayIn.RecoveryCode, _) => SignInPages.CodeRefused,
    };

    /// <summary>Why an account was not made. What the identity services say of it themselves is English only.</summary>
    public static IEnumerable<string> Problems(IdentityResult made) => made.Errors
        .Select(error => error.Code == nameof(CommonPasswords) ? error.Description : SignInPages.AccountNotMade)
        .Distinct();
}
