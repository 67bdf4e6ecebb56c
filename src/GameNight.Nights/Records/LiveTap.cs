using GameNight.Planning.Live;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>A tap of a host on the night itself. Taps are added and taken back, never changed but for a name that is erased.</summary>
public sealed class LiveTap
{
    public LiveTap(GroupId groupId, NightId nightId, Guid id, LiveMark mark, HostId? by)
    {
        GroupId = groupId;
        NightId = nightId;
        Id = id;
        Mark = mark;
        At = mark.At;
        By = by;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }

    /// <summary>Made by the device: sent twice, it is one tap.</summary>
    public Guid Id { get; private set; }

    public LiveMark Mark { get; private set; }

    public Instant At { get; private set; }

    public HostId? By { get; private set; }

    public Instant? TakenBackAt { get; private set; }

    public void Rename(string name) => Mark = Mark with { Name = name };

    public void TakeBack(Instant at) => TakenBackAt ??= at;
}
