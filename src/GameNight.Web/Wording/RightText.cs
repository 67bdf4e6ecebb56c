using GameNight.Nights.Records;

namespace GameNight.Web.Wording;

/// <summary>What a host may do, in words.</summary>
internal static class RightText
{
    public static string Say(HostRole right) => right switch
    {
        HostRole.Cook => "cooks",
        HostRole.Organiser => "organises",
        HostRole.Owner => "owns the group",
    };

    /// <summary>Each right includes those before it.</summary>
    public static string Explain(HostRole right) => right switch
    {
        HostRole.Cook => "Sees plans and timelines, keeps kitchen and doughs, writes down how a night went.",
        HostRole.Organiser => "Cooks, and opens, moves and cancels nights, invites guests, keeps the menu.",
        HostRole.Owner => "Organises, and invites and removes hosts, takes the group along or deletes it.",
    };

    public static string Notes(bool seesNotes) => seesNotes ? "reads private notes" : "does not read private notes";
}
