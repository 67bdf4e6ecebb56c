using GameNight.Planning.Guests;

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

    public void Set(string name, PortionClass portion)
    {
        Name = name;
        Portion = portion;
    }
}
