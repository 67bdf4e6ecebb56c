using GameNight.Nights.Records;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>What a host may do, in words.</summary>
internal static class RightText
{
    public static string Say(HostRole right) => right switch
    {
        HostRole.Cook => Rights.Cooks,
        HostRole.Organiser => Rights.Organises,
        HostRole.Owner => Rights.Owns,
    };

    /// <summary>Each right includes those before it.</summary>
    public static string Explain(HostRole right) => right switch
    {
        HostRole.Cook => Rights.CookMay,
        HostRole.Organiser => Rights.OrganiserMay,
        HostRole.Owner => Rights.OwnerMay,
    };

    public static string Notes(bool seesNotes) => seesNotes ? Rights.ReadsNotes : Rights.DoesNotReadNotes;
}
