namespace GameNight.Web.SignIn;

/// <summary>What is said when somebody is not let in. Whether there is such an account is not told.</summary>
internal static class SignInText
{
    public static string Problem(WayIn way, Proof proof) => (way, proof) switch
    {
        (_, Proof.LockedOut) => "Too many tries. Wait five minutes, then try again.",
        (WayIn.Password, _) => "That e-mail and password do not belong together.",
        (WayIn.Passkey, _) => "That passkey was not accepted. Try again, or use another way in.",
        (WayIn.RecoveryCode, _) => "That code does not open an account. Each works once, and new ones end the old.",
    };
}
