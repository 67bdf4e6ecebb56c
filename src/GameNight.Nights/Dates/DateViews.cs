using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using NodaTime;

namespace GameNight.Nights.Dates;

/// <summary>A question in the list of a group.</summary>
public sealed record DateLine(DateChoiceId Id, string Title, int Options, int Asked, int Answered, Instant OpenUntil, string Zone);

/// <summary>Where a host begins who asks for a date.</summary>
/// <param name="Title">As last time; null for the first.</param>
/// <param name="Usual">When the first pie was on the table last time, or null.</param>
/// <param name="Rhythm">The next nights of the rhythm on which there is no night yet; none without one.</param>
/// <param name="People">Who can be asked; the host who asks comes anyway.</param>
public sealed record DateStart(
    string? Title, string Zone, LocalTime? Usual, IReadOnlyList<RhythmNight> Rhythm, IReadOnlyList<AskablePerson> People);

public sealed record AskablePerson(GuestId Id, string Name, bool IsStanding, bool IsHost);

/// <summary>A question with everything a host sees of it.</summary>
/// <param name="IsPastDeadline">Who has not answered is counted as one who does not answer an invitation.</param>
/// <param name="Forecast">The evenings, best first.</param>
/// <param name="Learned">Guests whose chances their own past nights moved.</param>
public sealed record DateView(
    DateChoiceId Id,
    string GroupName,
    DateChoiceFacts Facts,
    DateChoiceState State,
    uint Version,
    Instant OpenUntil,
    bool IsPastDeadline,
    LocalDateTime? Chosen,
    NightId? Night,
    DateForecast Forecast,
    IReadOnlyList<AskedLine> Asked,
    int Learned);

/// <summary>A guest who is asked, as a host sees them.</summary>
/// <param name="LinkToken">Empty for hosts who do not invite.</param>
/// <param name="Mail">How far the mail with the link is; null when it was not sent from here.</param>
/// <param name="CanBeMailed">There is a mail server and an address, they have said nothing, and the link did not go out by mail.</param>
public sealed record AskedLine(
    GuestId Id,
    string Name,
    bool IsNeeded,
    IReadOnlyDictionary<string, DateAnswer> Answers,
    Instant? AnsweredAt,
    bool IsLate,
    bool LinkWasDisowned,
    string LinkToken,
    AskedMail? Mail = null,
    bool CanBeMailed = false);

/// <summary>A mail with the link of a question.</summary>
public sealed record AskedMail(MessageState State, Instant At, MessageFault? Fault);

/// <summary>An evening as a guest reads it.</summary>
public sealed record AskedEvening(string Id, LocalDateTime At, Instant Moment);

/// <summary>Everything a guest sees through the link with which they are asked. Nothing of what others say.</summary>
/// <param name="Revision">0 before the first answer.</param>
/// <param name="Invitation">Of the night that was made of it; null while there is none.</param>
/// <param name="Replaced">What gave way to the answer without its page having known of it; null when nothing did.</param>
public sealed record DateQuestion(
    string GroupName,
    string HostNames,
    string GuestName,
    string Title,
    string Zone,
    IReadOnlyList<AskedEvening> Evenings,
    Instant OpenUntil,
    bool IsPastDeadline,
    DateChoiceState State,
    LocalDateTime? Chosen,
    LinkToken? Invitation,
    IReadOnlyDictionary<string, DateAnswer> Answers,
    int Revision,
    bool WasDisowned,
    Instant? AnsweredAt = null,
    ReplacedSaying? Replaced = null);

/// <summary>What a link to a question leads to.</summary>
public abstract record DateLookup
{
    private DateLookup()
    {
    }

    public sealed record Found(DateQuestion Question) : DateLookup;

    public sealed record LinkNotValid(bool IsExpired) : DateLookup;
}

/// <summary>What a guest sends.</summary>
/// <param name="Answers">By evening; what is missing is not answered.</param>
/// <param name="Revision">The revision the form was made from, 0 for none: another one is told what it replaces.</param>
/// <param name="Key">Made with the form: sent twice, it counts once.</param>
public sealed record DateReply(IReadOnlyDictionary<string, DateAnswer> Answers, int Revision, Guid Key);

/// <summary>What came of a guest's answer.</summary>
public abstract record DateReplyResult
{
    private DateReplyResult()
    {
    }

    /// <param name="IsLate">After the time that answers were asked for; it counts all the same.</param>
    public sealed record Recorded(bool IsLate) : DateReplyResult;

    /// <summary>Of no evening that is asked about anything was said.</summary>
    public sealed record NothingSaid : DateReplyResult;

    /// <summary>A date is chosen, or the question is withdrawn.</summary>
    public sealed record NoLongerAsked : DateReplyResult;

    public sealed record LinkNotValid(bool IsExpired) : DateReplyResult;
}

/// <summary>What came of asking for a date or changing the question.</summary>
public abstract record DateResult
{
    private DateResult()
    {
    }

    public sealed record Kept(DateChoiceId Choice) : DateResult;

    public sealed record Refused(IReadOnlyList<DateProblem> Problems) : DateResult;

    public sealed record ChangedMeanwhile : DateResult;

    /// <summary>A date is chosen already, or the question is withdrawn.</summary>
    public sealed record NoLongerAsked : DateResult;

    public sealed record Gone : DateResult;
}

/// <summary>What came of choosing a date.</summary>
public abstract record ChoosingResult
{
    private ChoosingResult()
    {
    }

    /// <summary>The night is there, everybody who was asked is invited and told.</summary>
    public sealed record Chosen(NightId Night) : ChoosingResult;

    /// <summary>Another evening was chosen before.</summary>
    public sealed record ChosenOtherwise(NightId Night, LocalDateTime Evening) : ChoosingResult;

    /// <summary>The evening is not asked about (any more).</summary>
    public sealed record NotAnOption : ChoosingResult;

    public sealed record HasPassed : ChoosingResult;

    /// <summary>There is no dough that a night could be made with.</summary>
    public sealed record NoDough : ChoosingResult;

    public sealed record Withdrawn : ChoosingResult;

    public sealed record Gone : ChoosingResult;
}
