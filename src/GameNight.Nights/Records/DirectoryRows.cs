using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>What a secret link is good for; a link of one scope opens nothing of another.</summary>
public enum LinkScope
{
    Answer,
    Feed,
    Unsubscribe,
    LookBack,

    /// <summary>Joins a group as a host, once.</summary>
    JoinAsHost,

    /// <summary>Says which evenings work, for one question.</summary>
    Dates,
}

/// <summary>From the hash of a secret link to whom it belongs. Global and free of content: hash, ids, scope, expiry.</summary>
public sealed class LinkRow
{
    public LinkRow(byte[] tokenHash, LinkScope scope, GroupId groupId, NightId? nightId, Guid subject, int generation, Instant expiresAt)
    {
        TokenHash = tokenHash;
        Scope = scope;
        GroupId = groupId;
        NightId = nightId;
        Subject = subject;
        Generation = generation;
        ExpiresAt = expiresAt;
    }

    public byte[] TokenHash { get; private set; }
    public LinkScope Scope { get; private set; }
    public GroupId GroupId { get; private set; }

    /// <summary>The night it is good for, or null when it is good beyond one night.</summary>
    public NightId? NightId { get; private set; }

    /// <summary>
    /// Id of the guest it belongs to; of the host invitation for <see cref="LinkScope.JoinAsHost"/>, of the asked guest for
    /// <see cref="LinkScope.Dates"/>.
    /// </summary>
    public Guid Subject { get; private set; }

    public int Generation { get; private set; }
    public Instant ExpiresAt { get; private set; }

    public void MoveExpiry(Instant expiresAt) => ExpiresAt = expiresAt;
}

/// <summary>
/// A night that needs a new plan. Written in the same commit as the change, so a restart forgets nothing. Global, so
/// that the planner finds work across groups; ids and a time, nothing else.
/// </summary>
public sealed class ReplanRow
{
    public ReplanRow(GroupId groupId, NightId nightId, Instant requestedAt)
    {
        GroupId = groupId;
        NightId = nightId;
        RequestedAt = requestedAt;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }
    public Instant RequestedAt { get; private set; }
}
