using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.GuestList;

/// <summary>Which guests of a night are shown.</summary>
public enum GuestFilter
{
    Everybody,
    Late,
    InPart,
}

/// <summary>A night's guests in the order in which a host asks for them: who waits, who comes, who has to be asked.</summary>
internal sealed record GuestGroup(string Heading, IReadOnlyList<InvitedGuest> Guests)
{
    public static IReadOnlyList<GuestGroup> Of(IReadOnlyList<InvitedGuest> guests, string name, GuestFilter filter)
    {
        var wanted = name.Trim();
        var shown = guests
            .Where(guest => guest.Name.Contains(wanted, StringComparison.CurrentCultureIgnoreCase))
            .Where(guest => filter switch
            {
                GuestFilter.Everybody => true,
                GuestFilter.Late => guest.IsLate || guest.IsAfterAnswerBy,
                GuestFilter.InPart => guest.Answer is { ComesAtMinute: not null } or { LeavesAtMinute: not null },
            }).ToList();
        GuestGroup[] groups =
        [
            new(TablePages.Waiting, [.. shown.Where(guest => guest.WaitingPlace is not null).OrderBy(guest => guest.WaitingPlace)]),
            new(TablePages.Coming, [.. shown.Where(guest => guest.Comes)]),
            new(TablePages.Undecided, Saying(Presence.Undecided)),
            new(TablePages.Silent, [.. shown.Where(guest => guest.Answer is null && !guest.IsHost)]),
            new(TablePages.NotComing, Saying(Presence.NotComing)),
        ];
        return [.. groups.Where(group => group.Guests.Count > 0)];

        IReadOnlyList<InvitedGuest> Saying(Presence presence) => [.. shown.Where(guest => guest.Answer?.Presence == presence)];
    }
}
