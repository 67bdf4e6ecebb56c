using GameNight.Nights.ForGuests;
using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace GameNight.Nights.Snapshots;

/// <summary>What past nights of the group say of the guests of a night: the evidence of its forecast.</summary>
internal static class PastEvenings
{
    /// <summary>Nights before this one of which something was written down, latest first; by guest.</summary>
    public static async Task<ILookup<GuestId, PastEvening>> LoadAsync(
        GameNightDb db, Night night, AppetiteTable table, CancellationToken cancellation) => await LoadAsync(
            db,
            night.ServeAt,
            night.Id,
            await db.Invitations.Where(row => row.NightId == night.Id).Select(row => row.GuestId).ToListAsync(cancellation),
            table,
            cancellation);

    /// <summary>What nights before that time, but for one of them, say of these guests.</summary>
    public static async Task<ILookup<GuestId, PastEvening>> LoadAsync(
        GameNightDb db, LocalDateTime before, NightId except, IReadOnlyList<GuestId> guests, AppetiteTable table,
        CancellationToken cancellation)
    {
        var nights = await db.Nights.AsNoTracking()
            .Where(row => row.ServeAt < before && row.Id != except && row.CancelledAt == null)
            .Where(row => db.BakeLogs.Any(log => log.NightId == row.Id) || db.LookBacks.Any(said => said.NightId == row.Id))
            .OrderByDescending(row => row.ServeAt).ThenBy(row => row.Id)
            .Take(table.Learning.MostNights)
            .ToListAsync(cancellation);
        if (nights.Count == 0)
        {
            return Enumerable.Empty<PastEvening>().ToLookup(_ => default(GuestId));
        }

        var ids = nights.Select(row => row.Id).ToList();
        var rows = await (
            from invitation in db.Invitations.AsNoTracking()
            where ids.Contains(invitation.NightId)
            where guests.Contains(invitation.GuestId)
            join guest in db.Guests.AsNoTracking() on invitation.GuestId equals guest.Id
            join answer in db.Answers.AsNoTracking()
                on new { invitation.NightId, invitation.GuestId } equals new { answer.NightId, answer.GuestId } into answers
            from answer in answers.DefaultIfEmpty()
            orderby guest.Id
            select new { invitation.NightId, invitation.Served, Guest = guest, Answer = answer }).ToListAsync(cancellation);
        var logs = await db.BakeLogs.AsNoTracking().Where(row => ids.Contains(row.NightId))
            .ToDictionaryAsync(row => row.NightId, row => row.Facts, cancellation);
        var said = (await db.LookBacks.AsNoTracking().Where(row => ids.Contains(row.NightId)).ToListAsync(cancellation))
            .ToDictionary(row => (row.NightId, row.GuestId), row => row.Facts.Slices);
        var then = (await AnswersThenAsync(db, ids, cancellation)).ToDictionary(row => (row.Night, row.Guest), row => row.Answer);
        var slices = await SlicesAsync(db, ids, cancellation);
        var served = (await ServedAsync(db, ids, cancellation)).ToLookup(row => (row.Night, row.Eater), row => row.Share);

        return rows
            .OrderBy(row => ids.IndexOf(row.NightId))
            .Select(row => (row.Guest.Id, Evening: Of(row.NightId, row.Guest, row.Answer?.Facts, row.Answer?.IsWaiting == true, row.Served)))
            .Where(row => row.Evening is { Came: not null } or { Slices: not null })
            .ToLookup(row => row.Id, row => row.Evening);

        PastEvening Of(NightId past, Guest guest, AnswerFacts? answer, bool waited, double? kept)
        {
            var (log, facts) = (logs.GetValueOrDefault(past), nights.Single(row => row.Id == past).Facts);
            var eaten = said.GetValueOrDefault((past, guest.Id));
            var appetite = EveningAppetite.Factor(facts.Courses, Length(facts), table)
                * PartOfEvening.Appetite(StayTimes.Of(facts, answer), Length(facts), table);
            var came = Attendance.Noted(guest, log) is { } heads ? heads > 0 : (bool?)null;
            var share = kept ?? served[(past.Value, guest.Id.ToString())].FirstOrDefault();
            return new PastEvening(
                ids.IndexOf(past) + 1,
                then.TryGetValue((past.Value, guest.Id.ToString()), out var known)
                    && Enum.TryParse<AnswerState>(known, ignoreCase: true, out var state)
                    ? state
                    : NightSnapshots.StateOf(guest, answer),

                // Who joined from elsewhere was there, and ate nothing that is counted here; for who waited there was no seat.
                waited || answer is { Remotely: true } ? null : came,
                answer is { Remotely: true } ? null : eaten,
                eaten is null ? null : slices.GetValueOrDefault(past),
                eaten is not null && SlicesAccount.Of(null, 1, log) is { Left: 0 } ? true : null,
                eaten is not null && answer is { Hunger: not Hunger.AsUsual } ? answer.Hunger : null,
                eaten is not null && appetite is not (1 or 0) ? new Share(appetite) : null,
                share is { } near && came != false && answer is not { Remotely: true } ? new Share(Math.Round(near, 3)) : null);
        }
    }

    /// <summary>From the first pie to the end, by the clock of the world.</summary>
    public static Duration? Length(NightFacts facts) => facts.EndsAt is { } end
        ? NightTime.ToInstant(end, facts.Zone) - NightTime.ToInstant(facts.ServeAt, facts.Zone)
        : null;

    /// <summary>Answers as they were known when the doughs were begun: what came after is what a forecast is to foresee.</summary>
    private static Task<List<AnswerThen>> AnswersThenAsync(GameNightDb db, List<NightId> nights, CancellationToken cancellation)
    {
        var ids = nights.Select(night => night.Value).ToArray();
        return db.Database.SqlQuery<AnswerThen>(
            $"""
             select d.night_id as "Night", g->>'id' as "Guest", g->>'answer' as "Answer"
             from committed_doughs d, jsonb_array_elements(d.snapshot->'guests') g
             where d.night_id = any({ids})
             """).ToListAsync(cancellation);
    }

    /// <summary>Dough of one slice as it was planned last.</summary>
    private static async Task<Dictionary<NightId, Grams?>> SlicesAsync(GameNightDb db, List<NightId> nights, CancellationToken cancellation)
    {
        var ids = nights.Select(night => night.Value).ToArray();
        var rows = await db.Database.SqlQuery<BallThen>(
            $"""
             select p.night_id as "Night", (p.document #>> ARRAY['dough','ballGrams','valueGrams'])::float8 as "Grams",
                 (select sum((s->>'slices')::int)::int from jsonb_array_elements(p.document #> ARRAY['split','pies','0','sectors']) s) as "Slices"
             from plans p where p.night_id = any({ids})
             """).ToListAsync(cancellation);
        return rows.ToDictionary(
            row => new NightId(row.Night),
            row => row is { Grams: > 0 and var ball, Slices: > 0 and var count } ? new Grams(ball / count) : (Grams?)null);
    }

    /// <summary>As far as plans still say who was to have what.</summary>
    private static Task<List<ServedThen>> ServedAsync(GameNightDb db, List<NightId> nights, CancellationToken cancellation)
    {
        var ids = nights.Select(night => night.Value).ToArray();
        return db.Database.SqlQuery<ServedThen>(
            $"""
             select p.night_id as "Night", s->>'eaterId' as "Eater", (s->>'score')::float8 / (s->>'bestPossible')::float8 as "Share"
             from plans p, jsonb_array_elements(p.document #> ARRAY['split','satisfactions']) s
             where p.night_id = any({ids}) and (s->>'bestPossible')::float8 > 0
             """).ToListAsync(cancellation);
    }

    private sealed record ServedThen(Guid Night, string Eater, double? Share);

    private sealed record AnswerThen(Guid Night, string Guest, string Answer);

    private sealed record BallThen(Guid Night, double? Grams, int? Slices);
}
