using GameNight.Nights.Records;

namespace GameNight.Nights.Membership;

/// <summary>
/// The right to a group's data. Made only by <see cref="GroupDesk"/> for a member, by a link that was found, or for the
/// planner's own work; never by a page.
/// </summary>
public sealed record GroupAccess
{
    internal GroupAccess(GroupId groupId, HostId? hostId, HostRole? role, bool seesNotes = false)
    {
        GroupId = groupId;
        HostId = hostId;
        Role = role;
        SeesNotes = seesNotes;
    }

    public GroupId GroupId { get; }

    /// <summary>The host who acts, or null when a guest's link or the planner does.</summary>
    public HostId? HostId { get; }

    public HostRole? Role { get; }

    /// <summary>May read the guests' private notes.</summary>
    public bool SeesNotes { get; }

    public bool Allows(HostRole right) => Role >= right;

    /// <summary>The first line of everything a host does beyond looking.</summary>
    /// <exception cref="RightMissingException">The host may not do that (any more).</exception>
    internal void Demand(HostRole right)
    {
        if (!Allows(right))
        {
            throw new RightMissingException(right);
        }
    }
}
