using GameNight.Nights.Membership;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Links;

/// <summary>Whom a link belongs to.</summary>
internal sealed record LinkHolder(GroupAccess Access, NightId Night, GuestId Guest);

/// <summary>What became of a link that was looked up.</summary>
internal abstract record LinkLookup
{
    internal sealed record Found(LinkHolder Holder) : LinkLookup;

    /// <summary>It was a link once: its time is over.</summary>
    internal sealed record Expired : LinkLookup;

    /// <summary>Unknown, malformed or replaced: no difference is told.</summary>
    internal sealed record Unknown : LinkLookup;
}

/// <summary>From secret links to guests of nights, and back.</summary>
internal sealed class LinkDirectory(GroupSessions sessions, LinkSecret secret, IClock clock)
{
    /// <summary>A link ends this long after the night.</summary>
    public static readonly Duration KeptAfterNight = Duration.FromDays(30);

    public LinkToken TokenFor(Invitation invitation) => secret.Token(
        LinkScope.Answer, invitation.GroupId, invitation.NightId, invitation.GuestId, invitation.LinkGeneration);

    /// <summary>Lists the invitation's link, within the session's commit.</summary>
    public void List(GroupSession session, Invitation invitation, Instant nightAt) => session.Db.Links.Add(new LinkRow(
        TokenFor(invitation).Hash(),
        LinkScope.Answer,
        invitation.GroupId,
        invitation.NightId,
        invitation.GuestId,
        invitation.LinkGeneration,
        nightAt + KeptAfterNight));

    /// <summary>Ends the links of the invitation's guest and night and lists the one it has now, within the session's commit.</summary>
    public async Task ReplaceAsync(
        GroupSession session, Invitation invitation, Instant nightAt, CancellationToken cancellation)
    {
        await session.Db.Links
            .Where(link => link.GroupId == invitation.GroupId
                && link.NightId == invitation.NightId && link.GuestId == invitation.GuestId)
            .ExecuteDeleteAsync(cancellation);
        List(session, invitation, nightAt);
    }

    public async Task<LinkLookup> FindAsync(LinkToken? token, LinkScope scope, CancellationToken cancellation)
    {
        if (token is not { } known)
        {
            return new LinkLookup.Unknown();
        }

        await using var db = await sessions.OpenGlobalAsync(cancellation);
        var hash = known.Hash();
        var link = await db.Links.AsNoTracking()
            .SingleOrDefaultAsync(row => row.TokenHash == hash && row.Scope == scope, cancellation);
        if (link is null)
        {
            return new LinkLookup.Unknown();
        }

        return link.ExpiresAt < clock.GetCurrentInstant()
            ? new LinkLookup.Expired()
            : new LinkLookup.Found(new LinkHolder(new GroupAccess(link.GroupId, null, null), link.NightId, link.GuestId));
    }
}
