using GameNight.Nights.Dates;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning.Dates;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static GameNight.Nights.Moving.DocumentCheck;

namespace GameNight.Nights.Moving;

/// <summary>A question for a date.</summary>
/// <param name="EndedAt">When an evening was chosen, or the question withdrawn.</param>
internal sealed record DatePart(
    DateChoiceId Id,
    DateChoiceFacts Facts,
    Instant OpenedAt,
    DateChoiceState State,
    LocalDateTime? Chosen,
    NightId? Night,
    Instant? EndedAt,
    IReadOnlyList<AskedPart> Asked);

/// <param name="Said">Null when they have not answered.</param>
internal sealed record AskedPart(GuestId Guest, bool IsNeeded, Instant? DisownedAt, SaidPart? Said);

internal sealed record SaidPart(IReadOnlyDictionary<string, DateAnswer> Answers, Instant At, bool IsLate);

/// <summary>Questions for a date, out of a group and into one.</summary>
internal static class DateParts
{
    private const int Most = 500;

    /// <returns>Null without any: a document of before has no such member.</returns>
    public static async Task<IReadOnlyList<DatePart>?> LoadAsync(GameNightDb db, CancellationToken cancellation)
    {
        var asked = (await db.AskedGuests.AsNoTracking().ToListAsync(cancellation)).ToLookup(row => row.ChoiceId);
        var choices = await db.DateChoices.AsNoTracking().OrderBy(row => row.Id).ToListAsync(cancellation);
        return choices.Count == 0
            ? null
            : [.. choices.Select(choice => new DatePart(
                choice.Id, choice.Facts, choice.OpenedAt, choice.State, choice.Chosen, choice.NightId, choice.EndedAt,
                [.. asked[choice.Id].OrderBy(row => row.GuestId.Value).Select(Of)]))];
    }

    public static AskedPart Of(AskedGuest row) => new(
        row.GuestId, row.IsNeeded, row.DisownedAt, row.AnsweredAt is { } at ? new SaidPart(row.Answers, at, row.IsLate) : null);

    public static void AddAll(
        GroupSession session, IReadOnlyList<DatePart> parts, HostId owner, HashSet<GuestId> former, LinkDirectory links, Instant now)
    {
        foreach (var part in parts)
        {
            var choice = new DateChoice(session.GroupId, part.Id, part.Facts, owner, part.OpenedAt);
            if (part is { State: DateChoiceState.Chosen, Chosen: { } chosen, Night: { } night, EndedAt: { } at })
            {
                choice.Choose(chosen, night, at);
            }
            else if (part is { State: DateChoiceState.Withdrawn, EndedAt: { } ended })
            {
                choice.Withdraw(ended);
            }

            session.Db.DateChoices.Add(choice);
            foreach (var row in part.Asked.Where(row => !former.Contains(row.Guest)))
            {
                Add(session, choice, row, links, now);
            }
        }
    }

    public static IEnumerable<DocumentProblem> Problems(
        IReadOnlyList<DatePart> parts, KnownIds ids, IReadOnlySet<NightId> nights, Instant now) =>
    [
        .. Counted("$.dates", parts.Count, 0, Most),
        .. Distinct("$.dates", parts.Select(part => part.Id)),
        .. parts.Take(Most).SelectMany((part, index) => Problems($"$.dates[{index}]", part, ids, nights, now)),
    ];

    public static IEnumerable<DocumentProblem> Problems(string path, Rhythm rhythm) =>
        RhythmDesk.Problems(rhythm).Select(problem => new DocumentProblem(
            $"{path}.{problem.Field}", DocumentFault.OutOfRange, problem.Low, problem.High));

    private static void Add(GroupSession session, DateChoice choice, AskedPart part, LinkDirectory links, Instant now)
    {
        var asked = new AskedGuest(session.GroupId, choice.Id, part.Guest, AskedGuestId.New(), part.IsNeeded);
        if (part.Said is { } said)
        {
            asked.Answer(said.Answers, Guid.NewGuid(), said.At, said.IsLate);
        }

        if (part.DisownedAt is { } disowned)
        {
            asked.Disown(disowned);
        }

        session.Db.AskedGuests.Add(asked);
        var last = DateDesk.LastOf(choice.Facts);
        if (last + LinkDirectory.KeptAfterNight > now)
        {
            links.List(session, asked, last);
        }
    }

    private static IEnumerable<DocumentProblem> Problems(
        string path, DatePart part, KnownIds ids, IReadOnlySet<NightId> nights, Instant now)
    {
        var isChosen = part.State == DateChoiceState.Chosen;
        var evenings = part.Facts.Options.Select(DateChoiceFacts.IdOf).ToHashSet();
        return
        [
            .. Facts($"{path}.facts", part.Facts, now),
            .. Counted($"{path}.asked", part.Asked.Count, 0, Planning.SnapshotCheck.MostGuests),
            .. Distinct($"{path}.asked", part.Asked.Select(row => row.Guest)),
            .. part.Asked.All(row => ids.Guests.Contains(row.Guest)) ? Array.Empty<DocumentProblem>() : [new($"{path}.asked", DocumentFault.UnknownId)],
            .. part.Asked.All(row => row.Said is null || row.Said.Answers.Keys.All(evenings.Contains))
                ? Array.Empty<DocumentProblem>()
                : [new($"{path}.asked", DocumentFault.UnknownId)],
            .. part.Asked.SelectMany((row, index) => NightPartCheck.Moment($"{path}.asked[{index}].said.at", row.Said?.At, now)
                .Concat(NightPartCheck.Moment($"{path}.asked[{index}].disownedAt", row.DisownedAt, now))),
            .. NightPartCheck.Moment($"{path}.openedAt", part.OpenedAt, now),
            .. NightPartCheck.Moment($"{path}.endedAt", part.EndedAt, now),
            .. isChosen == (part.Chosen is { } chosen && part.Facts.Options.Contains(chosen))
                ? Array.Empty<DocumentProblem>()
                : [new($"{path}.chosen", DocumentFault.UnknownId)],
            .. isChosen == (part.Night is { } night && nights.Contains(night))
                ? Array.Empty<DocumentProblem>()
                : [new($"{path}.night", DocumentFault.UnknownId)],
            .. part.State == DateChoiceState.Open == part.EndedAt is null
                ? Array.Empty<DocumentProblem>()
                : [new($"{path}.endedAt", DocumentFault.OutOfTime)],
        ];
    }

    private static IEnumerable<DocumentProblem> Facts(string path, DateChoiceFacts facts, Instant now) =>
    [
        .. string.IsNullOrWhiteSpace(facts.Title) || facts.Title.Length > NightFacts.LongestTitle
            ? [new($"{path}.title", DocumentFault.WrongCount, 1, NightFacts.LongestTitle)]
            : Array.Empty<DocumentProblem>(),
        .. NightTime.Zone(facts.Zone) is null ? [new($"{path}.zone", DocumentFault.UnknownZone)] : Array.Empty<DocumentProblem>(),
        .. Counted($"{path}.options", facts.Options.Count, 1, DateChoiceFacts.MostOptions),
        .. Distinct($"{path}.options", facts.Options),
        .. facts.Options.Append(facts.OpenUntil).SelectMany(option => NightPartCheck.Local($"{path}.options", option, now)).Take(1),
        .. Counted($"{path}.quorum", facts.Quorum, 1, Planning.SnapshotCheck.MostGuests + 1, DocumentFault.OutOfRange),
    ];
}
