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

    /// <summary>
    /// The first lane on which each box, with its label, has room after the one before it. Places in percent of the line.
    /// </summary>
    public static IReadOnlyList<int> Lanes(IReadOnlyList<(double From, double Until)> boxes)
    {
        var free = new List<double>();
        var lanes = new int[boxes.Count];
        foreach (var index in Enumerable.Range(0, boxes.Count).OrderBy(i => boxes[i].From).ThenByDescending(i => boxes[i].Until))
        {
            var lane = free.FindIndex(until => until <= boxes[index].From);
            if (lane < 0)
            {
                free.Add(0);
                lane = free.Count - 1;
            }

            free[lane] = boxes[index].Until;
            lanes[index] = lane;
        }

        return lanes;
    }
}
