using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Links;

/// <summary>Whom a guest's link belongs to.</summary>
internal sealed record LinkHolder(GroupAccess Access, NightId Night, GuestId Guest);

/// <summary>What became of a link that was looked up.</summary>
/// <typeparam name="T">Whom such a link belongs to.</typeparam>
internal abstract record LinkLookup<T>
{
    internal sealed record Found(T Holder) : LinkLookup<T>;

    /// <summary>It was a link once: its time is over.</summary>
    internal sealed record Expired : LinkLookup<T>;

    /// <summary>Unknown, malformed or replaced: no difference is told.</summary>
    internal sealed record Unknown : LinkLookup<T>;
}

/// <summary>From secret links to whom they belong, and back.</summary>
internal sealed class LinkDirectory(GroupSessions sessions, LinkSecret secret, IClock clock)
{
    /// <summary>A guest's links end this long after the night.</summary>
    public static readonly Duration KeptAfterNight = Duration.FromDays(30);

    /// <summary>A guest's own links last until they are renewed or the guest leaves.</summary>
    private static readonly Instant NoEnd = Instant.FromUtc(9999, 1, 1, 0, 0);

    /// <summary>Each invitation has one link of each of these.</summary>
    private static readonly LinkScope[] OfInvitations = [LinkScope.Answer, LinkScope.LookBack];

    public LinkToken TokenFor(Invitation invitation, LinkScope scope = LinkScope.Answer) => secret.Token(
        scope, invitation.GroupId, invitation.NightId, invitation.GuestId.Value, invitation.LinkGeneration);

    public LinkToken TokenFor(HostInvitation invitation) => secret.Token(
        LinkScope.JoinAsHost, invitation.GroupId, night: null, invitation.Id.Value, invitation.LinkGeneration);

    public LinkToken TokenFor(AskedGuest asked) =>
        secret.Token(LinkScope.Dates, asked.GroupId, night: null, asked.Id.Value, asked.LinkGeneration);

    /// <summary>Lists the link with which a guest answers for a date, within the session's commit.</summary>
    public void List(GroupSession session, AskedGuest asked, Instant lastOption) => session.Db.Links.Add(new LinkRow(
        TokenFor(asked).Hash(), LinkScope.Dates, asked.GroupId, nightId: null, asked.Id.Value, asked.LinkGeneration, lastOption + KeptAfterNight));

    /// <summary>Ends the links of guests who were asked for a date, within the session's commit.</summary>
    public static Task EndAsync(GroupSession session, IReadOnlyList<AskedGuestId> asked, CancellationToken cancellation)
    {
        var subjects = asked.Select(id => id.Value).ToArray();
        return session.Db.Links
            .Where(link => link.GroupId == session.GroupId && link.Scope == LinkScope.Dates && subjects.Contains(link.Subject))
            .ExecuteDeleteAsync(cancellation);
    }

    /// <summary>Lists the invitation's links, within the session's commit.</summary>
    public void List(GroupSession session, Invitation invitation, Instant nightAt) =>
        session.Db.Links.AddRange(OfInvitations.Select(scope => new LinkRow(
            TokenFor(invitation, scope).Hash(),
            scope,
            invitation.GroupId,
            invitation.NightId,
            invitation.GuestId.Value,
            invitation.LinkGeneration,
            nightAt + KeptAfterNight)));

    /// <summary>Of a guest's calendar, and with which they stop messages: good beyond one night.</summary>
    public LinkToken TokenFor(Guest guest, LinkScope scope) => secret.Token(
        scope, guest.GroupId, night: null, guest.Id.Value, scope is LinkScope.Feed ? guest.FeedGeneration : 0);

    /// <summary>Lists a guest's own link unless it is, at once but within the session's commit.</summary>
    public Task ListAsync(GroupSession session, Guest guest, LinkScope scope, CancellationToken cancellation) =>
        session.Db.Database.ExecuteSqlAsync(
            $"""
             insert into link_directory (token_hash, scope, group_id, night_id, subject, generation, expires_at)
             values ({TokenFor(guest, scope).Hash()}, {scope.ToString()}, {guest.GroupId.Value}, null, {guest.Id.Value},
                 {(scope is LinkScope.Feed ? guest.FeedGeneration : 0)}, {NoEnd})
             on conflict (token_hash) do nothing
             """,
            cancellation);

    /// <summary>Ends a guest's own link of that scope, within the session's commit.</summary>
    public static Task EndAsync(GroupSession session, GuestId guest, LinkScope scope, CancellationToken cancellation) =>
        session.Db.Links
            .Where(link => link.GroupId == session.GroupId && link.NightId == null && link.Subject == guest.Value && link.Scope == scope)
            .ExecuteDeleteAsync(cancellation);

    /// <summary>Lists the link with which a host joins, within the session's commit.</summary>
    public void List(GroupSession session, HostInvitation invitation) => session.Db.Links.Add(new LinkRow(
        TokenFor(invitation).Hash(),
        LinkScope.JoinAsHost,
        invitation.GroupId,
        nightId: null,
        invitation.Id.Value,
        invitation.LinkGeneration,
        invitation.ExpiresAt));

    /// <summary>Ends the links of the invitation's guest and night and lists those it has now, within the session's commit.</summary>
    public async Task ReplaceAsync(
        GroupSession session, Invitation invitation, Instant nightAt, CancellationToken cancellation)
    {
        await EndAsync(session, invitation.NightId, invitation.GuestId, cancellation);
        List(session, invitation, nightAt);
    }

    /// <summary>Ends the links of a guest for a night, within the session's commit.</summary>
    public static Task EndAsync(GroupSession session, NightId night, GuestId guest, CancellationToken cancellation) =>
        session.Db.Links
            .Where(link => link.GroupId == session.GroupId && link.NightId == night && link.Subject == guest.Value)
            .ExecuteDeleteAsync(cancellation);

    /// <summary>Ends the link of a host invitation, within the session's commit.</summary>
    public static Task EndAsync(GroupSession session, HostInvitationId invitation, CancellationToken cancellation) =>
        session.Db.Links
            .Where(link => link.GroupId == session.GroupId && link.Subject == invitation.Value)
            .ExecuteDeleteAsync(cancellation);

    /// <summary>Whose link of that scope it is; the scope is one of those that invitations to nights have.</summary>
    public Task<LinkLookup<LinkHolder>> FindAsync(LinkToken? token, LinkScope scope, CancellationToken cancellation) =>
        FindAsync(
            token,
            scope,
            link => new LinkHolder(new GroupAccess(link.GroupId, null, null), link.NightId!.Value, new GuestId(link.Subject)),
            cancellation);

    /// <summary>Which invitation to join a group as a host it is.</summary>
    public Task<LinkLookup<(GroupId Group, HostInvitationId Invitation)>> FindHostInvitationAsync(
        LinkToken? token, CancellationToken cancellation) =>
        FindAsync(
            token, LinkScope.JoinAsHost, link => (link.GroupId, new HostInvitationId(link.Subject)), cancellation);

    /// <summary>Whose own link of that scope it is.</summary>
    public Task<LinkLookup<(GroupAccess Access, GuestId Guest)>> FindGuestAsync(
        LinkToken? token, LinkScope scope, CancellationToken cancellation) => FindAsync(
            token, scope, link => (new GroupAccess(link.GroupId, null, null), new GuestId(link.Subject)), cancellation);

    /// <summary>Which guest of which question for a date it is.</summary>
    public Task<LinkLookup<(GroupAccess Access, AskedGuestId Asked)>> FindAskedAsync(LinkToken? token, CancellationToken cancellation) =>
        FindAsync(
            token, LinkScope.Dates, link => (new GroupAccess(link.GroupId, null, null), new AskedGuestId(link.Subject)), cancellation);

    private async Task<LinkLookup<T>> FindAsync<T>(
        LinkToken? token, LinkScope scope, Func<LinkRow, T> holder, CancellationToken cancellation)
    {
        if (token is not { } known)
        {
            return new LinkLookup<T>.Unknown();
        }

        await using var db = await sessions.OpenGlobalAsync(cancellation);
        var hash = known.Hash();
        var link = await db.Links.AsNoTracking()
            .SingleOrDefaultAsync(row => row.TokenHash == hash && row.Scope == scope, cancellation);
        if (link is null)
        {
            return new LinkLookup<T>.Unknown();
        }

        return link.ExpiresAt < clock.GetCurrentInstant()
            ? new LinkLookup<T>.Expired()
            : new LinkLookup<T>.Found(holder(link));
    }
}
