using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>A night in the list of a group.</summary>
public sealed record NightLine(NightId Id, string Title, LocalDateTime ServeAt, string Zone, int Invited, int Coming, bool IsCancelled);

/// <summary>A night with everything a host sees of it but the plan.</summary>
/// <param name="SeatsTaken">At the table, hosts counted in.</param>
public sealed record NightView(
    NightId Id,
    string GroupName,
    NightFacts Facts,
    Instant ServeAt,
    ClockChange Clock,
    NightOverrides Overrides,
    uint Version,
    IReadOnlyList<InvitedGuest> Guests,
    Instant? CancelledAt,
    CommitmentView? Commitment,
    int SeatsTaken);

/// <summary>The dough commitment of a night.</summary>
/// <param name="By">Name of the host who committed, or null when the time of mixing came by itself.</param>
/// <param name="CanBeTakenBack">Mixing is not due yet.</param>
/// <param name="ServeAt">The serving time it was planned for, with <paramref name="Cold"/> of cold ferment.</param>
public sealed record CommitmentView(
    Instant At, string? By, Instant MixAt, bool CanBeTakenBack, int Balls, Grams Dough, Instant ServeAt, Duration Cold)
{
    /// <summary>How long the dough is cold when served then: the evening moves as a whole.</summary>
    public Duration ColdWhenServedAt(Instant serveAt) => Duration.Max(Duration.Zero, Cold + (serveAt - ServeAt));
}

/// <summary>A guest of a night, with their answer and the secret part of their link.</summary>
/// <param name="Note">The private note, for hosts who may read notes; null when none was given with consent.</param>
/// <param name="LinkToken">Empty for hosts who do not invite.</param>
/// <param name="HasNotConfirmed">The night was moved or called off and on again since they answered.</param>
/// <param name="NoteIsUnreadable">A note exists, but its key is gone.</param>
/// <param name="WaitingPlace">Their place in line for a seat, from 1; null for who does not wait.</param>
/// <param name="SaidBy">Who said the answer for them; null when they did.</param>
/// <param name="IsOneOff">Invited for this night only.</param>
/// <param name="IsAfterAnswerBy">Answered when answers had stopped moving the dough, and before it was begun.</param>
/// <param name="Revision">Of the answer, 0 for none.</param>
/// <param name="NoteIsOpen">They left a note that no host has settled; told to every host.</param>
/// <param name="NotedAt">When the note was written; null without one, and for hosts who may not read notes.</param>
/// <param name="Ruling">What a host made of the note; null for hosts who may not read notes.</param>
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
    string LinkToken,
    bool HasNotConfirmed,
    int? WaitingPlace = null,
    SaidBy? SaidBy = null,
    string? Household = null,
    bool IsOneOff = false,
    bool IsAfterAnswerBy = false,
    int Revision = 0,
    bool NoteIsOpen = false,
    Instant? NotedAt = null,
    NoteRuling? Ruling = null)
{
    /// <summary>Expected at the table or from elsewhere; a host without an answer is.</summary>
    public bool Comes => WaitingPlace is null && (Answer is null ? IsHost : Answer.Presence == Presence.Coming);
}

/// <summary>Somebody the group knows.</summary>
/// <param name="MailAddress">Empty without one, and for hosts who do not invite.</param>
/// <param name="WantsNoMail">They stopped messages.</param>
/// <param name="Household">Name of the household they come with; null for none.</param>
/// <param name="IsOneOff">Invited for one night only, and gone after it.</param>
public sealed record GuestLine(
    GuestId Id, string Name, PortionClass Portion, bool IsHost, bool IsStanding, string MailAddress = "", bool WantsNoMail = false,
    string? Household = null, bool IsOneOff = false);

/// <summary>The saved plan of a night with the names that are joined for display.</summary>
/// <param name="Plan">Null until the first plan is made.</param>
/// <param name="IsBeingRedone">Something changed since, or a better split and timeline are on their way.</param>
/// <param name="Names">Eater id to name.</param>
/// <param name="Items">Menu item id to name.</param>
/// <param name="Late">What changed since the dough was begun; null before, and while the plan lags behind.</param>
/// <param name="Options">What can still be done about it; none before, and while the plan lags behind.</param>
/// <param name="Night">What a plan made now would depend on: must-nots and labels as they are.</param>
/// <param name="Named">Sets of toppings that have a name in this house.</param>
/// <param name="LeavesPastOut">The group lets no past night into its forecasts.</param>
/// <param name="SecondDough">What this house calls its second dough; null where there is none (any more).</param>
public sealed record PlanView(
    NightPlan? Plan,
    bool IsBeingRedone,
    Instant? MadeAt,
    IReadOnlyDictionary<string, string> Names,
    IReadOnlyDictionary<string, string> Items,
    LateChanges? Late,
    NightSnapshot Night,
    LateOptions Options,
    bool LeavesPastOut,
    IReadOnlyList<NamedToppings> Named,
    string? SecondDough = null);
