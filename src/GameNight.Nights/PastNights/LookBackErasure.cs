using GameNight.Nights.Records;
using GameNight.Nights.Storage;
using Microsoft.EntityFrameworkCore;

namespace GameNight.Nights.PastNights;

/// <summary>
/// What stays of a guest's look-backs when they leave: ticks and counts, which the averages need, under an id without a name.
/// Words go, since they may tell who wrote them.
/// </summary>
internal static class LookBackErasure
{
    /// <summary>Within the session's commit.</summary>
    public static async Task ClearWordsAsync(GroupSession session, GuestId guest, CancellationToken cancellation)
    {
        foreach (var row in await session.Db.LookBacks.Where(row => row.GuestId == guest).ToListAsync(cancellation))
        {
            row.Replace(row.Facts with { Words = "", Namelessly = true }, row.LastKey, row.SavedAt);
        }
    }
}
