using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>Somebody the group invites. A host is an eater too and has a guest record of their own.</summary>
public sealed class Guest
{
    public const int LongestName = 60;

    public Guest(GroupId groupId, GuestId id, string name, PortionClass portion, HostId? hostId)
    {
        GroupId = groupId;
        Id = id;
        Name = name;
        Portion = portion;
        HostId = hostId;
    }

    public GroupId GroupId { get; private set; }
    public GuestId Id { get; private set; }
    public string Name { get; private set; }
    public PortionClass Portion { get; private set; }

    /// <summary>The account of a host, null for a guest without one.</summary>
    public HostId? HostId { get; private set; }

    /// <summary>Invited to every new night unless the host takes them off.</summary>
    public bool IsStanding { get; private set; } = true;

    /// <summary>The guest allows other guests to read their name among those who come.</summary>
    public bool ShowsName { get; private set; }

    /// <summary>Left or was removed then: the name is gone, counts of past nights stay, and no list offers them.</summary>
    public Instant? FormerSince { get; private set; }

    public void Set(string name, PortionClass portion)
    {
        Name = name;
        Portion = portion;
    }

    public void Stand(bool isStanding) => IsStanding = isStanding;

    public void ShowName(bool shows) => ShowsName = shows;

    /// <summary>A host's account joins this guest record, or leaves it.</summary>
    public void BelongTo(HostId? host) => HostId = host;

    public void Leave(Instant at)
    {
        Name = "";
        HostId = null;
        IsStanding = false;
        ShowsName = false;
        FormerSince ??= at;
    }
}
