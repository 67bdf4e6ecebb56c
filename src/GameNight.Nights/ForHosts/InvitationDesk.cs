using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Seats;
using GameNight.Nights.Storage;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.ForHosts;

/// <summary>Who is invited to a night, and their private links.</summary>
public sealed class InvitationDesk
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;

    private readonly TableSeats _seats;
    private readonly Outbox _outbox;

    internal InvitationDesk(
        GroupSessions sessions, LinkDirectory links, ReplanRequests replans, TableSeats seats, Outbox outbox)
    {
        _seats = seats;
        _outbox = outbox;
        _sessions = sessions;
        _links = links;
        _replans = replans;
    }

    /// <summary>Invites somebody the group knows; inviting twice changes nothing.</summary>
    public async Task<SaveResult> InviteAsync(GroupAccess access, NightId id, GuestId guest, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var night = await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null || !await session.Db.Guests.AnyAsync(row => row.Id == guest && row.FormerSince == null, cancellation))
        {
            return new SaveResult.Gone();
        }

        if (!await session.Db.Invitations.AnyAsync(row => row.NightId == id && row.GuestId == guest, cancellation))
        {
            Invite(session, _links, night, guest);
            _replans.Night(session, id);
            await session.CommitNewAsync(cancellation);
            _replans.Wake(id);
        }

        return new SaveResult.Saved();
    }

    /// <summary>
    /// Invites somebody new for this night only: they are on no list afterwards. Safe to repeat: the page makes the id.
    /// </summary>
    public async Task<SaveResult> InviteOnceAsync(
        GroupAccess access, NightId id, GuestId guest, string name, PortionClass portion, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var night = await db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return new SaveResult.Gone();
        }

        if (await db.Guests.AnyAsync(row => row.Id == guest, cancellation))
        {
            return new SaveResult.Saved();
        }

        var count = await db.Guests.CountAsync(row => row.FormerSince == null, cancellation);
        if (GuestListDesk.Problems(name, count + 1) is { Count: > 0 } problems)
        {
            return new SaveResult.Refused(problems);
        }

        var oneOff = new Guest(access.GroupId, guest, name.Trim(), portion, null);
        oneOff.ComeOnce();
        db.Guests.Add(oneOff);
        Invite(session, _links, night, guest);
        _replans.Night(session, id);
        await session.CommitNewAsync(cancellation);
        _replans.Wake(id);
        return new SaveResult.Saved();
    }

    /// <summary>Takes an invitation back: the link ends at once, and the answer and notes are erased with it.</summary>
    public async Task<SaveResult> UninviteAsync(GroupAccess access, NightId id, GuestId guest, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        await DoughCommitments.TakeTurnAsync(session, id, cancellation);
        var taken = await session.Db.Invitations
            .Where(row => row.NightId == id && row.GuestId == guest).ExecuteDeleteAsync(cancellation);
        if (taken == 0)
        {
            return new SaveResult.Gone();
        }

        await LinkDirectory.EndAsync(session, id, guest, cancellation);
        await _seats.FillAsync(session, await session.Db.Nights.SingleAsync(row => row.Id == id, cancellation), cancellation);
        _replans.Night(session, id);
        await session.CommitAsync(cancellation);
        _outbox.Wake();
        _replans.Wake(id);
        return new SaveResult.Saved();
    }

    /// <summary>Ends the guest's link and makes a new one.</summary>
    public async Task<SaveResult> RenewLinkAsync(GroupAccess access, NightId id, GuestId guest, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var night = await session.Db.Nights.SingleOrDefaultAsync(row => row.Id == id, cancellation);

        // Locked, so that two hosts who renew it at once take turns and no older link stays open.
        var invitation = await session.Db.Invitations
            .FromSql($"select * from invitations where night_id = {id.Value} and guest_id = {guest.Value} for update")
            .SingleOrDefaultAsync(cancellation);
        if (night is null || invitation is null
            || await session.Db.Guests.AnyAsync(row => row.Id == guest && row.FormerSince != null, cancellation))
        {
            return new SaveResult.Gone();
        }

        invitation.RenewLink();
        await _links.ReplaceAsync(
            session, invitation, NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone), cancellation);
        await session.CommitAsync(cancellation);
        return new SaveResult.Saved();
    }

    /// <summary>Within the session's commit.</summary>
    internal static Invitation Invite(GroupSession session, LinkDirectory links, Night night, GuestId guest)
    {
        var invitation = new Invitation(session.GroupId, night.Id, guest);
        session.Db.Invitations.Add(invitation);
        links.List(session, invitation, NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone));
        return invitation;
    }
}
