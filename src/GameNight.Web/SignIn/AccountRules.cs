namespace GameNight.Web.SignIn;

/// <summary>Rules of accounts, said once for services and pages.</summary>
internal static class AccountRules
{
    /// <summary>Long rather than complicated (OWASP ASVS 5.0, V6.2).</summary>
    public const int ShortestPassword = 12;
    public const int LongestPassword = 128;
    public const int LongestEmail = 254;
}
