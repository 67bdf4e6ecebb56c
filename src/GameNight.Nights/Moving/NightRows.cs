using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.Moving;

/// <summary>The small rows of all nights of a group, read at once; plans are large and read one by one.</summary>
internal sealed record NightRows(
    ILookup<NightId, Invitation> Invitations,
    IReadOnlyDictionary<(NightId, GuestId), Answer> Answers,
    IReadOnlyDictionary<(NightId, GuestId), DietaryNote> Notes,
    IReadOnlyDictionary<(NightId, GuestId), LookBack> LookBacks,
    IReadOnlyDictionary<NightId, BakeLog> Logs,
    ILookup<NightId, LiveTap> Taps)
{
    public static async Task<NightRows> LoadAsync(GameNightDb db, CancellationToken cancellation) => new(
        (await db.Invitations.AsNoTracking().ToListAsync(cancellation)).ToLookup(row => row.NightId),
        await db.Answers.AsNoTracking().ToDictionaryAsync(row => (row.NightId, row.GuestId), cancellation),
        await db.DietaryNotes.AsNoTracking().ToDictionaryAsync(row => (row.NightId, row.GuestId), cancellation),
        await db.LookBacks.AsNoTracking().ToDictionaryAsync(row => (row.NightId, row.GuestId), cancellation),
        await db.BakeLogs.AsNoTracking().ToDictionaryAsync(row => row.NightId, cancellation),
        (await db.LiveTaps.AsNoTracking().OrderBy(row => row.At).ThenBy(row => row.Id).ToListAsync(cancellation)).ToLookup(row => row.NightId));
}
