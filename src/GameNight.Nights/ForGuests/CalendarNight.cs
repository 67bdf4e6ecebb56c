using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>A night as one guest's calendar has it. The same night and guest keep their identity for good.</summary>
/// <param name="Address">Null unless the guest said that they come.</param>
/// <param name="Presence">Null for a guest who has not answered; undecided while they wait for a seat.</param>
/// <param name="Sequence">Rises with every change that a calendar must take over.</param>
public sealed record CalendarNight(
    GroupId Group,
    NightId Night,
    GuestId Guest,
    string GroupName,
    string Title,
    LocalDateTime ServeAt,
    LocalDateTime? EndsAt,
    string Zone,
    string? Address,
    bool IsCancelled,
    Presence? Presence,
    int Sequence)
{
    internal static CalendarNight Of(Group group, Night night, GuestId guest, Answer? answer) => new(
        group.Id,
        night.Id,
        guest,
        group.Name,
        night.Facts.Title,
        night.Facts.ServeAt,
        night.Facts.EndsAt,
        night.Facts.Zone,
        answer?.Counted.Presence == Records.Presence.Coming && night.Facts.Address.Length > 0 ? night.Facts.Address : null,
        night.CancelledAt is not null,
        answer?.IsWaiting == true ? Records.Presence.Undecided : answer?.Facts.Presence,
        Math.Max(0, (answer?.Revision ?? 0) - 1) + NightMoves.Sequence(night));
}
