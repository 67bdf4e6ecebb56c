using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Planning.Guests;

namespace GameNight.Web.Host.GuestList;

/// <summary>What a host types of an answer they were told.</summary>
public sealed class ToldForm
{
    private ToldForm(InvitedGuest guest, int mostCompanions)
    {
        var answer = guest.Answer;
        Guest = guest;
        Presence = answer?.Presence ?? Presence.Coming;
        Remotely = answer?.Remotely ?? false;
        Hunger = answer?.Hunger ?? Hunger.AsUsual;
        Comes = Text(answer?.ComesAtMinute);
        Leaves = Text(answer?.LeavesAtMinute);
        AloneIfNeeded = answer?.AloneIfNeeded == true;
        Companions = [.. Enumerable.Range(0, Math.Max(mostCompanions, answer?.Companions.Count ?? 0))
            .Select(slot => slot < (answer?.Companions.Count ?? 0) ? answer!.Companions[slot].Portion.ToString() : "")];
    }

    public InvitedGuest Guest { get; private set; }
    public Presence Presence { get; set; }
    public bool Remotely { get; set; }
    public Hunger Hunger { get; set; }
    public string Comes { get; set; }
    public string Leaves { get; set; }
    public bool AloneIfNeeded { get; set; }
    public string[] Companions { get; }
    public Guid Key { get; private set; } = Guid.CreateVersion7();

    public static ToldForm Of(InvitedGuest guest, int mostCompanions) => new(guest, mostCompanions);

    /// <summary>Kept over the newer answer that the host has now seen.</summary>
    public void Over(InvitedGuest newer) => (Guest, Key) = (newer, Guid.CreateVersion7());

    public ToldAnswer Read() => new(
        Presence,
        Remotely,
        Hunger,
        [.. Companions.Select(text => Enum.TryParse<PortionClass>(text, out var portion) ? portion : (PortionClass?)null)],
        Minute(Comes),
        Minute(Leaves),
        AloneIfNeeded);

    private static int? Minute(string text) =>
        TypedTimes.Parse(text).TryGetValue(default, out var time) ? (time.Hour * 60) + time.Minute : null;

    private static string Text(int? minute) => minute is { } of ? TypedTimes.Text(NodaTime.LocalTime.FromMinutesSinceMidnight(of)) : "";
}
