using GameNight.Nights.Records;

namespace GameNight.Nights.Membership;

/// <summary>
/// The right to a group's data. Made only by <see cref="GroupDesk"/> for a member, by a link that was found, or for the
/// planner's own work; never by a page.
/// </summary>
public sealed record GroupAccess
{
    internal GroupAccess(GroupId groupId, HostId? hostId, HostRole? role)
    {
        GroupId = groupId;
        HostId = hostId;
        Role = role;
    }

    public GroupId GroupId { get; }

    /// <summary>The host who acts, or null when a guest's link or the planner does.</summary>
    public HostId? HostId { get; }

    public HostRole? Role { get; }
}
