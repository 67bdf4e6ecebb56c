using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>What a guest says about coming.</summary>
public enum Presence
{
    Coming,
    Undecided,
    NotComing,
}

/// <summary>Somebody a guest brings along.</summary>
public sealed record Companion(PortionClass Portion);

/// <summary>A guest's answer in full. An answer replaces the earlier one.</summary>
/// <param name="Remotely">Joins from elsewhere and eats nothing.</param>
/// <param name="Likes">Menu item id (without dashes) to liking; what is not named is fine.</param>
/// <param name="ComesAtMinute">Comes at about this minute of the local day, 0 to 1439; null from the beginning.</param>
/// <param name="LeavesAtMinute">Leaves at about this minute of the local day, 0 to 1439; null stays to the end.</param>
/// <param name="AloneIfNeeded">Comes without the companions when there is one seat and not one for everybody.</param>
public sealed record AnswerFacts(
    Presence Presence,
    bool Remotely,
    Hunger Hunger,
    IReadOnlyList<Companion> Companions,
    IReadOnlyDictionary<string, Liking> Likes,
    int? ComesAtMinute = null,
    int? LeavesAtMinute = null,
    bool? AloneIfNeeded = null)
{
    public const int LastMinute = 1439;

    /// <summary>People who want a seat at the table.</summary>
    public int SeatsWanted => Presence == Presence.Coming && !Remotely ? 1 + Companions.Count : 0;
}

/// <summary>Who said an answer, when it was not the guest through their link.</summary>
public enum SaidBy
{
    /// <summary>A host wrote down what the guest said elsewhere.</summary>
    Host,

    /// <summary>Somebody of the same household ticked that it holds for this guest too.</summary>
    Household,
}

/// <summary>An answer that gave way to one from a page that did not know of it: from another device, as a rule.</summary>
public sealed record ReplacedAnswer(AnswerFacts Facts, Instant SentAt);

/// <summary>The answer of one guest for one night.</summary>
public sealed class Answer
{
    /// <summary>Keys of earlier forms that are remembered: phones on a weak connection send again for minutes, not for days.</summary>
    private const int MostEarlierKeys = 20;

    private Answer(GroupId groupId, NightId nightId, GuestId guestId)
    {
        GroupId = groupId;
        NightId = nightId;
        GuestId = guestId;
        Facts = null!;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }
    public GuestId GuestId { get; private set; }
    public AnswerFacts Facts { get; private set; }

    /// <summary>Counts the answers given, from 1. A form that was made from an older one is told so.</summary>
    public int Revision { get; private set; }

    /// <summary>The key of the form that was sent last: sent twice, it counts once.</summary>
    public Guid LastKey { get; private set; }

    /// <summary>Keys of forms that were sent before the last: sent again, they count no second time.</summary>
    public IReadOnlyList<Guid> EarlierKeys { get; private set; } = [];

    /// <summary>Told to the guest on every device until they answer again knowing of it; null when nothing gave way.</summary>
    public ReplacedAnswer? Replaced { get; private set; }

    public Instant AnsweredAt { get; private set; }

    /// <summary>Came after the dough commitment.</summary>
    public bool IsLate { get; private set; }

    /// <summary>Null when the guest said it themselves.</summary>
    public SaidBy? SaidBy { get; private set; }

    /// <summary>The place in line for a seat, as they came; null for who has one or needs none.</summary>
    public int? WaitingNumber { get; private set; }

    public bool IsWaiting => WaitingNumber is not null;

    /// <summary>What is reckoned with: who waits for a seat is not expected.</summary>
    public AnswerFacts Counted => IsWaiting ? Facts with { Presence = Presence.NotComing, Companions = [] } : Facts;

    public static Answer First(
        GroupId groupId, NightId nightId, GuestId guestId, AnswerFacts facts, Guid key, Instant at, bool isLate, SaidBy? saidBy = null)
    {
        var answer = new Answer(groupId, nightId, guestId) { Facts = facts };
        answer.Replace(facts, key, at, isLate, saidBy);
        return answer;
    }

    /// <summary>Whether that form has counted already, as the last one or before it.</summary>
    public bool HasCounted(Guid key) => LastKey == key || EarlierKeys.Contains(key);

    public void Replace(
        AnswerFacts facts, Guid key, Instant at, bool isLate, SaidBy? saidBy = null, ReplacedAnswer? replaced = null)
    {
        Facts = facts;
        Replaced = replaced;
        EarlierKeys = Revision == 0 ? [] : [.. EarlierKeys.Append(LastKey).TakeLast(MostEarlierKeys)];
        LastKey = key;
        AnsweredAt = at;
        IsLate = isLate;
        SaidBy = saidBy;
        Revision++;
    }

    public void Wait(int number) => WaitingNumber = number;

    /// <summary>For who has just answered: there is room, or no seat is needed.</summary>
    public void NeedNotWait() => WaitingNumber = null;

    /// <summary>A seat became free for who waited: newer than any form that is still open.</summary>
    /// <param name="alone">There is one seat, and the guest said that they would come without companions.</param>
    public void Seat(bool alone)
    {
        WaitingNumber = null;
        Facts = alone ? Facts with { Companions = [] } : Facts;
        Revision++;
    }
}
