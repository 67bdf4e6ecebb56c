using GameNight.Nights.Links;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.PastNights;

/// <summary>What a guest can do through their look-back link. The link is the authority; reading changes nothing.</summary>
public sealed class LookBackBook
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly IClock _clock;

    internal LookBackBook(GroupSessions sessions, LinkDirectory links, ReplanRequests replans, IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _clock = clock;
    }

    public async Task<LookBackLookup> LookAsync(LinkToken? link, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.LookBack, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return new LookBackLookup.LinkNotValid(lookup is LinkLookup<LinkHolder>.Expired);
        }

        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        return await ViewAsync(session, holder, cancellation) is { } view
            ? new LookBackLookup.Found(view)
            : new LookBackLookup.LinkNotValid(IsExpired: false);
    }

    /// <summary>
    /// Keeps a look-back. Safe to send again: the same key counts once. One made from an older state is not kept before the
    /// guest has seen the newer one.
    /// </summary>
    public async Task<LookBackResult> SayAsync(LinkToken? link, GuestLookBack sent, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(link, LinkScope.LookBack, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return new LookBackResult.LinkNotValid(lookup is LinkLookup<LinkHolder>.Expired);
        }

        try
        {
            return await KeepAsync(holder, sent, cancellation);
        }
        catch (DbUpdateException fault) when (!NightsUnavailableException.IsMeantBy(fault))
        {
            // Two at the same moment: the other one is there now. Look again, then it is a repeat or a newer one.
            return await KeepAsync(holder, sent, cancellation);
        }
    }

    /// <summary>From a guest's answer link to their look-back link.</summary>
    /// <returns>Null when the link is not valid, or before the night is served.</returns>
    public async Task<LinkToken?> LinkOfAsync(LinkToken? answerLink, CancellationToken cancellation)
    {
        var lookup = await _links.FindAsync(answerLink, LinkScope.Answer, cancellation);
        if (lookup is not LinkLookup<LinkHolder>.Found { Holder: var holder })
        {
            return null;
        }

        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        var night = await NightAsync(session, holder, cancellation);
        var invitation = await InvitationAsync(session, holder, cancellation);
        return night is not null && invitation is not null && PastNight.IsServed(night, _clock.GetCurrentInstant())
            ? _links.TokenFor(invitation, LinkScope.LookBack)
            : null;
    }

    private async Task<LookBackResult> KeepAsync(LinkHolder holder, GuestLookBack sent, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(holder.Access, cancellation);
        if (await NightAsync(session, holder, cancellation) is not { } night
            || await InvitationAsync(session, holder, cancellation) is null)
        {
            return new LookBackResult.LinkNotValid(IsExpired: false);
        }

        var now = _clock.GetCurrentInstant();
        if (!PastNight.IsServed(night, now))
        {
            return new LookBackResult.NotOpen();
        }

        var lookBack = await session.Db.LookBacks.SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
        if (lookBack is not null && lookBack.LastKey == sent.Key)
        {
            return new LookBackResult.Kept();
        }

        var past = (await PastNight.LoadAsync(session.Db, [night], cancellation))[0];
        var facts = Tidy(sent.Facts, past.Pies);
        if (Problem(facts) is { } refused)
        {
            return refused;
        }

        if ((lookBack?.Revision ?? 0) != sent.Revision)
        {
            return new LookBackResult.SaidElsewhere((await ViewAsync(session, holder, cancellation))!);
        }

        if (lookBack is not null)
        {
            lookBack.Replace(facts, sent.Key, now);
        }
        else if (Opinions.SaysSomething(facts))
        {
            session.Db.LookBacks.Add(new LookBack(session.GroupId, holder.Night, holder.Guest, facts, sent.Key, now));
        }
        else
        {
            return new LookBackResult.NothingSaid();
        }

        // What was eaten is evidence for the nights to come.
        await _replans.UpcomingNightsAsync(session, cancellation);
        await session.CommitAsync(cancellation);
        _replans.Wake(holder.Night);
        return new LookBackResult.Kept();
    }

    private static LookBackResult.Refused? Problem(LookBackFacts facts) =>
        facts.Words.Length > LookBackFacts.LongestWords ? new(LookBackFault.WordsTooLong, LookBackFacts.LongestWords)
        : facts.Slices is { } slices && !(slices >= 0 && slices <= GuestLookBack.MostSlices)
            ? new(LookBackFault.SlicesOutOfRange, GuestLookBack.MostSlices)
            : null;

    /// <summary>One number per kind of pie, and only of pies there were.</summary>
    private static LookBackFacts Tidy(LookBackFacts facts, NightPies pies) => facts with
    {
        BestPies = [.. facts.BestPies.Select(pies.KindOf).OfType<PieKind>().Select(kind => kind.Number).Distinct().Order()],
        Words = facts.Words.Trim(),
    };

    private async Task<LookBackView?> ViewAsync(GroupSession session, LinkHolder holder, CancellationToken cancellation)
    {
        var db = session.Db;
        var guest = await db.Guests.AsNoTracking().SingleOrDefaultAsync(row => row.Id == holder.Guest, cancellation);
        var night = await NightAsync(session, holder, cancellation);
        if (night is null || guest is null || await InvitationAsync(session, holder, cancellation) is null)
        {
            return null;
        }

        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var now = _clock.GetCurrentInstant();
        var isOpen = PastNight.IsServed(night, now);
        var nights = await InvitedToAsync(db, night, guest.Id, now, cancellation);
        var all = await PastNight.LoadAsync(db, [night, .. nights], cancellation);
        var (here, said) = (all[0], SaidBy(all[0], guest.Id));
        return new LookBackView(
            night.Id,
            group.Name,
            guest.Name,
            night.Facts.Title,
            night.Facts.ServeAt,
            night.Facts.Zone,
            PastNight.ServedAt(night),
            isOpen,
            night.CancelledAt is not null,
            isOpen ? here.Pies : NightPies.None,
            said?.Facts,
            said?.Revision ?? 0,
            isOpen && WasPart(here, guest.Id) ? Averages.Of(here.Opinions) : null,
            [.. all.Skip(1).Where(past => WasPart(past, guest.Id)).Select(past => Remember(past, guest.Id))]);
    }

    /// <summary>Nights before this one that were served and the guest was invited to, latest first.</summary>
    private static async Task<List<Night>> InvitedToAsync(
        GameNightDb db, Night before, GuestId guest, Instant now, CancellationToken cancellation)
    {
        var nights = await (
            from night in db.Nights.AsNoTracking()
            where night.ServeAt <= before.ServeAt && night.Id != before.Id
            where db.Invitations.Any(row => row.NightId == night.Id && row.GuestId == guest)
            orderby night.ServeAt descending
            select night).ToListAsync(cancellation);
        return [.. nights.Where(night => PastNight.IsServed(night, now))];
    }

    private static RememberedNight Remember(PastNight past, GuestId guest) => new(
        past.Night.Facts.Title,
        past.Night.Facts.ServeAt,
        past.People,
        [.. past.Invited
            .Where(row => row.Guest.Id != guest && row.Guest.ShowsName && WasPart(past, row.Guest.Id))
            .Select(row => FirstName(row.Guest.Name)).Where(name => name.Length > 0)
            .Order(StringComparer.OrdinalIgnoreCase)],
        past.Pies,
        past.Won,
        Averages.Of(past.Opinions),
        SaidBy(past, guest)?.Facts);

    private static bool WasPart(PastNight past, GuestId guest) => past.Invited.Any(row =>
        row.Guest.Id == guest && Attendance.WasPart(row.Guest, row.Answer?.Counted, past.Log?.Facts));

    private static LookBack? SaidBy(PastNight past, GuestId guest) => past.LookBacks.FirstOrDefault(row => row.GuestId == guest);

    /// <summary>Other guests read no more of a name than they would hear at the table.</summary>
    private static string FirstName(string name) => name.Split(' ', 2)[0];

    private static Task<Night?> NightAsync(GroupSession session, LinkHolder holder, CancellationToken cancellation) =>
        session.Db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == holder.Night, cancellation);

    private static Task<Invitation?> InvitationAsync(GroupSession session, LinkHolder holder, CancellationToken cancellation) =>
        session.Db.Invitations.AsNoTracking().SingleOrDefaultAsync(
            row => row.NightId == holder.Night && row.GuestId == holder.Guest, cancellation);
}
