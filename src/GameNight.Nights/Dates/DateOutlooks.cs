using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Nights.Snapshots;
using GameNight.Nights.Storage;
using GameNight.Planning;
using GameNight.Planning.Dates;
using GameNight.Planning.Guests;
using GameNight.Planning.Timeline;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Dates;

/// <summary>From the records of a question to what the planner says of its evenings.</summary>
internal sealed class DateOutlooks(ReferenceTables tables, IClock clock)
{
    /// <summary>An evening of which nobody said when it ends. Common practice, no source.</summary>
    private static readonly Duration UsualLength = Duration.FromHours(3);

    /// <summary>A dough is worked on so many days before an evening at most.</summary>
    private const int DaysBefore = 9;

    public async Task<(DateForecast Forecast, int Learned)> LoadAsync(
        GroupSession session, DateChoice choice, IReadOnlyList<AskedGuest> asked, CancellationToken cancellation)
    {
        var (db, now) = (session.Db, clock.GetCurrentInstant());
        var (facts, today) = (choice.Facts, now.InZone(NightTime.Zone(choice.Facts.Zone)!).LocalDateTime);
        var group = await db.Groups.AsNoTracking().SingleAsync(cancellation);
        var kitchen = (await db.Kitchens.AsNoTracking().SingleAsync(cancellation)).Facts;
        var nights = await db.Nights.AsNoTracking().Where(night => night.CancelledAt == null && night.Id != choice.NightId)
            .OrderByDescending(night => night.ServeAt).ToListAsync(cancellation);
        var host = await HostAsync(db, choice, asked, cancellation);
        List<GuestId> people = [.. asked.Select(row => row.GuestId), .. host is { } one ? [one.Id] : Array.Empty<GuestId>()];
        var past = kitchen.LeavesPastOut == true
            ? null
            : await PastEvenings.LoadAsync(db, today, choice.NightId ?? default, people, tables.Appetite, cancellation);
        var missed = await MissedAsync(db, [.. nights.Where(night => night.ServeAt < today).Take(DateModel.MostMissedCounted)], cancellation);

        var homes = await db.Guests.AsNoTracking().Where(guest => people.Contains(guest.Id) && guest.Household != null)
            .ToDictionaryAsync(guest => guest.Id, guest => guest.Household, cancellation);
        var guests = asked
            .Select(row => new DateGuest(
                row.GuestId.ToString(), row.Answers, Past(row.GuestId), homes.GetValueOrDefault(row.GuestId), missed(row.GuestId), row.IsNeeded))
            .ToList();
        if (host is not null)
        {
            guests.Add(new DateGuest(host.Id.ToString(), new Dictionary<string, DateAnswer>(), IsHost: true));
        }

        var last = nights.FirstOrDefault()?.Facts;
        var request = new DateRequest(
            [.. facts.Options.Select(option => new DateOption(
                DateChoiceFacts.IdOf(option), NightTime.ToInstant(option, facts.Zone), option.Date))],
            guests,
            facts.Quorum,
            now,
            DoughLead.Of(kitchen.Kitchen, balls: Math.Max(1, guests.Count), ColdOf(last), tables.Steps),
            Hours(kitchen.Hours, facts),
            [
                .. Hours(kitchen.Hours with { SleepFromMinute = 0, SleepUntilMinute = 0 }, facts),
                .. nights.Select(night => Evening(night.Facts)).Where(evening => evening.Until > now),
            ],
            group.Rhythm?.DaysOff ?? [],
            last is null ? UsualLength : PastEvenings.Length(last) ?? UsualLength);
        return (DateModel.Forecast(request, tables.Appetite), guests.Count(guest => guest.Past is not null));

        IReadOnlyList<PastEvening>? Past(GuestId guest) => past?[guest].ToList() is { Count: > 0 } nightsOf ? nightsOf : null;
    }

    /// <summary>The eater of the host who asks, unless they left; then whichever host there is. They come to a night of theirs.</summary>
    private static async Task<Guest?> HostAsync(
        GameNightDb db, DateChoice choice, IReadOnlyList<AskedGuest> asked, CancellationToken cancellation)
    {
        var hosts = await db.Guests.AsNoTracking().Where(guest => guest.HostId != null).OrderBy(guest => guest.Id).ToListAsync(cancellation);
        var free = hosts.Where(guest => !asked.Any(row => row.GuestId == guest.Id)).ToList();
        return free.FirstOrDefault(guest => guest.HostId == choice.By) ?? free.FirstOrDefault();
    }

    /// <summary>How many of the last nights they were invited to went by without them, in a row.</summary>
    private static async Task<Func<GuestId, int>> MissedAsync(GameNightDb db, IReadOnlyList<Night> last, CancellationToken cancellation)
    {
        var rows = new List<ILookup<GuestId, InvitedRow>>();
        var logs = new List<BakeLogFacts?>();
        foreach (var night in last)
        {
            rows.Add((await db.InvitedTo(night.Id).ToListAsync(cancellation)).ToLookup(row => row.Guest.Id));
            logs.Add((await db.BakeLogs.AsNoTracking().SingleOrDefaultAsync(log => log.NightId == night.Id, cancellation))?.Facts);
        }

        return guest => Enumerable.Range(0, last.Count)
            .Select(index => rows[index][guest].FirstOrDefault() is { } row ? Attendance.WasPart(row.Guest, row.Answer?.Facts, logs[index]) : (bool?)null)
            .Where(wasPart => wasPart is not null)
            .TakeWhile(wasPart => wasPart == false)
            .Count();
    }

    private ColdFerment ColdOf(NightFacts? last) => last is null
        ? new ColdFerment(
            Duration.FromHours(tables.Steps.ColdFerment.ShortestHours),
            Duration.FromHours(tables.Steps.ColdFerment.WantedHours),
            Duration.FromHours(tables.Steps.ColdFerment.LongestHours))
        : new ColdFerment(
            Duration.FromHours(last.ShortestColdHours), Duration.FromHours(last.WantedColdHours), Duration.FromHours(last.LongestColdHours));

    private static List<HostAway> Hours(HostHours hours, DateChoiceFacts facts) =>
        [.. facts.Options
            .SelectMany(option => Enumerable.Range(-DaysBefore, DaysBefore + 2).Select(days => option.Date.PlusDays(days)))
            .Distinct()
            .SelectMany(day => NightSnapshots.Away(hours, day, day, facts.Zone))];

    private static HostAway Evening(NightFacts facts)
    {
        var from = NightTime.ToInstant(facts.ServeAt, facts.Zone);
        return new HostAway(from, from + (PastEvenings.Length(facts) ?? UsualLength));
    }
}
