using GameNight.Nights.Records;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using Microsoft.AspNetCore.Identity;

namespace GameNight.Web.SignIn;

/// <summary>Refuses what is tried first: common passwords of the length we ask for, one's own address, one letter over and over.</summary>
internal sealed class CommonPasswords : IPasswordValidator<HostAccount>
{
    private const int FewestDifferentCharacters = 5;

    /// <summary>From memory: such as stand on every list of leaked passwords, and what is near at hand on our pages.</summary>
    private static readonly HashSet<string> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        "123456789012", "1234567890123", "12345678901234", "123456789123", "123456123456", "123123123123", "112233445566",
        "password1234", "password12345", "password123456", "passwordpassword", "password123!", "passw0rd1234", "mypassword123",
        "qwertyuiop12", "qwertyuiop123", "qwertyuiop1234", "qwerty123456", "qwerty1234567", "qwertyuiopasdf", "1q2w3e4r5t6y",
        "1qaz2wsx3edc", "q1w2e3r4t5y6", "zaq12wsxcde3", "asdfghjkl123", "zxcvbnm12345", "abcdefghijkl", "abcdefghijklm",
        "abcd12345678", "abc123456789", "a1b2c3d4e5f6", "iloveyou1234", "iloveyouforever", "letmein12345", "welcome12345",
        "administrator", "admin1234567", "changeme1234", "football1234", "sunshine1234", "princess1234", "superman1234",
        "correct horse battery staple", "correcthorsebatterystaple", "trustno1trustno1", "thisismypassword", "pizzapizzapizza",
        "gamenight123", "gamenight1234", "gamenightgamenight",
    };

    public static string? ProblemOf(string password, string? email) =>
        password.Length < AccountRules.ShortestPassword || password.Length > AccountRules.LongestPassword
            ? Phrase.Fill(SignInPages.PasswordLength, AccountRules.ShortestPassword, AccountRules.LongestPassword)
            : Known.Contains(password.Trim()) || string.Equals(password, email, StringComparison.OrdinalIgnoreCase)
                || password.Distinct().Count() < FewestDifferentCharacters
            ? SignInPages.PasswordCommon
            : null;

    public Task<IdentityResult> ValidateAsync(UserManager<HostAccount> manager, HostAccount user, string? password) =>
        Task.FromResult(ProblemOf(password ?? "", user.Email) is { } problem
            ? IdentityResult.Failed(new IdentityError { Code = nameof(CommonPasswords), Description = problem })
            : IdentityResult.Success);
}
