using GameNight.Nights.Membership;
using GameNight.Nights.Plans;
using GameNight.Nights.Records;
using GameNight.Nights.Seats;
using GameNight.Nights.Storage;
using GameNight.Planning.Guests;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Moving;

/// <param name="Household">Null for nobody to come with.</param>
/// <param name="IsOneOff">Invited for one night only.</param>
public sealed record PersonLine(
    string Name, PortionClass Portion, bool IsHost, bool IsStanding, bool ShowsName, string? Household, bool IsOneOff);

/// <param name="Answer">Null when there is none.</param>
/// <param name="WaitingPlace">In line for a seat, from 1; null for who does not wait.</param>
/// <param name="Household">Null for nobody to come with.</param>
public sealed record AnswerLine(
    string Name, PortionClass Portion, AnswerFacts? Answer, Instant? AnsweredAt, bool IsLate, int? WaitingPlace, string? Household, bool IsOneOff);

/// <summary>A night that took place, in figures; null where nothing was planned or noted.</summary>
public sealed record PastNightLine(
    string Title,
    LocalDateTime ServeAt,
    string Zone,
    bool WasCancelled,
    int Invited,
    int SaidComing,
    int? Came,
    int? PiesPlanned,
    int? PiesBaked,
    double? SlicesLeft);

/// <summary>Plain lists to take into a spreadsheet. Must-nots and notes are no part of them: a list travels further than its host thinks.</summary>
public sealed class GroupLists
{
    private readonly GroupSessions _sessions;
    private readonly IClock _clock;

    internal GroupLists(GroupSessions sessions, IClock clock)
    {
        _sessions = sessions;
        _clock = clock;
    }

    public async Task<IReadOnlyList<PersonLine>> PeopleAsync(GroupAccess access, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        return await session.Db.Guests.AsNoTracking().Where(guest => guest.FormerSince == null)
            .OrderBy(guest => guest.Name).ThenBy(guest => guest.Id)
            .Select(guest => new PersonLine(guest.Name, guest.Portion, guest.HostId != null, guest.IsStanding, guest.ShowsName, guest.Household, guest.IsOneOff))
            .ToListAsync(cancellation);
    }

    /// <returns>Null when the night is not in this group.</returns>
    public async Task<(NightFacts Night, IReadOnlyList<AnswerLine> Guests)?> GuestsAsync(
        GroupAccess access, NightId id, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var night = await session.Db.Nights.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (night is null)
        {
            return null;
        }

        var rows = await session.Db.InvitedTo(id).ToListAsync(cancellation);
        var places = TableSeats.Places(rows.Select(row => row.Answer));
        return (night.Facts, [.. rows
            .OrderBy(row => row.Guest.Name, StringComparer.OrdinalIgnoreCase).ThenBy(row => row.Guest.Id.Value)
            .Select(row => new AnswerLine(
                row.Guest.Name, row.Guest.Portion, row.Answer?.Facts, row.Answer?.AnsweredAt, row.Answer?.IsLate ?? false,
                places.TryGetValue(row.Guest.Id, out var place) ? place : null, row.Guest.Household, row.Guest.IsOneOff))]);
    }

    public async Task<IReadOnlyList<PastNightLine>> PastNightsAsync(GroupAccess access, CancellationToken cancellation)
    {
        access.Demand(HostRole.Organiser);
        await using var session = await _sessions.OpenAsync(access, cancellation);
        var (db, now) = (session.Db, _clock.GetCurrentInstant());
        var rows = await NightRows.LoadAsync(db, cancellation);
        var nights = (await db.Nights.AsNoTracking().OrderBy(night => night.ServeAt).ToListAsync(cancellation))
            .Where(night => NightTime.ToInstant(night.Facts.ServeAt, night.Facts.Zone) <= now);
        var lines = new List<PastNightLine>();
        foreach (var night in nights)
        {
            var saved = await db.Plans.AsNoTracking().SingleOrDefaultAsync(row => row.NightId == night.Id, cancellation);
            var log = rows.Logs.GetValueOrDefault(night.Id)?.Facts;
            lines.Add(new PastNightLine(
                night.Facts.Title,
                night.Facts.ServeAt,
                night.Facts.Zone,
                night.CancelledAt is not null,
                rows.Invitations[night.Id].Count(),
                rows.Answers.Values.Count(row => row.NightId == night.Id && row.Counted.Presence == Presence.Coming),
                log?.Came.Sum(came => came.Heads),
                saved is null ? null : PlanBook.Read(saved)?.Pies.Count.Value.Value,
                log?.Baked?.Value,
                log?.SlicesLeft));
        }

        return lines;
    }
}
