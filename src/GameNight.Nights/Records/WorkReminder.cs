using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>
/// A mail to one host that work for a night begins soon, kept once for each stretch of work. It holds no text and no address: those
/// are read when it is sent.
/// </summary>
public sealed class WorkReminder
{
    /// <summary>How many minutes ahead a host may choose.</summary>
    public static readonly IReadOnlyList<int> MinutesAhead = [30, 60, 120, 720];

    public WorkReminder(GroupId groupId, WorkReminderId id, NightId nightId, HostId hostId, Instant begins, Instant queuedAt)
    {
        GroupId = groupId;
        Id = id;
        NightId = nightId;
        HostId = hostId;
        Begins = begins;
        QueuedAt = queuedAt;
    }

    public GroupId GroupId { get; private set; }

    /// <summary>The mail's own id is made of it, so that a repeat can be told.</summary>
    public WorkReminderId Id { get; private set; }

    public NightId NightId { get; private set; }
    public HostId HostId { get; private set; }

    /// <summary>When the work began by the plan of then; a plan made since may have moved it a little.</summary>
    public Instant Begins { get; private set; }

    public MessageState State { get; private set; } = MessageState.Waiting;
    public Instant QueuedAt { get; private set; }

    /// <summary>When it was sent, given up or dropped.</summary>
    public Instant? SettledAt { get; private set; }

    /// <summary>How often sending was tried in vain.</summary>
    public int Tries { get; private set; }

    /// <summary>What came of the last try; null when nothing stood in the way.</summary>
    public MessageFault? Fault { get; private set; }
}
