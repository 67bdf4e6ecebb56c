using GameNight.Nights.ForGuests;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForHosts;

/// <summary>What a host does with nights: open and change one, invite, see answers, overrule the plan's numbers.</summary>
public sealed class HostDesk
{
    /// <summary>A number set by hand is tried this often when others write the same night at the same moment.</summary>
    private const int MostTries = 3;

    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly GuestNotes _notes;
    private readonly SnapshotCheck _check;
    private readonly IClock _clock;

    internal HostDesk(
        GroupSessions sessions, LinkDirectory links, ReplanRequests replans, GuestNotes notes, ReferenceTables tables,
        IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _notes = notes;
        _check = new SnapshotCheck(tables);
        _clock = clock;
    }

    public async Task<IReadOnlyList<NightLine>> NightsAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var nights = await db.Nights.AsNoTracking().OrderByDescending(night => night.ServeAt).ToListAsync(cancellation);
        var invited = await db.Invitations.GroupBy(row => row.NightId)
            .Select(rows => new { rows.Key, Count = rows.Count() }).ToDictionaryAsync(row => row.Key, row => row.Count, cancellation);
        var answers = await db.Answers.AsNoTracking().ToListAsync(cancellation);
        return [.. nights.Select(night => new NightLine(
            night.Id,
            night.Facts.Title,
            night.Facts.ServeAt,
            night.Facts.Zone,
            invited.GetValueOrDefault(night.Id),
            answers.Count(answer => answer.NightId == night.Id && answer.Facts.Presence == Presence.Coming)))];
    }

    /// <summary>
    /// Opens a night and invites everybody in <paramref name="guests"/>; the host eats too. Safe to repeat: the page makes
    /// the id, and the same id opens one night.
    /// </summary>
    public async Task<NightResult> OpenNightAsync(
        GroupAccess access, NightId id, NightFacts facts, IReadOnlyList<GuestId> guests, CancellationToken cancellation)
    {
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
            .Where(guest => guests.Contains(guest.Id) || guest.HostId == access.HostId).ToListAsync(cancellation);
        foreach (var guest in known)
        {
            Invite(session, night, guest.Id);
        }

        _replans.Night(session, night.Id);
        await session.CommitNewAsync(cancellation);
        _replans.Wake(night.Id);
        return new NightResult.Kept(night.Id, NightTime.Resolve(facts.ServeAt, facts.Zone).Change);
    }

    public async Task<NightResult> ChangeNightAsync(
        GroupAccess access, NightId id, NightFacts facts, uint version, CancellationToken cancellation)
    {
        if (NightDraft.Problems(facts, _clock.GetCurrentInstant()) is { Count: > 0 } problems)
        {
            return new NightResult.Refused(problems);
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var night = await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return new NightResult.Gone();
        }

        if (!await session.Db.Recipes.AnyAsync(recipe => recipe.Id == facts.Formula, cancellation))
        {
            return new NightResult.Refused([new DraftProblem("formula", DraftFault.UnknownFormula)]);
        }

        session.Db.Entry(night).Property(row => row.Version).OriginalValue = version;
        night.Set(facts);
        var expires = NightTime.ToInstant(facts.ServeAt, facts.Zone) + LinkDirectory.KeptAfterNight;
        foreach (var link in await session.Db.Links
            .Where(link => link.GroupId == access.GroupId && link.NightId == id).ToListAsync(cancellation))
        {
            link.MoveExpiry(expires);
        }

        _replans.Night(session, id);
        try
        {
            await session.CommitAsync(cancellation);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new NightResult.ChangedMeanwhile();
        }

        _replans.Wake(id);
        return new NightResult.Kept(id, NightTime.Resolve(facts.ServeAt, facts.Zone).Change);
    }

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
        var (at, clock) = NightTime.Resolve(night.Facts.ServeAt, night.Facts.Zone);
        return new NightView(
            id, group.Name, night.Facts, at.ToInstant(), clock, night.Overrides, night.Version,
            [.. rows.OrderBy(row => row.Guest.Name, StringComparer.OrdinalIgnoreCase).Select(Show)]);
    }

    /// <summary>Invites somebody the group knows; inviting twice changes nothing.</summary>
    public async Task<SaveResult> InviteAsync(GroupAccess access, NightId id, GuestId guest, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var night = await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null || !await session.Db.Guests.AnyAsync(row => row.Id == guest, cancellation))
        {
            return new SaveResult.Gone();
        }

        if (!await session.Db.Invitations.AnyAsync(row => row.NightId == id && row.GuestId == guest, cancellation))
        {
            Invite(session, night, guest);
            _replans.Night(session, id);
            await session.CommitNewAsync(cancellation);
            _replans.Wake(id);
        }

        return new SaveResult.Saved();
    }

    /// <summary>Takes an invitation back: the link ends at once, and the answer and notes are erased with it.</summary>
    public async Task<SaveResult> UninviteAsync(GroupAccess access, NightId id, GuestId guest, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var taken = await session.Db.Invitations
            .Where(row => row.NightId == id && row.GuestId == guest).ExecuteDeleteAsync(cancellation);
        if (taken == 0)
        {
            return new SaveResult.Gone();
        }

        await LinkDirectory.EndAsync(session, id, guest, cancellation);
        _replans.Night(session, id);
        await session.CommitAsync(cancellation);
        _replans.Wake(id);
        return new SaveResult.Saved();
    }

    /// <summary>Ends the guest's link and makes a new one.</summary>
    public async Task<SaveResult> RenewLinkAsync(GroupAccess access, NightId id, GuestId guest, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var night = await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);

        // Locked, so that two hosts who renew it at once take turns and no older link stays open.
        var invitation = await session.Db.Invitations
            .FromSql($"select * from invitations where night_id = {id.Value} and guest_id = {guest.Value} for update")
            .SingleOrDefaultAsync(cancellation);
        if (night is null || invitation is null)
        {
            return new SaveResult.Gone();
        }

        invitation.RenewLink();
        await _links.ReplaceAsync(
            session, invitation, NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone), cancellation);
        await session.CommitAsync(cancellation);
        return new SaveResult.Saved();
    }

    /// <summary>
    /// Sets numbers of the plan by hand or takes them back. The change is applied to what stands now, so two hosts who
    /// overrule different numbers at the same moment do not undo each other.
    /// </summary>
    public async Task<SaveResult> OverruleAsync(
        GroupAccess access, NightId id, Func<NightOverrides, NightOverrides> change, CancellationToken cancellation)
    {
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
        if (_check.Problems(overrides.ToByHand()) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        night.Overrule(overrides);
        _replans.Night(session, id);
        await session.CommitAsync(cancellation);
        _replans.Wake(id);
        return new SaveResult.Saved();
    }

    private void Invite(GroupSession session, Night night, GuestId guest)
    {
        var invitation = new Invitation(session.GroupId, night.Id, guest);
        session.Db.Invitations.Add(invitation);
        _links.List(session, invitation, NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone));
    }

    private InvitedGuest Show(InvitedRow row)
    {
        var (note, isReadable) = _notes.Read(row.Note?.ProtectedNote);
        return new InvitedGuest(
            row.Guest.Id,
            row.Guest.Name,
            row.Guest.Portion,
            row.Guest.HostId is not null,
            row.Answer?.Facts,
            row.Answer?.AnsweredAt,
            row.Answer?.IsLate ?? false,
            row.Note?.Needs ?? [],
            note,
            !isReadable,
            row.Invitation.DisownedAt is not null,
            _links.TokenFor(row.Invitation).Text);
    }
}
