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
public sealed record AnswerFacts(
    Presence Presence,
    bool Remotely,
    Hunger Hunger,
    IReadOnlyList<Companion> Companions,
    IReadOnlyDictionary<string, Liking> Likes);

/// <summary>The answer of one guest for one night.</summary>
public sealed class Answer
{
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

    public Instant AnsweredAt { get; private set; }

    /// <summary>Came after the dough commitment.</summary>
    public bool IsLate { get; private set; }

    public static Answer First(GroupId groupId, NightId nightId, GuestId guestId, AnswerFacts facts, Guid key, Instant at, bool isLate)
    {
        var answer = new Answer(groupId, nightId, guestId) { Facts = facts };
        answer.Replace(facts, key, at, isLate);
        return answer;
    }

    public void Replace(AnswerFacts facts, Guid key, Instant at, bool isLate)
    {
        Facts = facts;
        LastKey = key;
        AnsweredAt = at;
        IsLate = isLate;
        Revision++;
    }
}
