using System.Text.Json;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Guests;
using GameNight.Planning.Live;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Nights.Moving;

/// <summary>
/// A group as one document, with which it moves into another installation. Accounts, rights and the secrets of links are no
/// part of it. Its schema is published in <c>shared/schema/group.schema.json</c>.
/// </summary>
/// <param name="OwnEater">The guest record of the owner who exported it; it becomes that of the owner who imports it.</param>
internal sealed record GroupDocument(
    string Schema,
    int Version,
    Instant ExportedAt,
    GroupPart Group,
    GuestId? OwnEater,
    KitchenFacts Kitchen,
    IReadOnlyList<DoughPart> Doughs,
    IReadOnlyList<MenuPart> Menu,
    IReadOnlyList<GuestPart> Guests,
    IReadOnlyList<NightPart> Nights,
    IReadOnlyList<DatePart>? Dates = null)
{
    public const string SchemaName = "gamenight-group";
    public const int CurrentVersion = 1;

    /// <summary>In bytes; the plans of some hundred nights of forty guests.</summary>
    public const int Largest = 20 * 1024 * 1024;

    public static string Member(string name) => JsonNamingPolicy.CamelCase.ConvertName(name);
}

internal sealed record GroupPart(string Name, string Zone, Rhythm? Rhythm = null);

internal sealed record DoughPart(FormulaId Id, string Name, DoughFormula Formula, PieShape Shape);

internal sealed record MenuPart(
    MenuItemId Id,
    string Name,
    MenuRole Role,
    double GramsPerCm2,
    Composition Composition,
    int Order,
    bool IsOffered,
    double? WaterShare = null,
    PantryStock? Stock = null);

/// <param name="Name">Empty for a former guest.</param>
internal sealed record GuestPart(
    GuestId Id, string Name, PortionClass Portion, bool IsStanding, bool ShowsName, Instant? FormerSince, WishesPart? Wishes,
    Contact? Contact = null, string? Household = null, bool? IsOneOff = null);

internal sealed record WishesPart(WishFacts Facts, int ConsentedVersion, Instant ConsentedAt);

internal sealed record NightPart(
    NightId Id,
    NightFacts Facts,
    NightOverrides Overrides,
    Instant? CancelledAt,
    IReadOnlyList<NightMove> Moves,
    IReadOnlyList<InvitedPart> Invited,
    PlanPart? Plan,
    CommittedPart? CommittedDough,
    BakeLogPart? BakeLog,
    IReadOnlyList<DoughReading>? Readings = null,
    IReadOnlyList<TapPart>? Taps = null);

/// <summary>A tap on the night itself.</summary>
internal sealed record TapPart(Guid Id, LiveMark Mark, Instant? TakenBackAt = null);

/// <param name="Served">How near the plan came to the best they could have had, 0 to 1; null where nobody knows.</param>
internal sealed record InvitedPart(
    GuestId Guest, Instant? DisownedAt, AnswerPart? Answer, DietaryPart? Dietary, LookBackPart? LookBack, double? Served = null);

/// <param name="SaidBy">Null when the guest said it.</param>
/// <param name="WaitingNumber">The order of the line for seats; null for who does not wait.</param>
internal sealed record AnswerPart(
    AnswerFacts Facts, Instant AnsweredAt, bool IsLate, SaidBy? SaidBy = null, int? WaitingNumber = null)
{
    public static AnswerPart? Of(Answer? answer) => answer is null
        ? null
        : new AnswerPart(answer.Facts, answer.AnsweredAt, answer.IsLate, answer.SaidBy, answer.WaitingNumber);
}

/// <param name="Note">Readable; null when there is none or the exporting host may not read notes.</param>
/// <param name="Ruling">What a host made of the note.</param>
internal sealed record DietaryPart(
    IReadOnlyList<DietaryNeeds> Needs, string? Note, int ConsentedVersion, Instant ConsentedAt, NoteRuling? Ruling = null);

internal sealed record LookBackPart(LookBackFacts Facts, Instant SavedAt);

/// <param name="AnswerBy">As it was promised: a dough that is begun keeps it whatever later plans say.</param>
internal sealed record PlanPart(
    int Envelope, string Fingerprint, Instant MadeAt, Instant? AnswerBy, Instant? DoughCommitment, NightPlan Document);

/// <param name="ByHand">A host committed it; false when the time of mixing passed by itself.</param>
internal sealed record CommittedPart(Instant At, bool ByHand, int Envelope, NightSnapshot Snapshot, NightPlan Plan);

internal sealed record BakeLogPart(BakeLogFacts Facts, Instant SavedAt);
