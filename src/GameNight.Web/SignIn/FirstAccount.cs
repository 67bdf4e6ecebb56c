using GameNight.Nights.Records;
using GameNight.Web.Startup;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.SignIn;

/// <summary>What the first host fills in: themselves and their group.</summary>
public sealed record FirstAccount(string Code, string Name, string Email, string Password, string GroupName, string Zone)
{
    public static FirstAccount Empty { get; } = new("", "", "", "", "", "Europe/Lisbon");

    public static FirstAccount From(IFormCollection form) => new(
        Text(form, "code"), Text(form, "name"), Text(form, "email"), form["password"].ToString(), Text(form, "group"),
        Text(form, "zone"));

    public IEnumerable<string> Problems(SetupCode code)
    {
        if (!code.IsMatchedBy(Code))
        {
            yield return SignInPages.SetupCodeWrong;
        }

        foreach (var problem in AccountRules.Problems(Name, Email, Password))
        {
            yield return problem;
        }

        if (GroupName.Length is 0 or > Group.LongestName)
        {
            yield return Phrase.Fill(SignInPages.NameGroup, Group.LongestName);
        }

        if (NightTime.Zone(Zone) is null)
        {
            yield return SignInPages.ChooseZone;
        }
    }

    private static string Text(IFormCollection form, string name) => form[name].ToString().Trim();
}
