using System.Security.Cryptography;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>A guest is invited to a night, with one private link. Raising the generation ends the old link.</summary>
public sealed class Invitation
{
    public Invitation(GroupId groupId, NightId nightId, GuestId guestId)
    {
        GroupId = groupId;
        NightId = nightId;
        GuestId = guestId;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }
    public GuestId GuestId { get; private set; }

    /// <summary>Begins anywhere: a guest who is invited again after being taken off gets another link than before.</summary>
    public int LinkGeneration { get; private set; } = RandomNumberGenerator.GetInt32(1, int.MaxValue / 2);

    /// <summary>Somebody opened this link and said that it is not theirs.</summary>
    public Instant? DisownedAt { get; private set; }

    /// <summary>
    /// How near the plan of a past night came to the best the guest could have had, 0 to 1; kept when the plan forgets whose
    /// slices were whose. Null before, and of who left.
    /// </summary>
    public double? Served { get; private set; }

    public void WasServed(double? share) => Served = share;

    public void RenewLink()
    {
        LinkGeneration++;
        DisownedAt = null;
    }

    public void Disown(Instant at) => DisownedAt ??= at;
}
