using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.ForGuests;

/// <summary>What a guest sees of messages to them.</summary>
/// <param name="Address">Empty when there is none.</param>
/// <param name="IsStopped">They want no messages.</param>
/// <param name="Feed">Of the link to their calendar; null before they asked for one.</param>
public sealed record ContactView(string GuestName, string GroupName, string Address, bool IsStopped, LinkToken? Feed);

/// <summary>All nights of one guest, for their calendar.</summary>
public sealed record FeedView(string GroupName, IReadOnlyList<CalendarNight> Nights);

/// <summary>
/// Messages and calendar of a guest, through their links: that of a night, that in every message with which they stop, and that
/// of their calendar. Reading changes nothing.
/// </summary>
public sealed class ContactBook
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly IClock _clock;

    internal ContactBook(GroupSessions sessions, LinkDirectory links, IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _clock = clock;
    }

    /// <param name="scope"><see cref="LinkScope.Answer"/> or <see cref="LinkScope.Unsubscribe"/>.</param>
    /// <returns>Null when the link is not valid.</returns>
    public Task<ContactView?> LookAsync(LinkToken? link, LinkScope scope, CancellationToken cancellation) =>
        WithGuestAsync(link, scope, (_, _) => Task.FromResult(false), cancellation);

    /// <summary>The guest gives an address, and with it agrees to messages.</summary>
    /// <param name="address">Checked by <see cref="MailAddressCheck"/>; empty takes it away.</param>
    /// <returns>Null when the link is not valid.</returns>
    public Task<ContactView?> ReachAsync(LinkToken? link, string address, CancellationToken cancellation) => WithGuestAsync(
        link, LinkScope.Answer,
        (_, guest) =>
        {
            guest.Reach(address, byGuest: true, _clock.GetCurrentInstant());
            return Task.FromResult(true);
        },
        cancellation);

    /// <returns>Null when the link is not valid.</returns>
    public Task<ContactView?> StopAsync(LinkToken? link, LinkScope scope, CancellationToken cancellation) => WithGuestAsync(
        link, scope,
        (_, guest) =>
        {
            guest.StopMessages(_clock.GetCurrentInstant());
            return Task.FromResult(true);
        },
        cancellation);

    /// <returns>Null when the link is not valid.</returns>
    public Task<ContactView?> StartAsync(LinkToken? link, LinkScope scope, CancellationToken cancellation) => WithGuestAsync(
        link, scope,
        (_, guest) =>
        {
            guest.StartMessages();
            return Task.FromResult(true);
        },
        cancellation);

    /// <summary>Makes the link to the guest's calendar; the one there was ends.</summary>
    /// <returns>Null when the link is not valid.</returns>
    public Task<ContactView?> RenewFeedAsync(LinkToken? link, CancellationToken cancellation) => WithGuestAsync(
        link, LinkScope.Answer,
        async (session, guest) =>
        {
            guest.RenewFeed();
            await LinkDirectory.EndAsync(session, guest.Id, LinkScope.Feed, cancellation);
            await _links.ListAsync(session, guest, LinkScope.Feed, cancellation);
            return true;
        },
        cancellation);

    /// <returns>Null when the link is not valid.</returns>
    public async Task<FeedView?> FeedAsync(LinkToken? link, CancellationToken cancellation)
    {
        if (await HolderAsync(link, LinkScope.Feed, cancellation) is not var (access, id))
        {
            return null;
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var rows = await (
            from invitation in db.Invitations.AsNoTracking()
            where invitation.GuestId == id
            join night in db.Nights.AsNoTracking() on invitation.NightId equals night.Id
            join answer in db.Answers.AsNoTracking()
                on new { invitation.NightId, invitation.GuestId } equals new { answer.NightId, answer.GuestId } into answers
            from answer in answers.DefaultIfEmpty()
            orderby night.ServeAt, night.Id
            select new { night, answer }).ToListAsync(cancellation);
        return new FeedView(group.Name, [.. rows.Select(row => CalendarNight.Of(group, row.night, id, row.answer))]);
    }

    private async Task<ContactView?> WithGuestAsync(
        LinkToken? link, LinkScope scope, Func<GroupSession, Guest, Task<bool>> change, CancellationToken cancellation)
    {
        if (await HolderAsync(link, scope, cancellation) is not var (access, id))
        {
            return null;
        }

        await using var session = await _sessions.OpenAsync(access, cancellation);
        var guest = await session.Db.Guests.SingleOrDefaultAsync(row => row.Id == id && row.FormerSince == null, cancellation);
        if (guest is null)
        {
            return null;
        }

        var group = await session.Db.Groups.AsNoTracking().SingleAsync(cancellation);
        if (await change(session, guest))
        {
            await session.CommitAsync(cancellation);
        }

        return new ContactView(
            guest.Name, group.Name, guest.Contact?.MailAddress ?? "", guest.Contact?.StoppedAt is not null,
            guest.FeedGeneration > 0 ? _links.TokenFor(guest, LinkScope.Feed) : null);
    }

    private async Task<(GroupAccess Access, GuestId Guest)?> HolderAsync(
        LinkToken? link, LinkScope scope, CancellationToken cancellation)
    {
        if (scope is LinkScope.Answer)
        {
            return await _links.FindAsync(link, scope, cancellation) is LinkLookup<LinkHolder>.Found { Holder: var holder }
                ? (holder.Access, holder.Guest)
                : null;
        }

        return await _links.FindGuestAsync(link, scope, cancellation)
            is LinkLookup<(GroupAccess Access, GuestId Guest)>.Found { Holder: var own } ? own : null;
    }
}
