using GameNight.Planning.Fermentation;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>What a ball of dough looks like, in words.</summary>
internal static class LookText
{
    public static string Say(DoughLook look) => look switch
    {
        DoughLook.AsBalled => DoughPages.LookAsBalled,
        DoughLook.Domed => DoughPages.LookDomed,
        DoughLook.Airy => DoughPages.LookAiry,
        DoughLook.Slack => DoughPages.LookSlack,
        DoughLook.Fallen => DoughPages.LookFallen,
    };
}
