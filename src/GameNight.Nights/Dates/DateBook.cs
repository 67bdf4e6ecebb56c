using GameNight.Nights.Links;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Dates;

/// <summary>What a guest who is asked for a date can do through their link. Reading changes nothing.</summary>
public sealed class DateBook
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly NightChanges _changes;
    private readonly IClock _clock;

    internal DateBook(GroupSessions sessions, LinkDirectory links, NightChanges changes, IClock clock)
    {
        (_sessions, _links, _changes, _clock) = (sessions, links, changes, clock);
    }

    public async Task<DateLookup> LookAsync(LinkToken? link, CancellationToken cancellation)
    {
        var lookup = await _links.FindAskedAsync(link, cancellation);
        if (lookup is not LinkLookup<(Membership.GroupAccess Access, AskedGuestId Asked)>.Found { Holder: var (access, id) })
        {
            return new DateLookup.LinkNotValid(lookup is LinkLookup<(Membership.GroupAccess, AskedGuestId)>.Expired);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        return await ViewAsync(session, id, cancellation) is { } view
            ? new DateLookup.Found(view)
            : new DateLookup.LinkNotValid(IsExpired: false);
    }

    /// <summary>
    /// Keeps an answer. Safe to send again: the same key counts once. The last one sent counts; from a page that did not know of the one
    /// before, it says what gave way, and what it does not speak of stays. A late one counts as well, while nothing is chosen.
    /// </summary>
    public async Task<DateReplyResult> AnswerAsync(LinkToken? link, DateReply reply, CancellationToken cancellation)
    {
        var lookup = await _links.FindAskedAsync(link, cancellation);
        if (lookup is not LinkLookup<(Membership.GroupAccess Access, AskedGuestId Asked)>.Found { Holder: var (access, id) })
        {
            return new DateReplyResult.LinkNotValid(lookup is LinkLookup<(Membership.GroupAccess, AskedGuestId)>.Expired);
        }

        try
        {
            return await KeepAsync(access, id, reply, cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            // Two answers at the same moment: the other one is there now.
            return await KeepAsync(access, id, reply, cancellation);
        }
    }

    /// <summary>Whoever opened the link says that it is somebody else's; the host is shown so.</summary>
    /// <returns>False when the link is not valid.</returns>
    public async Task<bool> DisownAsync(LinkToken? link, CancellationToken cancellation)
    {
        if (await _links.FindAskedAsync(link, cancellation)
            is not LinkLookup<(Membership.GroupAccess Access, AskedGuestId Asked)>.Found { Holder: var (access, id) })
        {
            return false;
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var asked = await session.Db.AskedGuests.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        asked?.Disown(_clock.GetCurrentInstant());
        await session.CommitAsync(cancellation);
        if (asked is not null)
        {
            _changes.Publish(asked.ChoiceId);
        }

        return asked is not null;
    }

    private async Task<DateReplyResult> KeepAsync(
        Membership.GroupAccess access, AskedGuestId id, DateReply reply, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        // Shared: guests do not wait for each other, but no answer slips in while a date is being chosen.
        var choice = await db.DateChoices
            .FromSql($"select *, xmin from date_choices where id = (select choice_id from asked_guests where id = {id.Value}) for share")
            .AsNoTracking().SingleOrDefaultAsync(cancellation);

        // Answers through one link come one after the other.
        var asked = await db.AskedGuests.FromSql($"select * from asked_guests where id = {id.Value} for update").SingleOrDefaultAsync(cancellation);
        if (choice is null || asked is null)
        {
            return new DateReplyResult.LinkNotValid(IsExpired: false);
        }

        if (asked.HasCounted(reply.Key))
        {
            return new DateReplyResult.Recorded(asked.IsLate);
        }

        if (choice.State != DateChoiceState.Open)
        {
            return new DateReplyResult.NoLongerAsked();
        }

        var evenings = choice.Facts.Options.Select(DateChoiceFacts.IdOf).ToHashSet();
        var answers = reply.Answers.Where(said => evenings.Contains(said.Key)).ToDictionary(said => said.Key, said => said.Value);
        if (answers.Count == 0)
        {
            return new DateReplyResult.NothingSaid();
        }

        var isUnseen = asked.Revision != reply.Revision && asked.AnsweredAt is not null;
        var replaced = isUnseen ? new ReplacedSaying(asked.Answers, asked.AnsweredAt!.Value) : null;
        foreach (var (evening, before) in asked.Answers.Where(_ => isUnseen))
        {
            answers.TryAdd(evening, before);
        }

        var now = _clock.GetCurrentInstant();
        asked.Answer(answers, reply.Key, now, now >= NightTime.ToInstant(choice.Facts.OpenUntil, choice.Facts.Zone), replaced);
        await session.CommitAsync(cancellation);
        _changes.Publish(choice.Id);
        return new DateReplyResult.Recorded(asked.IsLate);
    }

    private async Task<DateQuestion?> ViewAsync(GroupSession session, AskedGuestId id, CancellationToken cancellation)
    {
        var db = session.Db;
        if (await db.AskedGuests.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } asked)
        {
            return null;
        }

        var choice = await db.DateChoices.AsNoTracking().SingleAsync(row => row.Id == asked.ChoiceId, cancellation);
        var guest = await db.Guests.AsNoTracking().SingleAsync(row => row.Id == asked.GuestId, cancellation);
        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var hosts = await db.Guests.AsNoTracking().Where(row => row.HostId != null).OrderBy(row => row.Name)
            .Select(row => row.Name).ToListAsync(cancellation);
        var invitation = choice.NightId is { } night
            ? await db.Invitations.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == night && row.GuestId == guest.Id, cancellation)
            : null;
        var (facts, until) = (choice.Facts, NightTime.ToInstant(choice.Facts.OpenUntil, choice.Facts.Zone));
        return new DateQuestion(
            group.Name, string.Join(", ", hosts), guest.Name, facts.Title, facts.Zone,
            [.. facts.Options.Select(option => new AskedEvening(
                DateChoiceFacts.IdOf(option), option, NightTime.ToInstant(option, facts.Zone)))],
            until, until <= _clock.GetCurrentInstant(), choice.State, choice.Chosen,
            invitation is null ? null : _links.TokenFor(invitation), asked.Answers, asked.Revision, asked.DisownedAt is not null,
            asked.AnsweredAt, asked.Replaced);
    }
}
