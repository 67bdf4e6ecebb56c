using System.ComponentModel.DataAnnotations;
using GameNight.Nights.Records;

namespace GameNight.Web.SignIn;

/// <summary>What somebody fills in to join a group as a host.</summary>
public sealed record JoinForm(string How, string Name, string Email, string Password)
{
    public const string NewHere = "new";
    public const string Known = "known";
    public const string SignedIn = "signed-in";

    public static JoinForm Empty { get; } = new("", "", "", "");

    public static JoinForm From(IFormCollection form) => new(
        form["how"].ToString(), form["name"].ToString().Trim(), form["email"].ToString().Trim(), form["password"].ToString());

    /// <summary>What keeps a new account from being made.</summary>
    public IEnumerable<string> Problems()
    {
        if (Name.Length is 0 or > HostAccount.LongestName)
        {
            yield return $"Say your name, in 1 to {HostAccount.LongestName} characters.";
        }

        if (!new EmailAddressAttribute().IsValid(Email) || Email.Length is 0 or > AccountRules.LongestEmail)
        {
            yield return "The e-mail address is not complete.";
        }

        if (Password.Length is < AccountRules.ShortestPassword or > AccountRules.LongestPassword)
        {
            yield return $"The password needs {AccountRules.ShortestPassword} to {AccountRules.LongestPassword} characters; a sentence does well.";
        }
    }
}
