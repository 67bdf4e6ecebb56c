using System.Security.Cryptography;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>An invitation to join a group as a host. Its link works once and not for long.</summary>
public sealed class HostInvitation
{
    public static readonly Duration OpenFor = Duration.FromDays(7);

    public HostInvitation(
        GroupId groupId, HostInvitationId id, string forName, HostRole role, bool seesNotes, HostId invitedBy, Instant expiresAt)
    {
        GroupId = groupId;
        Id = id;
        ForName = forName;
        Role = role;
        SeesNotes = seesNotes;
        InvitedBy = invitedBy;
        ExpiresAt = expiresAt;
    }

    public GroupId GroupId { get; private set; }
    public HostInvitationId Id { get; private set; }

    /// <summary>Whom it is meant for, as the owner calls them.</summary>
    public string ForName { get; private set; }

    public HostRole Role { get; private set; }
    public bool SeesNotes { get; private set; }
    public HostId InvitedBy { get; private set; }
    public Instant ExpiresAt { get; private set; }

    /// <summary>Part of the link's secret, as with guests.</summary>
    public int LinkGeneration { get; private set; } = RandomNumberGenerator.GetInt32(1, int.MaxValue / 2);
}
