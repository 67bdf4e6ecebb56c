using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>
/// What a guest must not eat, and a private note, kept only with consent. Companions' needs follow in their order.
/// The note is encrypted with a key that is not in the database.
/// </summary>
public sealed class DietaryNote
{
    /// <summary>Longest note in characters.</summary>
    public const int LongestNote = 500;

    /// <summary>The consent text that guests agree to; raised whenever its wording changes.</summary>
    public const int ConsentVersion = 1;

    /// <summary>Notes are erased this many days after the night.</summary>
    public const int KeptDays = 7;

    public DietaryNote(GroupId groupId, NightId nightId, GuestId guestId)
    {
        GroupId = groupId;
        NightId = nightId;
        GuestId = guestId;
    }

    public GroupId GroupId { get; private set; }
    public NightId NightId { get; private set; }
    public GuestId GuestId { get; private set; }
    public IReadOnlyList<DietaryNeeds> Needs { get; private set; } = [];
    public string? ProtectedNote { get; private set; }
    public int ConsentedVersion { get; private set; }
    public Instant ConsentedAt { get; private set; }

    /// <summary>Of the guest and the first companions only: the others do not come.</summary>
    public void KeepFirst(int eaters) => Needs = [.. Needs.Take(eaters)];

    /// <param name="eaters">0 for the guest, then the companions who still come.</param>
    public void KeepOnly(IReadOnlyList<int> eaters)
    {
        var kept = eaters.Select(index => index < Needs.Count ? Needs[index] : DietaryNeeds.None).ToList();
        Needs = kept.SequenceEqual(Needs) ? Needs : kept;
    }

    public void Set(IReadOnlyList<DietaryNeeds> needs, string? protectedNote, Instant consentedAt)
    {
        Needs = needs;
        ProtectedNote = protectedNote;
        ConsentedVersion = ConsentVersion;
        ConsentedAt = consentedAt;
    }
}
