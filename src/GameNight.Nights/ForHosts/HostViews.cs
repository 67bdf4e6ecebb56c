using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>A night in the list of a group.</summary>
public sealed record NightLine(NightId Id, string Title, LocalDateTime ServeAt, string Zone, int Invited, int Coming);

/// <summary>A night with everything a host sees of it but the plan.</summary>
public sealed record NightView(
    NightId Id,
    string GroupName,
    NightFacts Facts,
    Instant ServeAt,
    ClockChange Clock,
    NightOverrides Overrides,
    uint Version,
    IReadOnlyList<InvitedGuest> Guests);

/// <summary>A guest of a night, with their answer and the secret part of their link.</summary>
/// <param name="Note">The private note, readable for hosts only; null when none was given with consent.</param>
/// <param name="NoteIsUnreadable">A note exists, but its key is gone.</param>
public sealed record InvitedGuest(
    GuestId Id,
    string Name,
    PortionClass Portion,
    bool IsHost,
    AnswerFacts? Answer,
    Instant? AnsweredAt,
    bool IsLate,
    IReadOnlyList<DietaryNeeds> Needs,
    string? Note,
    bool NoteIsUnreadable,
    bool LinkWasDisowned,
    string LinkToken);

/// <summary>Somebody the group knows.</summary>
public sealed record GuestLine(GuestId Id, string Name, PortionClass Portion, bool IsHost);

/// <summary>The saved plan of a night with the names that are joined for display.</summary>
/// <param name="Plan">Null until the first plan is made.</param>
/// <param name="IsBeingRedone">Something changed since, or a better split and timeline are on their way.</param>
/// <param name="Names">Eater id to name.</param>
/// <param name="Items">Menu item id to name.</param>
/// <param name="Night">What a plan made now would depend on: must-nots and labels as they are.</param>
public sealed record PlanView(
    NightPlan? Plan,
    bool IsBeingRedone,
    Instant? MadeAt,
    IReadOnlyDictionary<string, string> Names,
    IReadOnlyDictionary<string, string> Items,
    NightSnapshot Night);
