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
    public int LinkGeneration { get; private set; } = 1;

    /// <summary>Somebody opened this link and said that it is not theirs.</summary>
    public Instant? DisownedAt { get; private set; }

    public void RenewLink()
    {
        LinkGeneration++;
        DisownedAt = null;
    }

    public void Disown(Instant at) => DisownedAt ??= at;
}
