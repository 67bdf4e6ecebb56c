using System.Text.Json;
using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Moving;

/// <summary>What a group keeps about one guest.</summary>
internal sealed record OwnDocument(
    string Schema,
    int Version,
    Instant ExportedAt,
    string GroupName,
    string Name,
    PortionClass Portion,
    bool IsInvitedToEveryNight,
    bool ShowsName,
    WishesPart? Remembered,
    IReadOnlyList<LikeableTopping> Toppings,
    IReadOnlyList<OwnNight> Nights,
    Contact? Contact,
    string? Household = null,
    bool? IsOneOff = null,
    IReadOnlyList<OwnDate>? Dates = null)
{
    public const string SchemaName = "gamenight-guest";
    public const int CurrentVersion = 1;
}

internal sealed record OwnNight(
    string Title, LocalDateTime ServeAt, string Zone, AnswerPart? Answer, DietaryPart? Dietary, LookBackPart? LookBack, int? CameHeads,
    IReadOnlyList<OwnMessage> Messages, double? Served = null, ReplacedAnswer? Replaced = null);

/// <summary>What the guest said of evenings they were asked about.</summary>
internal sealed record OwnDate(DateChoiceFacts Facts, AskedPart Asked, ReplacedSaying? Replaced = null, OwnMail? Link = null);

/// <summary>A mail with the guest's link to a question.</summary>
internal sealed record OwnMail(MessageState State, Instant At);

/// <summary>A message to the guest: that it was, never what it said.</summary>
internal sealed record OwnMessage(MessageKind Kind, MessageState State, Instant At);

/// <summary>A guest's own data, through their link: readable by programs, and complete.</summary>
public sealed class OwnCopy
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly GuestNotes _notes;
    private readonly IClock _clock;

    internal OwnCopy(GroupSessions sessions, LinkDirectory links, GuestNotes notes, IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _notes = notes;
        _clock = clock;
    }

    /// <returns>Null when the link is not valid.</returns>
    public async Task<byte[]?> WriteAsync(LinkToken? link, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.Answer, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return null;
        }

        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        var guest = await session.Db.Guests.AsNoTracking().SingleOrDefaultAsync(row => row.Id == holder.Guest, cancellation);
        return guest is null
            ? null
            : JsonSerializer.SerializeToUtf8Bytes(await DocumentAsync(session, guest, cancellation), GroupJson.Options);
    }

    private async Task<OwnDocument> DocumentAsync(GroupSession session, Guest guest, CancellationToken cancellation)
    {
        var db = session.Db;
        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var wishes = await db.RememberedWishes.AsNoTracking().SingleOrDefaultAsync(row => row.GuestId == guest.Id, cancellation);
        var menu = await db.MenuItems.AsNoTracking().OrderBy(item => item.Id).ToListAsync(cancellation);
        var nights = await (
            from invitation in db.Invitations.AsNoTracking()
            where invitation.GuestId == guest.Id
            join night in db.Nights.AsNoTracking() on invitation.NightId equals night.Id
            orderby night.ServeAt, night.Id
            select night).ToListAsync(cancellation);
        var answers = await db.Answers.AsNoTracking().Where(row => row.GuestId == guest.Id).ToDictionaryAsync(row => row.NightId, cancellation);
        var notes = await db.DietaryNotes.AsNoTracking().Where(row => row.GuestId == guest.Id).ToDictionaryAsync(row => row.NightId, cancellation);
        var backs = await db.LookBacks.AsNoTracking().Where(row => row.GuestId == guest.Id).ToDictionaryAsync(row => row.NightId, cancellation);
        var logs = await db.BakeLogs.AsNoTracking().ToDictionaryAsync(row => row.NightId, cancellation);
        var served = await db.Invitations.AsNoTracking().Where(row => row.GuestId == guest.Id && row.Served != null)
            .ToDictionaryAsync(row => row.NightId, row => row.Served, cancellation);
        var messages = (await db.Messages.AsNoTracking().Where(row => row.GuestId == guest.Id).OrderBy(row => row.Id).ToListAsync(cancellation))
            .ToLookup(row => row.NightId);
        return new OwnDocument(
            OwnDocument.SchemaName,
            OwnDocument.CurrentVersion,
            _clock.GetCurrentInstant(),
            group.Name,
            guest.Name,
            guest.Portion,
            guest.IsStanding,
            guest.ShowsName,
            wishes is null ? null : new WishesPart(wishes.Facts, wishes.ConsentedVersion, wishes.ConsentedAt),
            [.. menu.Select(item => new LikeableTopping(item.Id.ToString(), item.Name))],
            [.. nights.Select(night => new OwnNight(
                night.Facts.Title,
                night.Facts.ServeAt,
                night.Facts.Zone,
                AnswerPart.Of(answers.GetValueOrDefault(night.Id)),
                notes.GetValueOrDefault(night.Id) is { } note
                    ? new DietaryPart(note.Needs, _notes.Read(note.ProtectedNote).Note, note.ConsentedVersion, note.ConsentedAt, note.Ruling)
                    : null,
                backs.GetValueOrDefault(night.Id) is { } back ? new LookBackPart(back.Facts, back.SavedAt) : null,
                logs.GetValueOrDefault(night.Id)?.Facts.Came.SingleOrDefault(came => came.GuestId == guest.Id.Value)?.Heads,
                [.. messages[night.Id].Select(row => new OwnMessage(row.Kind, row.State, row.SettledAt ?? row.QueuedAt))],
                served.GetValueOrDefault(night.Id),
                answers.GetValueOrDefault(night.Id)?.Replaced))],
            guest.Contact,
            guest.Household,
            guest.IsOneOff ? true : null,
            await DatesAsync(db, guest, cancellation));
    }

    private static async Task<IReadOnlyList<OwnDate>?> DatesAsync(GameNightDb db, Guest guest, CancellationToken cancellation)
    {
        var rows = await (
            from asked in db.AskedGuests.AsNoTracking()
            where asked.GuestId == guest.Id
            join choice in db.DateChoices.AsNoTracking() on asked.ChoiceId equals choice.Id
            orderby choice.Id
            select new { Asked = asked, choice.Facts }).ToListAsync(cancellation);
        return rows.Count == 0
            ? null
            : [.. rows.Select(row => new OwnDate(
                row.Facts, DateParts.Of(row.Asked), row.Asked.Replaced,
                row.Asked is { MailState: { } state, MailAt: { } at } ? new OwnMail(state, at) : null))];
    }
}
