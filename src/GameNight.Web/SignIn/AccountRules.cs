using System.ComponentModel.DataAnnotations;
using GameNight.Nights.Records;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.SignIn;

/// <summary>Rules of accounts, said once for services and pages.</summary>
internal static class AccountRules
{
    /// <summary>Long rather than complicated (OWASP ASVS 5.0, V6.2).</summary>
    public const int ShortestPassword = 12;
    public const int LongestPassword = 128;
    public const int LongestEmail = 254;
    public const int LongestPasskeyName = 40;
    public const int MostPasskeys = 20;

    /// <summary>With room for blanks and hyphens between its groups.</summary>
    public const int LongestTypedCode = 60;

    /// <summary>A sign-in that is not used ends.</summary>
    public static readonly TimeSpan IdleSession = TimeSpan.FromDays(14);

    /// <summary>However much it is used, a sign-in ends.</summary>
    public static readonly TimeSpan LongestSession = TimeSpan.FromDays(90);

    /// <summary>What is hard to undo needs a sign-in no older than this.</summary>
    public static readonly TimeSpan FreshFor = TimeSpan.FromMinutes(10);

    /// <summary>How long a sign-in that was ended elsewhere may still open a page.</summary>
    public static readonly TimeSpan StampInterval = TimeSpan.FromMinutes(2);

    /// <summary>What keeps an account from being made of this, one sentence each.</summary>
    public static IEnumerable<string> Problems(string name, string email, string password)
    {
        if (name.Length is 0 or > HostAccount.LongestName)
        {
            yield return Phrase.Fill(SignInPages.SayName, HostAccount.LongestName);
        }

        if (!new EmailAddressAttribute().IsValid(email) || email.Length is 0 or > LongestEmail)
        {
            yield return SignInPages.EmailIncomplete;
        }

        if (password.Length is < ShortestPassword or > LongestPassword)
        {
            yield return Phrase.Fill(SignInPages.PasswordLength, ShortestPassword, LongestPassword);
        }
    }
}
