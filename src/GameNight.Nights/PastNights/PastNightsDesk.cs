using System.Text.Json;
using GameNight.Nights.Links;
using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.PastNights;

/// <summary>What a host does with a night that is over: write down how it went, and read what the group says.</summary>
public sealed class PastNightsDesk
{
    private readonly GroupSessions _sessions;
    private readonly LinkDirectory _links;
    private readonly ReplanRequests _replans;
    private readonly IClock _clock;

    internal PastNightsDesk(GroupSessions sessions, LinkDirectory links, ReplanRequests replans, IClock clock)
    {
        _sessions = sessions;
        _links = links;
        _replans = replans;
        _clock = clock;
    }

    /// <summary>Nights that were served, latest first.</summary>
    public async Task<IReadOnlyList<PastNightLine>> PastAsync(GroupAccess access, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var now = _clock.GetCurrentInstant();
        var nights = await session.Db.Nights.AsNoTracking().OrderByDescending(night => night.ServeAt).ToListAsync(cancellation);
        var past = await PastNight.LoadAsync(
            session.Db, [.. nights.Where(night => PastNight.IsServed(night, now))], cancellation);
        return [.. past.Select(one => new PastNightLine(
            one.Night.Id, one.Night.Facts.Title, one.Night.Facts.ServeAt, one.People, one.Log is not null, one.Slices,
            one.Opinions, one.Won, one.Pies))];
    }

    /// <returns>Null when the night is not in this group.</returns>
    public async Task<PastNightView?> NightAsync(GroupAccess access, NightId id, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        return await LoadAsync(session, id, cancellation) is { } past ? View(past, access.HostId) : null;
    }

    /// <summary>
    /// Keeps what a host wrote down, the first time or as a correction. Safe to send again: what stands already is written.
    /// </summary>
    /// <param name="version">Of what the form was made from; null when nothing was written down then.</param>
    public async Task<LogResult> WriteAsync(
        GroupAccess access, NightId id, BakeLogFacts facts, uint? version, CancellationToken cancellation)
    {
        access.Demand(HostRole.Cook);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var db = session.Db;
        if (await LoadAsync(session, id, cancellation) is not { } past)
        {
            return new LogResult.Gone();
        }

        var now = _clock.GetCurrentInstant();
        if (!PastNight.IsServed(past.Night, now))
        {
            return new LogResult.NotServed();
        }

        var tidy = LogCheck.Tidy(facts);
        var known = (await db.Guests.Select(guest => guest.Id).ToListAsync(cancellation)).Select(guest => guest.Value).ToHashSet();
        var pies = past.Pies.Kinds.SelectMany(kind => kind.Numbers).ToHashSet();
        if (LogCheck.Problems(tidy, past.Slices.SlicesPerPie, pies, known) is { Count: > 0 } problems)
        {
            return new LogResult.Refused(problems);
        }

        if (past.Log is { } stands && IsSame(stands.Facts, tidy))
        {
            return new LogResult.Written();
        }

        // What is written down of a night is evidence for those to come.
        await _replans.UpcomingNightsAsync(session, cancellation);
        if (past.Log?.Version != version || !await KeepAsync(session, past, tidy, now, cancellation))
        {
            return new LogResult.ChangedMeanwhile();
        }

        _replans.Wake(id);
        return new LogResult.Written();
    }

    /// <summary>
    /// Secret parts of the guests' look-back links: none before the night is served, or for a host who does not invite.
    /// </summary>
    public async Task<IReadOnlyDictionary<GuestId, string>> LinksAsync(
        GroupAccess access, NightId id, CancellationToken cancellation)
    {
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var night = await session.Db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null || !PastNight.IsServed(night, _clock.GetCurrentInstant()) || !access.Allows(HostRole.Organiser))
        {
            return new Dictionary<GuestId, string>();
        }

        var invitations = await session.Db.Invitations.AsNoTracking()
            .Where(row => row.NightId == id).ToListAsync(cancellation);
        return invitations.ToDictionary(row => row.GuestId, row => _links.TokenFor(row, LinkScope.LookBack).Text);
    }

    private static async Task<PastNight?> LoadAsync(GroupSession session, NightId id, CancellationToken cancellation)
    {
        var night = await session.Db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        return night is null ? null : (await PastNight.LoadAsync(session.Db, [night], cancellation))[0];
    }

    /// <returns>False when another host wrote it down at the same moment.</returns>
    private static async Task<bool> KeepAsync(
        GroupSession session, PastNight past, BakeLogFacts facts, Instant now, CancellationToken cancellation)
    {
        if (past.Log is not { } log)
        {
            session.Db.BakeLogs.Add(new BakeLog(session.GroupId, past.Night.Id, facts, now));
            return await session.CommitNewAsync(cancellation);
        }

        // As it was read: a version that has moved on since is found when it is saved.
        session.Db.Attach(log);
        log.Set(facts, now);
        try
        {
            await session.CommitAsync(cancellation);
            return true;
        }
        catch (DbUpdateConcurrencyException)
        {
            return false;
        }
    }

    private static bool IsSame(BakeLogFacts left, BakeLogFacts right) => Text(left) == Text(right);

    private static string Text(BakeLogFacts facts) => JsonSerializer.Serialize(facts, StoredJson.Options);

    private PastNightView View(PastNight past, HostId? host)
    {
        var (night, log) = (past.Night, past.Log?.Facts);
        var isServed = PastNight.IsServed(night, _clock.GetCurrentInstant());
        var names = past.Invited.ToDictionary(row => row.Guest.Id, row => row.Guest.Name);
        var said = past.LookBacks.Where(row => Opinions.SaysSomething(row.Facts)).ToLookup(row => IsNameless(row, names));
        var own = past.Invited.FirstOrDefault(row => host is not null && row.Guest.HostId == host);
        return new PastNightView(
            night.Id,
            night.Facts.Title,
            night.Facts.ServeAt,
            night.Facts.Zone,
            PastNight.ServedAt(night),
            isServed,
            night.CancelledAt is not null,
            past.Pies,
            past.Slices,
            [.. past.Invited
                .Select(row => new CameRow(
                    row.Guest.Id, row.Guest.Name, Attendance.Expected(row.Guest, row.Answer?.Counted), Attendance.Noted(row.Guest, log)))
                .OrderBy(row => row.Name, StringComparer.OrdinalIgnoreCase)],
            log,
            past.Won,
            past.Log?.Version,
            past.Opinions,
            [.. said[false].Select(row => new NamedLookBack(names[row.GuestId], row.Facts))
                .OrderBy(row => row.Name, StringComparer.OrdinalIgnoreCase)],
            [.. said[true].Select(row => row.Facts.Words).Where(words => words.Length > 0).Order(StringComparer.Ordinal)],
            own is not null && isServed ? _links.TokenFor(own.Invitation, LinkScope.LookBack).Text : null);
    }

    private static bool IsNameless(LookBack lookBack, Dictionary<GuestId, string> names) =>
        lookBack.Facts.Namelessly || names.GetValueOrDefault(lookBack.GuestId, "").Length == 0;
}
