using GameNight.Nights.Records;
using NodaTime;

namespace GameNight.Nights.PastNights;

/// <summary>A night that is over, in the list of the group.</summary>
/// <param name="People">Heads that ate: as written down, else as the answers said.</param>
/// <param name="IsWritten">A host wrote down how it went.</param>
/// <param name="Won">As the host saw it.</param>
public sealed record PastNightLine(
    NightId Id, string Title, LocalDateTime ServeAt, int People, bool IsWritten, SlicesAccount Slices, Opinions Opinions,
    IReadOnlyList<PieKind> Won, NightPies Pies);

/// <summary>Somebody who was invited.</summary>
/// <param name="Expected">Heads that their answer let expect.</param>
/// <param name="Heads">As written down; null before.</param>
public sealed record CameRow(GuestId Id, string Name, int Expected, int? Heads);

/// <summary>What somebody said under their name.</summary>
public sealed record NamedLookBack(string Name, LookBackFacts Facts);

/// <summary>A night with all that is known of it afterwards.</summary>
/// <param name="Version">Of what was written down; null before.</param>
/// <param name="Named">Look-backs with a name.</param>
/// <param name="NamelessWords">Words of the others, in no order that points at anybody.</param>
/// <param name="OwnLink">Secret part of the host's own look-back link: hosts eat too. Null when they were not invited.</param>
public sealed record PastNightView(
    NightId Id,
    string Title,
    LocalDateTime ServeAt,
    string Zone,
    Instant ServeAtInstant,
    bool IsServed,
    bool IsCancelled,
    NightPies Pies,
    SlicesAccount Slices,
    IReadOnlyList<CameRow> Guests,
    BakeLogFacts? Log,
    IReadOnlyList<PieKind> Won,
    uint? Version,
    Opinions Opinions,
    IReadOnlyList<NamedLookBack> Named,
    IReadOnlyList<string> NamelessWords,
    string? OwnLink);
