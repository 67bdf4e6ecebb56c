using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Planning.Appetite;

/// <summary>
/// What coming late or leaving early leaves of an appetite. Pies are eaten in the first hours: who misses a part of those eats
/// less, but not as much less, since slices are kept and the hungry catch up.
/// </summary>
public static class PartOfEvening
{
    /// <summary>From the first pie, for so long, most of the pies are eaten.</summary>
    public static Duration EatingTime(Duration? length, AppetiteTable table)
    {
        var usual = Duration.FromHours(table.PartOfEvening.EatingHours);
        return length is { } lasts && lasts > Duration.Zero ? Duration.Min(lasts, usual) : usual;
    }

    /// <returns>1 for who is there while the pies are eaten, 0 for who is gone before the first.</returns>
    public static double Appetite(Stay? stay, Duration? length, AppetiteTable table)
    {
        if (stay is null)
        {
            return 1;
        }

        if (stay.LeavesAfter <= Duration.Zero)
        {
            return 0;
        }

        var eating = EatingTime(length, table);
        var from = Within(stay.ComesAfter ?? Duration.Zero);
        var until = Within(stay.LeavesAfter ?? eating);
        var missed = 1 - Math.Max(0, (until - from) / eating);
        var rows = table.PartOfEvening.Rows.OrderBy(row => row.Missed).ToList();
        var next = Math.Max(1, rows.FindIndex(row => row.Missed >= missed));
        var (low, high) = (rows[next - 1], rows[next]);
        return low.Appetite + (high.Appetite - low.Appetite) * (missed - low.Missed) / (high.Missed - low.Missed);

        Duration Within(Duration after) => Duration.Max(Duration.Zero, Duration.Min(after, eating));
    }
}
