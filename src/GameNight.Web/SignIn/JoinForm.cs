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
    public IEnumerable<string> Problems() => AccountRules.Problems(Name, Email, Password);
}
