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

    /// <summary>How often the group meets; null when nobody said.</summary>
    public Rhythm? Rhythm { get; private set; }

    public void Meet(Rhythm? rhythm) => Rhythm = rhythm;

    public void Rename(string name, string zone)
    {
        Name = name;
        Zone = zone;
    }
}

/// <summary>What a host may do in a group; each may do what stands before it as well.</summary>
public enum HostRole
{
    /// <summary>Sees plans and timelines, keeps kitchen and doughs, writes down how a night went.</summary>
    Cook,

    /// <summary>Opens, changes and cancels nights, invites guests, keeps the menu.</summary>
    Organiser,

    /// <summary>Invites and removes hosts, exports and deletes the group.</summary>
    Owner,
}

/// <summary>A host belongs to a group.</summary>
public sealed class GroupMembership
{
    public GroupMembership(GroupId groupId, HostId hostId, HostRole role, bool seesNotes)
    {
        GroupId = groupId;
        HostId = hostId;
        Role = role;
        SeesNotes = seesNotes;
    }

    public GroupId GroupId { get; private set; }
    public HostId HostId { get; private set; }
    public HostRole Role { get; private set; }

    /// <summary>May read the guests' private notes. Must-nots as rules are shown to every host: they cook by them.</summary>
    public bool SeesNotes { get; private set; }

    /// <summary>The host is mailed so many minutes before work in the kitchen begins; null for no mail.</summary>
    public int? RemindedMinutesAhead { get; private set; }

    public void Remind(int? minutesAhead) => RemindedMinutesAhead = minutesAhead;

    public void Grant(HostRole role, bool seesNotes)
    {
        Role = role;
        SeesNotes = seesNotes;
    }
}
