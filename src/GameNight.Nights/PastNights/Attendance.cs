using GameNight.Nights.Records;

namespace GameNight.Nights.PastNights;

/// <summary>Who came: as the host wrote it down, else as the answers said.</summary>
internal static class Attendance
{
    /// <summary>Heads that eat, going by the answer; a host without one comes.</summary>
    public static int Expected(Guest guest, AnswerFacts? answer) => answer switch
    {
        null => guest.HostId is null ? 0 : 1,
        { Presence: Presence.Coming, Remotely: false } => 1 + answer.Companions.Count,
        _ => 0,
    };

    public static int? Noted(Guest guest, BakeLogFacts? log) =>
        log is null ? null : log.Came.FirstOrDefault(row => row.GuestId == guest.Id.Value)?.Heads ?? 0;

    public static int Heads(Guest guest, AnswerFacts? answer, BakeLogFacts? log) => Noted(guest, log) ?? Expected(guest, answer);

    /// <summary>Ate there, or joined from elsewhere, which no count of heads says.</summary>
    public static bool WasPart(Guest guest, AnswerFacts? answer, BakeLogFacts? log) =>
        Heads(guest, answer, log) > 0 || answer is { Presence: Presence.Coming, Remotely: true };
}
