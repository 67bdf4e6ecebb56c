using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>What a guest asked the group to remember for next time: the start of their next answer.</summary>
/// <param name="Likes">As in <see cref="AnswerFacts"/>.</param>
/// <param name="Needs">The guest's own must-nots; never a companion's and never the free note.</param>
public sealed record WishFacts(Hunger Hunger, IReadOnlyDictionary<string, Liking> Likes, DietaryNeeds Needs);

/// <summary>Remembered wishes of a guest, kept with consent until it is taken back.</summary>
public sealed class RememberedWishes
{
    public RememberedWishes(GroupId groupId, GuestId guestId, WishFacts facts, Instant consentedAt)
    {
        GroupId = groupId;
        GuestId = guestId;
        Facts = facts;
        ConsentedAt = consentedAt;
    }

    public GroupId GroupId { get; private set; }
    public GuestId GuestId { get; private set; }
    public WishFacts Facts { get; private set; }
    public int ConsentedVersion { get; private set; } = DietaryNote.ConsentVersion;
    public Instant ConsentedAt { get; private set; }

    public void Set(WishFacts facts, Instant consentedAt)
    {
        Facts = facts;
        ConsentedVersion = DietaryNote.ConsentVersion;
        ConsentedAt = consentedAt;
    }
}
