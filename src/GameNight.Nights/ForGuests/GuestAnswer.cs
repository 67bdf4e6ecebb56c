using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>What a guest sends: the answer, and with consent what they must not eat.</summary>
/// <param name="Needs">Must-nots of the guest, then of each companion; kept only with consent.</param>
/// <param name="Note">Private note to the host; kept only with consent.</param>
/// <param name="Consents">The guest agreed that must-nots and note are kept for this night.</param>
/// <param name="Revision">
/// The revision the form was made from, 0 for none. The last answer sent counts; one that did not know of the one before it says
/// what it replaced, and takes no must-nots away.
/// </param>
/// <param name="Key">Made with the form: sent twice, it counts once.</param>
/// <param name="Remembers">Wishes, and with consent the guest's own must-nots, are kept for next time; else forgotten.</param>
/// <param name="ShowsName">Other guests may read the name among those who come.</param>
/// <param name="SameFor">Of the household: whether they come holds for these too, unless they have answered themselves.</param>
public sealed record GuestAnswer(
    AnswerFacts Facts, IReadOnlyList<DietaryNeeds> Needs, string Note, bool Consents, int Revision, Guid Key,
    bool Remembers = false, bool ShowsName = false, IReadOnlyList<GuestId>? SameFor = null);

/// <summary>What is wrong with an answer.</summary>
public enum AnswerFault
{
    TooManyCompanions,
    NoteTooLong,

    /// <summary>The guest has a seat; there are not enough for those they want to bring.</summary>
    NoSeatForCompanions,
    ComesAfterTheEnd,
    LeavesBeforeTheFirstPie,
    LeavesBeforeComing,
}

/// <summary>What came of an answer.</summary>
public abstract record AnswerResult
{
    private AnswerResult()
    {
    }

    public sealed record Recorded : AnswerResult;

    /// <summary>Recorded after the dough was begun: the page says what that means.</summary>
    public sealed record RecordedAsLateChange : AnswerResult;

    public sealed record Refused(AnswerFault Fault, int Most) : AnswerResult;

    /// <summary>The night is called off: nothing is asked any more.</summary>
    public sealed record NightIsCancelled : AnswerResult;

    public sealed record LinkNotValid(bool IsExpired) : AnswerResult;
}

/// <summary>Who comes, as other guests may know it.</summary>
/// <param name="Heads">Everybody who said that they come, with companions, and the hosts.</param>
/// <param name="Names">Only of those who allow it, without the reader.</param>
public sealed record WhoComes(int Heads, IReadOnlyList<string> Names);

/// <summary>The table, where the host counts seats.</summary>
/// <param name="Free">Seats that this guest could have now, the one they have counted in.</param>
/// <param name="Place">The guest's own place in line, from 1; null for who does not wait.</param>
/// <param name="HasSeat">One of those taken is theirs: they come, or are a host, who need not say so.</param>
public sealed record TableView(int Seats, int Free, int? Place, bool HasSeat);

/// <summary>Somebody else of the guest's household who is invited.</summary>
public sealed record HouseholdFellow(GuestId Id, string Name);

/// <summary>A menu item that a guest can like or not.</summary>
public sealed record LikeableTopping(string Id, string Name);

/// <summary>Everything a guest sees through their link.</summary>
/// <param name="AnswerBy">Until then the answer moves the dough; null while no plan knows it.</param>
/// <param name="Address">Null unless the guest said that they come.</param>
/// <param name="Revision">0 when there is no answer yet.</param>
/// <param name="Moved">What happened to the serving time since the guest's answer; null when the answer fits.</param>
/// <param name="Calendar">The night as the guest's calendar has it.</param>
/// <param name="Remembered">What the guest asked to be remembered; must-nots only under the consent of today.</param>
/// <param name="IsAfterAnswerBy">The shopping is due; the dough is not begun yet.</param>
/// <param name="Table">Null when nobody counts seats.</param>
/// <param name="SaidBy">Who said the answer for the guest; null when there is none, or they said it themselves.</param>
/// <param name="LastKey">Of the form that the answer came with; null without one.</param>
/// <param name="Household">Who else of the guest's household is invited; nothing of what they answered.</param>
/// <param name="Replaced">What gave way to the answer without its page having known of it; null when nothing did.</param>
/// <param name="AddressIsWithheld">There is an address, and the guest does not come, or has no seat.</param>
/// <param name="TakesMail">There is an address, and the guest has not ended messages to it.</param>
/// <param name="SaidOfDate">What the guest said of this evening when they were asked for a date; it answers nothing.</param>
public sealed record InvitationView(
    NightId Night,
    GuestId Guest,
    string GroupName,
    string HostName,
    string GuestName,
    string Title,
    LocalDateTime ServeAt,
    LocalDateTime? EndsAt,
    string Zone,
    Instant ServeAtInstant,
    string? Address,
    string Bring,
    int MostCompanions,
    Instant? AnswerBy,
    bool IsAfterCommitment,
    IReadOnlyList<LikeableTopping> Toppings,
    AnswerFacts? Answer,
    int Revision,
    Instant? AnsweredAt,
    IReadOnlyList<DietaryNeeds> Needs,
    string? Note,
    bool HasConsented,
    bool WasDisowned,
    bool IsCancelled,
    MovedSince? Moved,
    CalendarNight Calendar,
    WhoComes Others,
    bool ShowsName,
    WishFacts? Remembered,
    bool IsAfterAnswerBy,
    TableView? Table,
    Played? Played,
    SaidBy? SaidBy,
    IReadOnlyList<HouseholdFellow> Household,
    Guid? LastKey,
    DateAnswer? SaidOfDate = null,
    ReplacedAnswer? Replaced = null,
    bool AddressIsWithheld = false,
    bool TakesMail = false);

/// <summary>What a link leads to.</summary>
public abstract record InvitationLookup
{
    private InvitationLookup()
    {
    }

    public sealed record Found(InvitationView Invitation) : InvitationLookup;

    public sealed record LinkNotValid(bool IsExpired) : InvitationLookup;
}
