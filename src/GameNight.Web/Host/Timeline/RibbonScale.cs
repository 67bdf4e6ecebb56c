using System.Globalization;
using NodaTime;

namespace GameNight.Web.Host.Timeline;

/// <summary>Places moments on a line of percent, and boxes on as few lanes as do not overlap.</summary>
public sealed record RibbonScale(Instant From, Instant Until)
{
    public double At(Instant moment) => Until > From
        ? Math.Clamp(100 * ((moment - From) / (Until - From)), 0, 100)
        : 0;

    public static string Percent(double value) => value.ToString("0.###", CultureInfo.InvariantCulture) + "%";

    /// <summary>Style of a box: position, width and lane.</summary>
    public string Box(Instant start, Instant end, int lane, double laneRem) => string.Create(
        CultureInfo.InvariantCulture,
        $"left:{At(start):0.###}%;width:{Math.Max(At(end) - At(start), 0.2):0.###}%;top:{lane * laneRem:0.##}rem");

    /// <summary>The first lane on which each box has room after the one before it, in order of starting.</summary>
    public static IReadOnlyList<int> Lanes(IReadOnlyList<(Instant Start, Instant End)> boxes)
    {
        var free = new List<Instant>();
        var lanes = new int[boxes.Count];
        foreach (var index in Enumerable.Range(0, boxes.Count).OrderBy(i => boxes[i].Start).ThenByDescending(i => boxes[i].End))
        {
            var lane = free.FindIndex(until => until <= boxes[index].Start);
            if (lane < 0)
            {
                free.Add(default);
                lane = free.Count - 1;
            }

            free[lane] = boxes[index].End;
            lanes[index] = lane;
        }

        return lanes;
    }
}
