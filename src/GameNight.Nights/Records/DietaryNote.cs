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

    /// <summary>What a host made of the note; null while nobody has settled it, or without a note.</summary>
    public NoteRuling? Ruling { get; private set; }

    public bool IsOpen => ProtectedNote is not null && Ruling is null;

    public int ConsentedVersion { get; private set; }
    public Instant ConsentedAt { get; private set; }

    /// <summary>Of the guest and the first companions only: the others do not come.</summary>
    public void KeepFirst(int eaters) => KeepOnly([.. Enumerable.Range(0, Math.Min(eaters, Math.Max(Needs.Count, Ruling?.Rules.Count ?? 0)))]);

    /// <summary>What the guest ticked and what a host made of their note; the guest is 0, companions follow.</summary>
    public DietaryNeeds NeedsOf(int eater) => At(Needs, eater).With(At(Ruling?.Rules ?? [], eater));

    public void Settle(NoteRuling ruling) => Ruling = ruling;

    /// <param name="eaters">0 for the guest, then the companions who still come.</param>
    public void KeepOnly(IReadOnlyList<int> eaters)
    {
        Needs = Kept(Needs);
        Ruling = Ruling is { Rules.Count: > 0 } ruling ? ruling with { Rules = Kept(ruling.Rules) } : Ruling;

        IReadOnlyList<DietaryNeeds> Kept(IReadOnlyList<DietaryNeeds> all)
        {
            var kept = eaters.Select(index => At(all, index)).ToList();
            return kept.SequenceEqual(all) ? all : kept;
        }
    }

    /// <param name="isSameNote">The words are as they were: what a host made of them stays.</param>
    public void Set(IReadOnlyList<DietaryNeeds> needs, string? protectedNote, Instant consentedAt, bool isSameNote = false)
    {
        Ruling = isSameNote && protectedNote is not null ? Ruling : null;
        Needs = needs;
        ProtectedNote = protectedNote;
        ConsentedVersion = ConsentVersion;
        ConsentedAt = consentedAt;
    }

    private static DietaryNeeds At(IReadOnlyList<DietaryNeeds> needs, int eater) => eater < needs.Count ? needs[eater] : DietaryNeeds.None;
}

/// <summary>Why a note makes no rule.</summary>
public enum SetAside
{
    /// <summary>It says nothing about food.</summary>
    NotAboutFood,

    /// <summary>What the guest ticked says it already.</summary>
    TickedAlready,

    /// <summary>A host talked with the guest: nothing has to be kept off.</summary>
    TalkedOver,
}

/// <summary>What a host made of a note: rules for the guest and their companions in their order, or a reason for none.</summary>
/// <param name="Rules">Empty when it is set aside; at least one says something otherwise.</param>
public sealed record NoteRuling(IReadOnlyList<DietaryNeeds> Rules, SetAside? Because, Instant At);
