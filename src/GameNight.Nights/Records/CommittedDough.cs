using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>
/// The dough commitment: what was known and what was decided when mixing began. Written once; taken back only by removing it
/// before anything is weighed. Ids only, no names.
/// </summary>
public sealed class CommittedDough
{
    public CommittedDough(
        GroupId groupId, NightId nightId, Instant at, HostId? by, int envelope, string snapshot, string plan)
    {
        GroupId = groupId;
        NightId = nightId;
        At = at;
        By = by;
        Envelope = envelope;
        Snapshot = snapshot;
        Plan = plan;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }
    public Instant At { get; private set; }

    /// <summary>The host who committed, or null when the time of mixing passed by itself.</summary>
    public HostId? By { get; private set; }

    /// <summary>Shape of the two documents: <see cref="SavedPlan.CurrentEnvelope"/> when it was written.</summary>
    public int Envelope { get; private set; }

    /// <summary>The snapshot, in the planner's contract.</summary>
    public string Snapshot { get; private set; }

    /// <summary>The plan that was shown then, in the planner's contract.</summary>
    public string Plan { get; private set; }
}
