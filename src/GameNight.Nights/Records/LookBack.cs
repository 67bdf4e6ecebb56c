using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>Whether there was enough.</summary>
public enum Enough
{
    TooLittle,
    Right,
    TooMuch,
}

/// <summary>How the evening was.</summary>
public enum Evening
{
    Poor,
    Fine,
    Lovely,
}

/// <summary>What one guest says afterwards, in twenty seconds. Nothing of it has to be said.</summary>
/// <param name="Slices">Slices the guest ate.</param>
/// <param name="BestPies">Numbers of the pies they liked best, as the plan counts them.</param>
/// <param name="Words">A line for the host.</param>
/// <param name="Namelessly">Other guests and hosts read the words without a name.</param>
public sealed record LookBackFacts(
    Enough? Enough, Evening? Evening, double? Slices, IReadOnlyList<int> BestPies, string Words, bool Namelessly)
{
    public const int LongestWords = 280;
}

/// <summary>The look-back of one guest on one night. A new one replaces the earlier.</summary>
public sealed class LookBack
{
    public LookBack(GroupId groupId, NightId nightId, GuestId guestId, LookBackFacts facts, Guid lastKey, Instant savedAt)
    {
        GroupId = groupId;
        NightId = nightId;
        GuestId = guestId;
        Facts = facts;
        LastKey = lastKey;
        SavedAt = savedAt;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }
    public GuestId GuestId { get; private set; }
    public LookBackFacts Facts { get; private set; }

    /// <summary>Counts what was sent, from 1.</summary>
    public int Revision { get; private set; } = 1;

    /// <summary>The key of the form that was sent last: sent twice, it counts once.</summary>
    public Guid LastKey { get; private set; }

    public Instant SavedAt { get; private set; }

    public void Replace(LookBackFacts facts, Guid key, Instant at)
    {
        Facts = facts;
        LastKey = key;
        SavedAt = at;
        Revision++;
    }
}
