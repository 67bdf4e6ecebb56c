namespace GameNight.Nights.Records;

/// <summary>The people who meet again and again; owns kitchen, formulas, menu and nights. Nothing crosses between groups.</summary>
public sealed class Group
{
    public const int LongestName = 80;

    public Group(GroupId id, string name, string zone)
    {
        Id = id;
        Name = name;
        Zone = zone;
    }

    public GroupId Id { get; private set; }
    public string Name { get; private set; }

    /// <summary>IANA zone id the group usually meets in.</summary>
    public string Zone { get; private set; }

    public void Rename(string name, string zone)
    {
        Name = name;
        Zone = zone;
    }
}

/// <summary>What a host may do in a group.</summary>
public enum HostRole
{
    Owner,
    Host,
}

/// <summary>A host belongs to a group.</summary>
public sealed class GroupMembership
{
    public GroupMembership(GroupId groupId, HostId hostId, HostRole role)
    {
        GroupId = groupId;
        HostId = hostId;
        Role = role;
    }

    public GroupId GroupId { get; private set; }
    public HostId HostId { get; private set; }
    public HostRole Role { get; private set; }
}
