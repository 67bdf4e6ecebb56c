using GameNight.Nights.ForHosts;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Planning;
using NodaTime;

namespace GameNight.Nights.Moving;

/// <summary>Checks everything that a document brings, with the same ranges as screens and API, before anything is kept.</summary>
internal sealed class DocumentCheck(ReferenceTables tables)
{
    public const int MostDoughs = 200;
    public const int MostNights = 3000;

    /// <summary>Former guests stay for the sake of counts.</summary>
    public const int MostGuestsEver = 3000;

    /// <summary>More would not be read.</summary>
    private const int MostTold = 20;

    private readonly KitchenCheck _kitchen = new(tables);
    private readonly NightPartCheck _nights = new(tables);

    public IReadOnlyList<DocumentProblem> Problems(GroupDocument document, Instant now) =>
        [.. All(document, now).Take(MostTold)];

    private IEnumerable<DocumentProblem> All(GroupDocument document, Instant now)
    {
        var ids = new KnownIds(
            [.. document.Guests.Select(guest => guest.Id)],
            [.. document.Doughs.Select(dough => dough.Id)],
            [.. document.Menu.Select(item => item.Id.ToString())]);
        return
        [
            .. Group(document),
            .. _kitchen.Problems(document.Kitchen).Select(problem => DocumentProblem.At("$.kitchen", problem)),
            .. ToppingsOf(document.Kitchen.Menu).All(ids.MenuItems.Contains)
                ? Array.Empty<DocumentProblem>()
                : [new("$.kitchen.menu", DocumentFault.UnknownId)],
            .. Doughs(document.Doughs),
            .. Menu(document.Menu),
            .. Guests(document, ids, now),
            .. Counted("$.nights", document.Nights.Count, 0, MostNights),
            .. Distinct("$.nights", document.Nights.Select(night => night.Id)),
            .. document.Dates is { } dates
                ? DateParts.Problems(dates, ids, document.Nights.Select(night => night.Id).ToHashSet(), now)
                : [],
            .. document.Nights.Take(MostNights).SelectMany((night, index) => _nights.Problems($"$.nights[{index}]", night, ids, now)),
        ];
    }

    private static IEnumerable<string> ToppingsOf(HouseMenu? house) =>
    [
        .. (house?.Apart ?? []).SelectMany(pair => (string[])[pair.FirstId, pair.SecondId]),
        .. (house?.Named ?? []).SelectMany(set => set.ToppingIds),
    ];

    private static IEnumerable<DocumentProblem> Group(GroupDocument document)
    {
        var (name, zone) = (document.Group.Name, document.Group.Zone);
        if (string.IsNullOrWhiteSpace(name) || name.Length > Records.Group.LongestName)
        {
            yield return new("$.group.name", DocumentFault.WrongCount, 1, Records.Group.LongestName);
        }

        if (NightTime.Zone(zone) is null)
        {
            yield return new("$.group.zone", DocumentFault.UnknownZone);
        }

        foreach (var problem in document.Group.Rhythm is { } rhythm ? DateParts.Problems("$.group.rhythm", rhythm) : [])
        {
            yield return problem;
        }

        if (document.OwnEater is { } own && !document.Guests.Any(guest => guest.Id == own && guest.FormerSince is null))
        {
            yield return new("$.ownEater", DocumentFault.UnknownId);
        }
    }

    private IEnumerable<DocumentProblem> Doughs(IReadOnlyList<DoughPart> doughs) =>
    [
        .. Counted("$.doughs", doughs.Count, 0, MostDoughs),
        .. Distinct("$.doughs", doughs.Select(dough => dough.Id)),
        .. doughs.Take(MostDoughs).SelectMany((dough, index) => _kitchen.Problems(dough.Name, dough.Formula, dough.Shape)
            .Select(problem => DocumentProblem.At($"$.doughs[{index}]", problem))),
    ];

    private static IEnumerable<DocumentProblem> Menu(IReadOnlyList<MenuPart> menu) =>
    [
        .. Counted("$.menu", menu.Count, 0, SnapshotCheck.MostMenuItems),
        .. Distinct("$.menu", menu.Select(item => item.Id)),
        .. menu.Take(SnapshotCheck.MostMenuItems).SelectMany((item, index) =>
        (IEnumerable<DocumentProblem>)[
            .. KitchenCheck.Problems(item.Name, item.GramsPerCm2, item.WaterShare, item.Stock, count: 1)
                .Select(problem => DocumentProblem.At($"$.menu[{index}]", problem)),
            .. Counted($"$.menu[{index}].order", item.Order, 0, SnapshotCheck.MostMenuItems, DocumentFault.OutOfRange),
            .. Distinct($"$.menu[{index}].composition.contains", item.Composition.Contains),
            .. Distinct($"$.menu[{index}].composition.mayContain", item.Composition.MayContain),
            .. Distinct($"$.menu[{index}].composition.unknown", item.Composition.Unknown),
            .. Distinct($"$.menu[{index}].composition.suits", item.Composition.Suits),
        ]),
    ];

    private static IEnumerable<DocumentProblem> Guests(GroupDocument document, KnownIds ids, Instant now) =>
    [
        .. Counted("$.guests", document.Guests.Count, 0, MostGuestsEver),
        .. Counted("$.guests", document.Guests.Count(guest => guest.FormerSince is null), 0, SnapshotCheck.MostGuests),
        .. Distinct("$.guests", document.Guests.Select(guest => guest.Id)),
        .. document.Guests.Take(MostGuestsEver).SelectMany((guest, index) => Guest($"$.guests[{index}]", guest, ids, now)),
    ];

    private static IEnumerable<DocumentProblem> Guest(string path, GuestPart guest, KnownIds ids, Instant now)
    {
        var isFormer = guest.FormerSince is not null;
        var length = guest.Name.Trim().Length;
        if (isFormer ? guest.Name.Length > 0 : length is 0 or > Records.Guest.LongestName || guest.Name.Length > Records.Guest.LongestName)
        {
            yield return new($"{path}.name", DocumentFault.WrongCount, isFormer ? 0 : 1, isFormer ? 0 : Records.Guest.LongestName);
        }

        // Only what a former guest cannot have.
        if (isFormer && guest.Wishes is not null)
        {
            yield return new($"{path}.wishes", DocumentFault.WrongCount);
        }

        if (guest.Contact is { } contact
            && (isFormer || (contact.MailAddress.Length > 0 && MailAddressCheck.Plain(contact.MailAddress) != contact.MailAddress)))
        {
            yield return new($"{path}.contact.mailAddress", DocumentFault.Unreadable);
        }

        if (guest.Household is { } home && (isFormer || string.IsNullOrWhiteSpace(home) || home.Length > Records.Guest.LongestHousehold))
        {
            yield return new($"{path}.household", DocumentFault.WrongCount, isFormer ? 0 : 1, isFormer ? 0 : Records.Guest.LongestHousehold);
        }

        if (guest.IsOneOff == true && (isFormer || guest.IsStanding))
        {
            yield return new($"{path}.isOneOff", DocumentFault.WrongCount);
        }

        var more = NightPartCheck.Moment($"{path}.formerSince", guest.FormerSince, now);
        if (guest.Contact is { } reached)
        {
            more = [
                .. more,
                .. Counted($"{path}.contact.consentedVersion", reached.ConsentedVersion, 1, Contact.ConsentVersion, DocumentFault.OutOfRange),
                .. NightPartCheck.Moment($"{path}.contact.since", reached.Since, now),
                .. NightPartCheck.Moment($"{path}.contact.stoppedAt", reached.StoppedAt, now),
            ];
        }

        if (guest.Wishes is { } wishes)
        {
            more = [
                .. more,
                .. NightPartCheck.Likes($"{path}.wishes.facts.likes", wishes.Facts.Likes, ids),
                .. NightPartCheck.Needs($"{path}.wishes.facts.needs", wishes.Facts.Needs),
                .. Counted($"{path}.wishes.consentedVersion", wishes.ConsentedVersion, 1, DietaryNote.ConsentVersion, DocumentFault.OutOfRange),
                .. NightPartCheck.Moment($"{path}.wishes.consentedAt", wishes.ConsentedAt, now),
            ];
        }

        foreach (var problem in more)
        {
            yield return problem;
        }
    }

    internal static IEnumerable<DocumentProblem> Counted(
        string path, double given, double low, double high, DocumentFault fault = DocumentFault.WrongCount) =>
        given >= low && given <= high ? [] : [new(path, fault, low, high)];

    internal static IEnumerable<DocumentProblem> Distinct<T>(string path, IEnumerable<T> values)
    {
        var seen = new HashSet<T>();
        return values.Any(value => !seen.Add(value)) ? [new(path, DocumentFault.Repeated)] : [];
    }
}

/// <summary>The ids that a document defines; all others in it must be among them.</summary>
internal sealed record KnownIds(HashSet<GuestId> Guests, HashSet<FormulaId> Doughs, HashSet<string> MenuItems);
