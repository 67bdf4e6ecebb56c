using GameNight.Nights.ForHosts;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning.Dates;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Dates;

/// <summary>What a host does to find a date: ask, look, change the question, withdraw it. Choosing is <see cref="DateChoosing"/>'s.</summary>
public sealed class DateDesk
{
    private const int RhythmNights = 4;

    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly DateOutlooks _outlooks;
    private readonly Outbox _outbox;
    private readonly QuestionPost _post;
    private readonly NightChanges _changes;
    private readonly IClock _clock;

    internal DateDesk(
        GroupSessions sessions, LinkDirectory links, DateOutlooks outlooks, Outbox outbox, QuestionPost post, NightChanges changes, IClock clock)
    {
        (_outbox, _post) = (outbox, post);
        _sessions = sessions;
        _links = links;
        _outlooks = outlooks;
        _changes = changes;
        _clock = clock;
    }

    /// <summary>Questions that are open, the one that ends first on top.</summary>
    public async Task<IReadOnlyList<DateLine>> OpenAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var choices = await db.DateChoices.AsNoTracking().Where(row => row.State == DateChoiceState.Open).ToListAsync(cancellation);
        var asked = (await db.AskedGuests.AsNoTracking().Select(row => new { row.ChoiceId, row.Revision }).ToListAsync(cancellation))
            .ToLookup(row => row.ChoiceId, row => row.Revision > 0);
        return [.. choices
            .Select(row => new DateLine(
                row.Id, row.Facts.Title, row.Facts.Options.Count, asked[row.Id].Count(), asked[row.Id].Count(answered => answered),
                NightTime.ToInstant(row.Facts.OpenUntil, row.Facts.Zone), row.Facts.Zone))
            .OrderBy(line => line.OpenUntil)];
    }

    public async Task<DateStart> StartAsync(GroupAccess access, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var nights = await db.Nights.AsNoTracking().Where(night => night.CancelledAt == null)
            .OrderByDescending(night => night.ServeAt).Select(night => night.Facts).ToListAsync(cancellation);
        var last = nights.FirstOrDefault();
        var zone = last?.Zone ?? group.Zone;
        return new DateStart(
            last?.Title, zone, last?.ServeAt.TimeOfDay, Proposed(group, nights), await PeopleAsync(db, access, cancellation));
    }

    /// <summary>The next nights of the rhythm for which no night is open yet; none without a rhythm.</summary>
    public async Task<IReadOnlyList<RhythmNight>> ProposedAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var group = await session.Db.Groups.AsNoTracking().SingleAsync(cancellation);
        return Proposed(group, await session.Db.Nights.AsNoTracking().Where(night => night.CancelledAt == null)
            .Select(night => night.Facts).ToListAsync(cancellation));
    }

    /// <summary>
    /// What stands in the way of the evenings of a draft before anybody is asked; only those that have something. Nothing is kept, and
    /// a draft that would be refused has none.
    /// </summary>
    public async Task<IReadOnlyDictionary<LocalDateTime, IReadOnlyList<DateObstacle>>> ObstaclesAsync(
        GroupAccess access, DateChoiceId id, DateChoiceFacts facts, Asking asking, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var kept = await session.Db.DateChoices.AsNoTracking().Where(row => row.Id == id).Select(row => row.Facts).SingleOrDefaultAsync(cancellation);
        asking = await KnownAsync(session.Db, access, asking, cancellation);
        if (DateDraft.Problems(facts, asking, _clock.GetCurrentInstant(), kept).Count > 0)
        {
            return new Dictionary<LocalDateTime, IReadOnlyList<DateObstacle>>();
        }

        var draft = new DateChoice(access.GroupId, id, Ordered(facts), access.HostId, _clock.GetCurrentInstant());
        List<AskedGuest> asked = [.. asking.Guests.Select(guest => new AskedGuest(access.GroupId, id, guest, AskedGuestId.New(), asking.Needed.Contains(guest)))];
        var (forecast, _) = await _outlooks.LoadAsync(session, draft, asked, cancellation);
        return draft.Facts.Options
            .Select(option => (Option: option, forecast.Evenings.Single(evening => evening.Option.Id == DateChoiceFacts.IdOf(option)).Obstacles))
            .Where(row => row.Obstacles.Count > 0)
            .ToDictionary(row => row.Option, row => row.Obstacles);
    }

    /// <summary>Asks these guests. Safe to repeat: the page makes the id, and the same id asks once.</summary>
    public async Task<DateResult> AskAsync(
        GroupAccess access, DateChoiceId id, DateChoiceFacts facts, Asking asking, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        var now = _clock.GetCurrentInstant();
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        asking = await KnownAsync(db, access, asking, cancellation);
        if (DateDraft.Problems(facts, asking, now) is { Count: > 0 } problems)
        {
            return new DateResult.Refused(problems);
        }

        if (await db.DateChoices.AnyAsync(row => row.Id == id, cancellation))
        {
            return new DateResult.Kept(id);
        }

        db.DateChoices.Add(new DateChoice(access.GroupId, id, Ordered(facts), access.HostId, now));
        Ask(session, id, facts, asking.Guests, asking.Needed);
        await session.CommitNewAsync(cancellation);
        return new DateResult.Kept(id);
    }

    /// <returns>Null when the question is not in this group (any more).</returns>
    public async Task<DateView?> QuestionAsync(GroupAccess access, DateChoiceId id, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var choice = await db.DateChoices.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (choice is null)
        {
            return null;
        }

        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var asked = await db.AskedGuests.AsNoTracking().Where(row => row.ChoiceId == id).ToListAsync(cancellation);
        var ids = asked.Select(row => row.GuestId).ToList();
        var guests = await db.Guests.AsNoTracking().Where(guest => ids.Contains(guest.Id)).ToDictionaryAsync(guest => guest.Id, cancellation);
        var mayInvite = access.Allows(HostRole.Organiser);
        var (forecast, learned) = await _outlooks.LoadAsync(session, choice, asked, cancellation);
        var until = NightTime.ToInstant(choice.Facts.OpenUntil, choice.Facts.Zone);
        return new DateView(
            id, group.Name, choice.Facts, choice.State, choice.Version, until, until <= _clock.GetCurrentInstant(), choice.Chosen, choice.NightId,
            forecast,
            [.. asked.OrderBy(row => guests[row.GuestId].Name, StringComparer.OrdinalIgnoreCase).Select(row => new AskedLine(
                row.GuestId, guests[row.GuestId].Name, row.IsNeeded, row.Answers, row.AnsweredAt, row.IsLate, row.DisownedAt is not null,
                mayInvite ? _links.TokenFor(row).Text : "",
                row is { MailState: { } state, MailAt: { } at } ? new AskedMail(state, at, row.MailFault) : null,
                mayInvite && choice.State == DateChoiceState.Open && CanBeMailed(row, guests[row.GuestId])))],
            learned);
    }

    /// <summary>
    /// Changes a question that is open. What was said of evenings that stay holds; who is no longer asked is forgotten, with
    /// their link.
    /// </summary>
    public async Task<DateResult> ChangeAsync(
        GroupAccess access, DateChoiceId id, DateChoiceFacts facts, Asking asking, uint version, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var choice = await LockAsync(db, id, cancellation);
        if (choice is not { State: DateChoiceState.Open })
        {
            return choice is null ? new DateResult.Gone() : new DateResult.NoLongerAsked();
        }

        if (choice.Version != version)
        {
            return new DateResult.ChangedMeanwhile();
        }

        asking = await KnownAsync(db, access, asking, cancellation);
        if (DateDraft.Problems(facts, asking, _clock.GetCurrentInstant(), choice.Facts) is { Count: > 0 } problems)
        {
            return new DateResult.Refused(problems);
        }

        choice.Set(Ordered(facts));
        var asked = await db.AskedGuests.Where(row => row.ChoiceId == id).ToListAsync(cancellation);
        var gone = asked.Where(row => !asking.Guests.Contains(row.GuestId)).ToList();
        db.AskedGuests.RemoveRange(gone);
        await LinkDirectory.EndAsync(session, [.. gone.Select(row => row.Id)], cancellation);
        var evenings = facts.Options.Select(DateChoiceFacts.IdOf).ToHashSet();
        foreach (var row in asked.Except(gone))
        {
            row.Keep(evenings);
            row.Need(asking.Needed.Contains(row.GuestId));
        }

        var subjects = asked.Except(gone).Select(row => row.Id.Value).ToArray();
        foreach (var link in await db.Links.Where(link =>
            link.GroupId == session.GroupId && link.Scope == LinkScope.Dates && subjects.Contains(link.Subject)).ToListAsync(cancellation))
        {
            link.MoveExpiry(LastOf(facts) + LinkDirectory.KeptAfterNight);
        }

        Ask(session, id, facts, [.. asking.Guests.Except(asked.Select(row => row.GuestId))], asking.Needed);
        return await KeptAsync(session, id, cancellation);
    }

    /// <summary>
    /// Sends their links by mail to those who have said nothing, have an address, and were not sent this link yet. Safe to repeat:
    /// one link goes out once.
    /// </summary>
    public async Task<DateResult> SendLinksAsync(GroupAccess access, DateChoiceId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        if (await LockAsync(db, id, cancellation) is not { State: DateChoiceState.Open })
        {
            return new DateResult.NoLongerAsked();
        }

        var asked = await db.AskedGuests.Where(row => row.ChoiceId == id).ToListAsync(cancellation);
        var ids = asked.Select(row => row.GuestId).ToList();
        var guests = await db.Guests.AsNoTracking().Where(guest => ids.Contains(guest.Id)).ToDictionaryAsync(guest => guest.Id, cancellation);
        foreach (var row in asked.Where(row => CanBeMailed(row, guests[row.GuestId])))
        {
            await _post.QueueAsync(session, guests[row.GuestId], row, cancellation);
        }

        var result = await KeptAsync(session, id, cancellation);
        _outbox.Wake();
        return result;
    }

    private bool CanBeMailed(AskedGuest asked, Guest guest) =>
        asked is { Revision: 0, MailState: not (MessageState.Waiting or MessageState.Sent) } && Outbox.IsGuest(guest) && _outbox.Reaches(guest);

    /// <summary>Asks no more: guests read so, and there is no night of it. Twice is once.</summary>
    public async Task<DateResult> WithdrawAsync(GroupAccess access, DateChoiceId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var choice = await LockAsync(session.Db, id, cancellation);
        if (choice is not { State: DateChoiceState.Open })
        {
            return choice switch
            {
                null => new DateResult.Gone(),
                { State: DateChoiceState.Withdrawn } => new DateResult.Kept(id),
                _ => new DateResult.NoLongerAsked(),
            };
        }

        choice.Withdraw(_clock.GetCurrentInstant());
        return await KeptAsync(session, id, cancellation);
    }

    /// <summary>Ends a guest's link and makes a new one.</summary>
    public async Task<SaveResult> RenewLinkAsync(GroupAccess access, DateChoiceId id, GuestId guest, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var choice = await LockAsync(session.Db, id, cancellation);
        var asked = await session.Db.AskedGuests.SingleOrDefaultAsync(row => row.ChoiceId == id && row.GuestId == guest, cancellation);
        if (choice is null || asked is null)
        {
            return new SaveResult.Gone();
        }

        await LinkDirectory.EndAsync(session, [asked.Id], cancellation);
        asked.RenewLink();
        _links.List(session, asked, LastOf(choice.Facts));
        await KeptAsync(session, id, cancellation);
        return new SaveResult.Saved();
    }

    /// <summary>Changes of one question come one after the other.</summary>
    internal static Task<DateChoice?> LockAsync(GameNightDb db, DateChoiceId id, CancellationToken cancellation) =>
        db.DateChoices.FromSql($"select *, xmin from date_choices where id = {id.Value} for update").SingleOrDefaultAsync(cancellation);

    internal static Instant LastOf(DateChoiceFacts facts) => NightTime.ToInstant(facts.Options.Max(), facts.Zone);

    private static DateChoiceFacts Ordered(DateChoiceFacts facts) =>
        facts with { Title = facts.Title.Trim(), Options = [.. facts.Options.Order()] };

    private IReadOnlyList<RhythmNight> Proposed(Group group, List<NightFacts> nights)
    {
        if (group.Rhythm is not { } rhythm || NightTime.Zone(group.Zone) is not { } zone)
        {
            return [];
        }

        var taken = nights.Select(night => night.ServeAt.Date).ToHashSet();
        var today = _clock.GetCurrentInstant().InZone(zone).Date;
        return [.. RhythmDays.Next(rhythm, today, RhythmNights + taken.Count(day => day > today), group.Zone)
            .Where(night => !taken.Contains(night.At.Date)).Take(RhythmNights)];
    }

    private void Ask(
        GroupSession session, DateChoiceId id, DateChoiceFacts facts, IReadOnlyList<GuestId> guests, IReadOnlyList<GuestId> needed)
    {
        foreach (var guest in guests)
        {
            var asked = new AskedGuest(session.GroupId, id, guest, AskedGuestId.New(), needed.Contains(guest));
            session.Db.AskedGuests.Add(asked);
            _links.List(session, asked, LastOf(facts));
        }
    }

    private static async Task<IReadOnlyList<AskablePerson>> PeopleAsync(GameNightDb db, GroupAccess access, CancellationToken cancellation) =>
    [
        .. (await db.Guests.AsNoTracking().Where(guest => guest.FormerSince == null).ToListAsync(cancellation))
            .Where(guest => guest.HostId is null || guest.HostId != access.HostId)
            .OrderBy(guest => guest.Name, StringComparer.OrdinalIgnoreCase)
            .Select(guest => new AskablePerson(guest.Id, guest.Name, guest.IsStanding, guest.HostId is not null)),
    ];

    /// <summary>Who left meanwhile is not asked.</summary>
    private static async Task<Asking> KnownAsync(GameNightDb db, GroupAccess access, Asking asking, CancellationToken cancellation)
    {
        var known = (await PeopleAsync(db, access, cancellation)).Select(person => person.Id).ToHashSet();
        return new Asking([.. asking.Guests.Distinct().Where(known.Contains)], [.. asking.Needed.Distinct().Where(known.Contains)]);
    }

    private async Task<DateResult> KeptAsync(GroupSession session, DateChoiceId id, CancellationToken cancellation)
    {
        try
        {
            await session.CommitAsync(cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            // A guest answered in between.
            return new DateResult.ChangedMeanwhile();
        }

        _changes.Publish(id);
        return new DateResult.Kept(id);
    }
}
