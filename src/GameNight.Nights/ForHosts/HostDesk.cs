using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Seats;
using GameNight.Nights.Storage;
using GameNight.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>What a host does with nights: open, change, cancel one, see answers, overrule the plan's numbers.</summary>
public sealed class HostDesk
{
    /// <summary>A number set by hand is tried this often when others write the same night at the same moment.</summary>
    private const int MostTries = 3;

    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly GuestNotes _notes;
    private readonly DoughCommitments _doughs;
    private readonly Outbox _outbox;
    private readonly TableSeats _seats;
    private readonly ReferenceTables _tables;
    private readonly SnapshotCheck _check;
    private readonly IClock _clock;

    internal HostDesk(
        GroupSessions sessions, LinkDirectory links, ReplanRequests replans, GuestNotes notes, DoughCommitments doughs,
        Outbox outbox, TableSeats seats, ReferenceTables tables, IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _notes = notes;
        _doughs = doughs;
        _outbox = outbox;
        _seats = seats;
        _tables = tables;
        _check = new SnapshotCheck(tables);
        _clock = clock;
    }

    public async Task<IReadOnlyList<NightLine>> NightsAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var nights = await db.Nights.AsNoTracking().OrderByDescending(night => night.ServeAt).ToListAsync(cancellation);
        var counts = await db.Database.SqlQuery<NightCount>(
            $"""
             select i.night_id as "Night", count(*)::int as "Invited",
                 (count(*) filter (where (a.facts->>'presence' = 'coming' and a.waiting_number is null) or (a.facts is null and g.host_id is not null)))::int as "Coming"
             from invitations i
             join guests g on g.group_id = i.group_id and g.id = i.guest_id
             left join answers a on a.group_id = i.group_id and a.night_id = i.night_id and a.guest_id = i.guest_id
             group by i.night_id
             """).ToDictionaryAsync(row => new NightId(row.Night), cancellation);
        return [.. nights.Select(night => new NightLine(
            night.Id,
            night.Facts.Title,
            night.Facts.ServeAt,
            night.Facts.Zone,
            counts.GetValueOrDefault(night.Id)?.Invited ?? 0,
            counts.GetValueOrDefault(night.Id)?.Coming ?? 0,
            night.CancelledAt is not null))];
    }

    /// <summary>
    /// Opens a night and invites everybody in <paramref name="guests"/>; the host eats too. Safe to repeat: the page makes
    /// the id, and the same id opens one night.
    /// </summary>
    public async Task<NightResult> OpenNightAsync(
        GroupAccess access, NightId id, NightFacts facts, IReadOnlyList<GuestId> guests, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        if (NightDraft.Problems(facts, _clock.GetCurrentInstant()) is { Count: > 0 } problems)
        {
            return new NightResult.Refused(problems);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        if (!await session.Db.Recipes.AnyAsync(recipe => recipe.Id == facts.Formula, cancellation))
        {
            return new NightResult.Refused([new DraftProblem("formula", DraftFault.UnknownFormula)]);
        }

        if (await session.Db.Nights.AnyAsync(row => row.Id == id, cancellation))
        {
            return new NightResult.Kept(id, NightTime.Resolve(facts.ServeAt, facts.Zone).Change);
        }

        var night = new Night(access.GroupId, id, facts);
        session.Db.Nights.Add(night);
        var known = await session.Db.Guests.AsNoTracking()
            .Where(guest => (guests.Contains(guest.Id) && guest.FormerSince == null) || guest.HostId == access.HostId).ToListAsync(cancellation);
        foreach (var guest in known)
        {
            InvitationDesk.Invite(session, _links, night, guest.Id);
        }

        _replans.Night(session, night.Id);
        session.LookAfter(night.Id, _clock.GetCurrentInstant());
        await session.CommitNewAsync(cancellation);
        _replans.Wake(night.Id);
        return new NightResult.Kept(night.Id, NightTime.Resolve(facts.ServeAt, facts.Zone).Change);
    }

    /// <summary>
    /// Changes a night. Another serving time or zone is a move: guests who answered are asked again. A begun dough that cannot
    /// be baked for the new time is let go, and another one is planned.
    /// </summary>
    public async Task<NightResult> ChangeNightAsync(
        GroupAccess access, NightId id, NightFacts facts, uint version, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        var (db, now) = (session.Db, _clock.GetCurrentInstant());
        var night = await db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return new NightResult.Gone();
        }

        if (NightDraft.Problems(facts, now, night.Facts) is { Count: > 0 } problems)
        {
            return new NightResult.Refused(problems);
        }

        if (!await db.Recipes.AnyAsync(recipe => recipe.Id == facts.Formula, cancellation))
        {
            return new NightResult.Refused([new DraftProblem("formula", DraftFault.UnknownFormula)]);
        }

        if (facts.Seats is { } seats && seats != night.Facts.Seats
            && TableSeats.Taken((await db.InvitedTo(id).ToListAsync(cancellation)).Select(row => (row.Guest, row.Answer))) is var taken
            && taken > seats)
        {
            return new NightResult.Refused([new DraftProblem("seats", DraftFault.FewerThanSeated, taken, NightFacts.MostSeats)]);
        }

        await _doughs.IsBegunAsync(session, id, now, cancellation);
        var before = night.Facts;
        db.Entry(night).Property(row => row.Version).OriginalValue = version;
        night.Set(facts);
        var isLetGo = false;
        var (isMove, isElsewhere) = (NightMoves.IsMove(before, facts), NightMoves.IsElsewhere(before, facts));
        if (isMove || isElsewhere)
        {
            night.Moved(new NightMove(
                now, before.ServeAt, before.Zone, facts.ServeAt, facts.Zone, isElsewhere ? before.Address : null));
            if (isMove)
            {
                night.Overrule(night.Overrides.Moved(NightTime.ToInstant(facts.ServeAt, facts.Zone), _tables, now));
                isLetGo = await LetGoAsync(session, night, now, cancellation);
            }

            if (night.CancelledAt is null)
            {
                await _outbox.TellAsync(session, night, MessageKind.Change, cancellation);
            }
        }

        await _seats.FillAsync(session, night, cancellation);
        var expires = NightTime.ToInstant(facts.ServeAt, facts.Zone) + LinkDirectory.KeptAfterNight;
        foreach (var link in await db.Links
            .Where(link => link.GroupId == access.GroupId && link.NightId == id).ToListAsync(cancellation))
        {
            link.MoveExpiry(expires);
        }

        _replans.Night(session, id);
        session.LookAfter(id, now);
        try
        {
            await session.CommitAsync(cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new NightResult.ChangedMeanwhile();
        }

        _outbox.Wake();
        _replans.Wake(id);
        return new NightResult.Kept(id, NightTime.Resolve(facts.ServeAt, facts.Zone).Change, isLetGo);
    }

    /// <summary>Calls a night off: guests read so and no answers are taken. Calling it off twice is calling it off.</summary>
    public Task<SaveResult> CancelAsync(GroupAccess access, NightId id, CancellationToken cancellation) => SetStandingAsync(
        access, id, night => night.Cancel(_clock.GetCurrentInstant()), cancellation);

    /// <summary>
    /// The night takes place after all. That is kept as a move to where it was: who answered before is asked again, and
    /// calendars are told that this is newer than the cancellation.
    /// </summary>
    public Task<SaveResult> ReinstateAsync(GroupAccess access, NightId id, CancellationToken cancellation) => SetStandingAsync(
        access,
        id,
        night =>
        {
            if (night.CancelledAt is not null)
            {
                var facts = night.Facts;
                night.Reinstate();
                night.Moved(new NightMove(_clock.GetCurrentInstant(), facts.ServeAt, facts.Zone, facts.ServeAt, facts.Zone));
            }
        },
        cancellation);

    /// <returns>Null when the night is not in this group.</returns>
    public async Task<NightView?> NightAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var night = await db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return null;
        }

        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var rows = await db.InvitedTo(id).ToListAsync(cancellation);
        var dough = await db.CommittedDoughs.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == id, cancellation);
        var (at, clock) = NightTime.Resolve(night.Facts.ServeAt, night.Facts.Zone);
        var answerBy = await db.Plans.AsNoTracking().Where(row => row.NightId == id).Select(row => row.AnswerBy)
            .SingleOrDefaultAsync(cancellation);
        var present = rows.Where(row => row.Guest.FormerSince is null).ToList();
        var places = TableSeats.Places(present.Select(row => row.Answer));
        return new NightView(
            id, group.Name, night.Facts, at.ToInstant(), clock, night.Overrides, night.Version,
            [.. present.OrderBy(row => row.Guest.Name, StringComparer.OrdinalIgnoreCase)
                .Select(row => Show(row, night, access, places, answerBy))],
            night.CancelledAt,
            dough is null ? null : await CommitmentAsync(db, dough, cancellation),
            TableSeats.Taken(present.Select(row => (row.Guest, row.Answer))));
    }

    /// <summary>
    /// Sets numbers of the plan by hand or takes them back. The change is applied to what stands now, so two hosts who
    /// overrule different numbers at the same moment do not undo each other.
    /// </summary>
    public async Task<SaveResult> OverruleAsync(
        GroupAccess access, NightId id, Func<NightOverrides, NightOverrides> change, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        for (var tries = 1; ; tries++)
        {
            try
            {
                return await TryOverruleAsync(access, id, change, cancellation);
            }
            catch (DbUpdateConcurrencyException) when (tries < MostTries)
            {
                // Somebody changed the night in between: apply the change to that.
            }
            catch (DbUpdateConcurrencyException)
            {
                return new SaveResult.ChangedMeanwhile();
            }
        }
    }

    private async Task<SaveResult> SetStandingAsync(
        GroupAccess access, NightId id, Action<Night> set, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        var night = await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return new SaveResult.Gone();
        }

        var isBegun = await _doughs.IsBegunAsync(session, id, _clock.GetCurrentInstant(), cancellation);
        var wasCancelled = night.CancelledAt is not null;
        set(night);
        if (wasCancelled && night.CancelledAt is null && !isBegun)
        {
            // Times of mixing that passed while nobody meant to mix begin no dough: the night is planned from now.
            await session.Db.Plans.Where(plan => plan.NightId == id).ExecuteDeleteAsync(cancellation);
        }

        if (wasCancelled != night.CancelledAt is not null)
        {
            await _outbox.TellAsync(
                session, night, wasCancelled ? MessageKind.Reinstatement : MessageKind.Cancellation, cancellation);
        }

        await _seats.FillAsync(session, night, cancellation);
        _replans.Night(session, id);
        session.LookAfter(id, _clock.GetCurrentInstant());
        try
        {
            await session.CommitAsync(cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new SaveResult.ChangedMeanwhile();
        }

        _outbox.Wake();
        _replans.Wake(id);
        return new SaveResult.Saved();
    }

    /// <returns>True when a begun dough cannot be baked for the night's new time any more.</returns>
    private static async Task<bool> LetGoAsync(
        GroupSession session, Night night, Instant now, CancellationToken cancellation)
    {
        var dough = session.Db.CommittedDoughs.Local.SingleOrDefault(row => row.NightId == night.Id)
            ?? await session.Db.CommittedDoughs.SingleOrDefaultAsync(row => row.NightId == night.Id, cancellation);
        if (dough is null
            || DoughCommitments.Read(dough).Plan.Timeline.DoughCommitment is not { } mixing
            || DoughCommitments.IsWithinReach(
                mixing,
                NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone),
                Duration.FromHours(night.Facts.LongestColdHours)))
        {
            return false;
        }

        session.Db.CommittedDoughs.Remove(dough);
        night.Overrule(night.Overrides.WithoutDough(LetGoCause.DoughLetGo, now));
        await session.Db.Plans.Where(plan => plan.NightId == night.Id).ExecuteDeleteAsync(cancellation);
        return true;
    }

    private async Task<SaveResult> TryOverruleAsync(
        GroupAccess access, NightId id, Func<NightOverrides, NightOverrides> change, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var night = await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return new SaveResult.Gone();
        }

        var overrides = change(night.Overrides);
        if (OverridesCheck.Problems(overrides, _check) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        night.Overrule(overrides);
        _replans.Night(session, id);
        await session.CommitAsync(cancellation);
        _replans.Wake(id);
        return new SaveResult.Saved();
    }

    private InvitedGuest Show(
        InvitedRow row, Night night, GroupAccess access, IReadOnlyDictionary<GuestId, int> places, Instant? answerBy)
    {
        var (note, isReadable) = access.SeesNotes ? _notes.Read(row.Note?.ProtectedNote) : (null, true);
        return new InvitedGuest(
            row.Guest.Id,
            row.Guest.Name,
            row.Guest.Portion,
            row.Guest.HostId is not null,
            row.Answer?.Facts,
            row.Answer?.AnsweredAt,
            row.Answer?.IsLate ?? false,
            row.Note is { } wished ? [.. Enumerable.Range(0, Math.Max(wished.Needs.Count, wished.Ruling?.Rules.Count ?? 0)).Select(wished.NeedsOf)] : [],
            note,
            !isReadable,
            row.Invitation.DisownedAt is not null,
            access.Allows(HostRole.Organiser) ? _links.TokenFor(row.Invitation).Text : "",
            row.Answer is { } answer && NightMoves.Since(night, answer.AnsweredAt) is not null,
            places.TryGetValue(row.Guest.Id, out var place) ? place : null,
            row.Answer?.SaidBy,
            row.Guest.Household,
            row.Guest.IsOneOff,
            row.Answer is { IsLate: false } given && given.AnsweredAt > answerBy,
            row.Answer?.Revision ?? 0,
            row.Note is { IsOpen: true },
            access.SeesNotes && row.Note is { ProtectedNote: not null, ConsentedAt: var at } ? at : null,
            access.SeesNotes ? row.Note?.Ruling : null);
    }

    private async Task<CommitmentView> CommitmentAsync(GameNightDb db, CommittedDough dough, CancellationToken cancellation)
    {
        var by = dough.By is { } host
            ? await db.Guests.AsNoTracking().Where(guest => guest.HostId == host).Select(guest => guest.Name)
                .FirstOrDefaultAsync(cancellation) ?? ""
            : null;
        var then = DoughCommitments.Read(dough);
        var mixing = then.Plan.Timeline.DoughCommitment!.Value;
        return new CommitmentView(
            dough.At, by, mixing, CanBeTakenBack: mixing > _clock.GetCurrentInstant(), then.Plan.Dough.Balls,
            then.Plan.Dough.Total, then.Night.ServeAt, then.Plan.Timeline.ColdFermentLength);
    }

    private sealed record NightCount(Guid Night, int Invited, int Coming);
}
