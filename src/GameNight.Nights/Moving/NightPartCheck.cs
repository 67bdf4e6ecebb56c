using GameNight.Nights.ForHosts;
using GameNight.Nights.Live;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using NodaTime;
using static GameNight.Nights.Moving.DocumentCheck;

namespace GameNight.Nights.Moving;

/// <summary>Checks one night of a document.</summary>
internal sealed class NightPartCheck(ReferenceTables tables)
{
    private const int MostMoves = 500;
    private const int FirstYear = 1970;
    private const double MostSlices = PieCount.Highest * PieShape.MostSlices;

    /// <summary>Nothing of a group lies further ahead; typing slips of years are told.</summary>
    private static readonly Duration FurthestAhead = Duration.FromDays(3 * 366);

    private readonly SnapshotCheck _snapshots = new(tables);

    public IEnumerable<DocumentProblem> Problems(string path, NightPart night, KnownIds ids, Instant now) =>
    [
        .. Facts($"{path}.facts", night.Facts, ids, now),
        .. _snapshots.Problems(night.Overrides.ToByHand()).Select(problem => DocumentProblem.At($"{path}.overrides", problem)),
        .. Moment($"{path}.overrides.mixAt", night.Overrides.MixAt, now),
        .. SnapshotCheck.Problems(night.Overrides.Late).Select(problem => DocumentProblem.At($"{path}.overrides", problem)),
        .. Moment($"{path}.overrides.late.rescue.mixAt", night.Overrides.Late?.Rescue?.MixAt, now),
        .. Counted($"{path}.overrides.busy", night.Overrides.Busy?.Count ?? 0, 0, BusyTime.Most),
        .. (night.Overrides.Busy ?? []).Take(BusyTime.Most).SelectMany((busy, index) => busy.Until > busy.From
            ? Moment($"{path}.overrides.busy[{index}].from", busy.From, now).Concat(Moment($"{path}.overrides.busy[{index}].until", busy.Until, now))
            : [new DocumentProblem($"{path}.overrides.busy[{index}].until", DocumentFault.BackToFront)]),
        .. OwnStepCheck.Problems([.. (night.Overrides.Own ?? []).Select(own => own.Step)]).Select(problem => DocumentProblem.At($"{path}.overrides", problem)),
        .. (night.Overrides.Own ?? []).Take(OwnStep.Most).SelectMany((own, index) => OwnStepNamed($"{path}.overrides.own[{index}]", own, now)),
        .. Counted($"{path}.overrides.helpers", night.Overrides.Helpers?.Count ?? 0, 0, HelperOfNight.Most),
        .. (night.Overrides.Helpers ?? []).Take(HelperOfNight.Most).SelectMany((helper, index) => Helper($"{path}.overrides.helpers[{index}]", helper, ids)),
        .. SnapshotCheck.Problems(night.Overrides.Gone?.Choices).Select(problem => DocumentProblem.At($"{path}.overrides.gone", problem)),
        .. Moment($"{path}.overrides.gone.choices.rescue.mixAt", night.Overrides.Gone?.Choices.Rescue?.MixAt, now),
        .. Moment($"{path}.overrides.gone.at", night.Overrides.Gone?.At, now),
        .. Moment($"{path}.cancelledAt", night.CancelledAt, now),
        .. Counted($"{path}.moves", night.Moves.Count, 0, MostMoves),
        .. night.Moves.Take(MostMoves).SelectMany((move, index) => Move($"{path}.moves[{index}]", move, now)),
        .. Counted($"{path}.readings", night.Readings?.Count ?? 0, 0, SnapshotCheck.MostReadings),
        .. (night.Readings ?? []).Take(SnapshotCheck.MostReadings).SelectMany((reading, index) => SnapshotCheck.Problems(reading)
            .Select(problem => DocumentProblem.At($"{path}.readings[{index}]", problem))
            .Concat(Moment($"{path}.readings[{index}].at", reading.At, now))),
        .. Counted($"{path}.taps", night.Taps?.Count ?? 0, 0, LiveDesk.MostTaps),
        .. Distinct($"{path}.taps", (night.Taps ?? []).Select(tap => tap.Id)),
        .. (night.Taps ?? []).Take(LiveDesk.MostTaps).SelectMany((tap, index) => Tap($"{path}.taps[{index}]", tap, now)),
        .. Counted($"{path}.invited", night.Invited.Count, 0, MostGuestsEver),
        .. Distinct($"{path}.invited", night.Invited.Select(row => row.Guest)),
        .. night.Invited.Take(MostGuestsEver).SelectMany((row, index) => Invited($"{path}.invited[{index}]", row, ids, now)),
        .. night.Plan is { } plan ? Plan($"{path}.plan", plan, now) : [],
        .. night.CommittedDough is { } dough ? Committed($"{path}.committedDough", dough, now) : [],
        .. night.BakeLog is { } log ? Log($"{path}.bakeLog", log, ids, now) : [],
    ];

    private static IEnumerable<DocumentProblem> Helper(string path, HelperOfNight helper, KnownIds ids) =>
    [
        .. helper.Guest is not { } guest || ids.Guests.Contains(guest) ? Array.Empty<DocumentProblem>() : [new($"{path}.guest", DocumentFault.UnknownId)],
        .. helper.Name is { Length: 0 } ? [new($"{path}.name", DocumentFault.Missing)] : Text($"{path}.name", helper.Name ?? "", HelperOfNight.LongestName),
    ];

    private static IEnumerable<DocumentProblem> OwnStepNamed(string path, NamedOwnStep own, Instant now) =>
    [
        .. own.Name.Length == 0 ? [new($"{path}.name", DocumentFault.Missing)] : Text($"{path}.name", own.Name, NamedOwnStep.LongestName),
        .. Moment($"{path}.step.from", own.Step.From, now),
        .. Moment($"{path}.step.until", own.Step.Until, now),
    ];

    private static IEnumerable<DocumentProblem> Tap(string path, TapPart tap, Instant now) =>
    [
        .. Moment($"{path}.mark.at", tap.Mark.At, now),
        .. Moment($"{path}.mark.until", tap.Mark.Until, now),
        .. Moment($"{path}.takenBackAt", tap.TakenBackAt, now),
        .. LiveDesk.Problem(tap.Mark) is { } field ? [new DocumentProblem($"{path}.mark.{field}", DocumentFault.Missing)] : Array.Empty<DocumentProblem>(),
    ];

    public static IEnumerable<DocumentProblem> Moment(string path, Instant? moment, Instant now) =>
        moment is { } at && (at < Instant.FromUtc(FirstYear, 1, 1, 0, 0) || at > now + FurthestAhead)
            ? [new(path, DocumentFault.OutOfTime)]
            : [];

    public static IEnumerable<DocumentProblem> Likes(string path, IReadOnlyDictionary<string, Liking> likes, KnownIds ids) =>
        likes.Keys.All(ids.MenuItems.Contains) ? [] : [new(path, DocumentFault.UnknownId)];

    public static IEnumerable<DocumentProblem> Needs(string path, DietaryNeeds needs) =>
    [
        .. Distinct($"{path}.diets", needs.Diets),
        .. Distinct($"{path}.avoids", needs.Avoids),
        .. Distinct($"{path}.mustNotTouch", needs.MustNotTouch),
        .. Distinct($"{path}.keptOff", needs.KeptOff ?? []),
    ];

    private static IEnumerable<DocumentProblem> Facts(string path, NightFacts facts, KnownIds ids, Instant now) =>
    [
        .. Local($"{path}.serveAt", facts.ServeAt, now),
        .. facts.EndsAt is { } end ? Local($"{path}.endsAt", end, now) : [],
        .. Local($"{path}.serveAt", facts.ServeAt, now).Any()
            ? []
            : NightDraft.Problems(facts, now).Where(problem => problem.Fault != DraftFault.HasPassed)
                .Select(problem => DocumentProblem.At(path, problem)),
        .. ids.Doughs.Contains(facts.Formula) ? Array.Empty<DocumentProblem>() : [new($"{path}.formula", DocumentFault.UnknownId)],
    ];

    public static IEnumerable<DocumentProblem> Local(string path, LocalDateTime time, Instant now) =>
        time.Year < FirstYear || time.Year > (now + FurthestAhead).InUtc().Year ? [new(path, DocumentFault.OutOfTime)] : [];

    private static IEnumerable<DocumentProblem> Move(string path, NightMove move, Instant now) =>
    [
        .. Moment($"{path}.at", move.At, now),
        .. Local($"{path}.from", move.From, now),
        .. Local($"{path}.to", move.To, now),
        .. NightTime.Zone(move.FromZone) is null ? [new($"{path}.fromZone", DocumentFault.UnknownZone)] : Array.Empty<DocumentProblem>(),
        .. Text($"{path}.fromPlace", move.FromPlace ?? "", NightFacts.LongestAddress),
        .. NightTime.Zone(move.ToZone) is null ? [new($"{path}.toZone", DocumentFault.UnknownZone)] : Array.Empty<DocumentProblem>(),
    ];

    private static IEnumerable<DocumentProblem> Invited(string path, InvitedPart row, KnownIds ids, Instant now) =>
    [
        .. ids.Guests.Contains(row.Guest) ? Array.Empty<DocumentProblem>() : [new($"{path}.guest", DocumentFault.UnknownId)],
        .. Moment($"{path}.disownedAt", row.DisownedAt, now),
        .. row.Answer is { } answer ? Answer($"{path}.answer", answer, ids, now) : [],
        .. row.Dietary is { } dietary ? Dietary($"{path}.dietary", dietary, ids, now) : [],
        .. row.LookBack is { } back ? LookBack($"{path}.lookBack", back, now) : [],
        .. Counted($"{path}.served", row.Served ?? 0, 0, 1, DocumentFault.OutOfRange),
    ];

    private static IEnumerable<DocumentProblem> Answer(string path, AnswerPart answer, KnownIds ids, Instant now) =>
    [
        .. Counted($"{path}.facts.companions", answer.Facts.Companions.Count, 0, NightFacts.MostCompanionsAllowed),
        .. Likes($"{path}.facts.likes", answer.Facts.Likes, ids),
        .. Moment($"{path}.answeredAt", answer.AnsweredAt, now),
        .. Counted($"{path}.facts.comesAtMinute", answer.Facts.ComesAtMinute ?? 0, 0, AnswerFacts.LastMinute, DocumentFault.OutOfRange),
        .. Counted($"{path}.facts.leavesAtMinute", answer.Facts.LeavesAtMinute ?? 0, 0, AnswerFacts.LastMinute, DocumentFault.OutOfRange),
        .. Counted($"{path}.waitingNumber", answer.WaitingNumber ?? 1, 1, int.MaxValue, DocumentFault.OutOfRange),
    ];

    private static IEnumerable<DocumentProblem> Dietary(string path, DietaryPart dietary, KnownIds ids, Instant now) =>
    [
        .. Counted($"{path}.needs", dietary.Needs.Count, 0, 1 + NightFacts.MostCompanionsAllowed),
        .. dietary.Needs.SelectMany((needs, index) => Needs($"{path}.needs[{index}]", needs)),
        .. dietary.Ruling is { } ruling ? Ruling($"{path}.ruling", ruling, ids, now) : [],
        .. Text($"{path}.note", dietary.Note ?? "", DietaryNote.LongestNote),
        .. Counted($"{path}.consentedVersion", dietary.ConsentedVersion, 1, DietaryNote.ConsentVersion, DocumentFault.OutOfRange),
        .. Moment($"{path}.consentedAt", dietary.ConsentedAt, now),
    ];

    private static IEnumerable<DocumentProblem> Ruling(string path, NoteRuling ruling, KnownIds ids, Instant now) =>
    [
        .. Counted($"{path}.rules", ruling.Rules.Count, ruling.Because is null ? 1 : 0, ruling.Because is null ? 1 + NightFacts.MostCompanionsAllowed : 0),
        .. ruling.Rules.SelectMany((needs, index) => Needs($"{path}.rules[{index}]", needs)),
        .. ruling.Rules.SelectMany(needs => needs.KeptOff ?? []).All(ids.MenuItems.Contains)
            ? Array.Empty<DocumentProblem>()
            : [new($"{path}.rules", DocumentFault.UnknownId)],
        .. Moment($"{path}.at", ruling.At, now),
    ];

    private static IEnumerable<DocumentProblem> LookBack(string path, LookBackPart back, Instant now) =>
    [
        .. Counted($"{path}.facts.slices", back.Facts.Slices ?? 0, 0, MostSlices, DocumentFault.OutOfRange),
        .. Counted($"{path}.facts.bestPies", back.Facts.BestPies.Count, 0, PieCount.Highest),
        .. back.Facts.BestPies.SelectMany(pie => PieNumber($"{path}.facts.bestPies", pie)),
        .. Text($"{path}.facts.words", back.Facts.Words, LookBackFacts.LongestWords),
        .. Moment($"{path}.savedAt", back.SavedAt, now),
    ];

    private static IEnumerable<DocumentProblem> Log(string path, BakeLogPart log, KnownIds ids, Instant now) =>
    [
        .. Distinct($"{path}.facts.came", log.Facts.Came.Select(came => came.GuestId)),
        .. log.Facts.Came.All(came => ids.Guests.Contains(new GuestId(came.GuestId)))
            ? Array.Empty<DocumentProblem>()
            : [new($"{path}.facts.came", DocumentFault.UnknownId)],
        .. log.Facts.Came.SelectMany((came, index) => Counted(
            $"{path}.facts.came[{index}].heads", came.Heads, 0, SnapshotCheck.MostEatersPerGuest, DocumentFault.OutOfRange)),
        .. Counted($"{path}.facts.slicesLeft", log.Facts.SlicesLeft ?? 0, 0, MostSlices, DocumentFault.OutOfRange),
        .. Counted($"{path}.facts.pies", log.Facts.Pies.Count, 0, PieCount.Highest),
        .. Distinct($"{path}.facts.pies", log.Facts.Pies.Select(pie => pie.Number)),
        .. log.Facts.Pies.SelectMany((pie, index) => (IEnumerable<DocumentProblem>)[
            .. PieNumber($"{path}.facts.pies[{index}].number", pie.Number),
            .. Counted($"{path}.facts.pies[{index}].slicesLeft", pie.SlicesLeft ?? 0, 0, MostSlices, DocumentFault.OutOfRange),
            .. Text($"{path}.facts.pies[{index}].remark", pie.Remark, BakeLogFacts.LongestRemark),
        ]),
        .. Text($"{path}.facts.toChange", log.Facts.ToChange, BakeLogFacts.LongestText),
        .. Moment($"{path}.savedAt", log.SavedAt, now),
    ];

    private static IEnumerable<DocumentProblem> PieNumber(string path, int number) =>
        Counted(path, number, 1, PieCount.Highest, DocumentFault.OutOfRange);

    private static IEnumerable<DocumentProblem> Plan(string path, PlanPart plan, Instant now) =>
    [
        .. Counted($"{path}.envelope", plan.Envelope, SavedPlan.CurrentEnvelope, SavedPlan.CurrentEnvelope, DocumentFault.OutOfRange),
        .. Text($"{path}.fingerprint", plan.Fingerprint, 64),
        .. Moment($"{path}.madeAt", plan.MadeAt, now),
        .. Moment($"{path}.answerBy", plan.AnswerBy, now),
        .. Moment($"{path}.doughCommitment", plan.DoughCommitment, now),
        .. PlanParts($"{path}.document", plan.Document),
    ];

    private IEnumerable<DocumentProblem> Committed(string path, CommittedPart dough, Instant now) =>
    [
        .. Moment($"{path}.at", dough.At, now),
        .. Counted($"{path}.envelope", dough.Envelope, SavedPlan.CurrentEnvelope, SavedPlan.CurrentEnvelope, DocumentFault.OutOfRange),
        .. _snapshots.Problems(dough.Snapshot).Select(problem => DocumentProblem.At($"{path}.snapshot", problem)),
        .. PlanParts($"{path}.plan", dough.Plan),
    ];

    /// <summary>What pages rely on: each pie's letters stand for a combination, and one number of pies is chosen.</summary>
    private static IEnumerable<DocumentProblem> PlanParts(string path, NightPlan plan)
    {
        var letters = plan.Split.Combinations.Select(combination => combination.Letter).ToList();
        return
        [
            .. Text($"{path}.engineVersion", plan.EngineVersion, 16),
            .. Counted($"{path}.split.pies", plan.Split.Pies.Count, 0, PieCount.Highest),
            .. Distinct($"{path}.split.pies", plan.Split.Pies.Select(pie => pie.Number)),
            .. Distinct($"{path}.split.combinations", letters),
            .. plan.Split.Pies.SelectMany(pie => pie.Sectors).All(sector => letters.Contains(sector.Letter))
                ? Array.Empty<DocumentProblem>()
                : [new($"{path}.split.pies", DocumentFault.UnknownId)],
            .. Counted(
                $"{path}.pies.choices", plan.Pies.Choices.Count(choice => choice.Pies == plan.Pies.Count.Value), 1, 1),
        ];
    }

    private static IEnumerable<DocumentProblem> Text(string path, string text, int longest) =>
        text.Length <= longest ? [] : [new(path, DocumentFault.TooLong, 0, longest)];
}
