namespace GameNight.Planning.Timeline;

/// <summary>Rules between events that cannot all hold: going round them takes this many minutes too long.</summary>
internal sealed record LagCycle(IReadOnlyList<int> Events, int TooLongBy);

/// <summary>
/// A simple temporal network: events in whole minutes and least differences between them (a greatest difference is a least
/// one in the other direction with its sign changed). Hands are unknown to it.
/// </summary>
internal sealed class TemporalNetwork(int events)
{
    private readonly List<(int From, int To, int Minutes)> _arcs = [];

    /// <summary><paramref name="to"/> is at least <paramref name="minutes"/> after <paramref name="from"/>.</summary>
    public void AtLeast(int from, int to, int minutes) => _arcs.Add((from, to, minutes));

    /// <summary><paramref name="to"/> is at most <paramref name="minutes"/> after <paramref name="from"/>.</summary>
    public void AtMost(int from, int to, int minutes) => _arcs.Add((to, from, -minutes));

    /// <summary>Bellman-Ford: a cycle of lags that contradict each other, or null when some schedule keeps them all.</summary>
    public LagCycle? FindCycle()
    {
        var longest = new long[events];
        var before = new int[events];
        Array.Fill(before, -1);
        var moved = -1;
        for (var round = 0; round < events; round++)
        {
            moved = -1;
            for (var arc = 0; arc < _arcs.Count; arc++)
            {
                var (from, to, minutes) = _arcs[arc];
                if (longest[from] + minutes > longest[to])
                {
                    longest[to] = longest[from] + minutes;
                    before[to] = arc;
                    moved = to;
                }
            }

            if (moved < 0)
            {
                return null;
            }
        }

        return moved < 0 ? null : CycleBehind(moved, before);
    }

    /// <summary>
    /// Narrows the bounds of all events until the lags and the free times agree; false when an event is left without a
    /// time, with its bounds (and that event) as they were then.
    /// </summary>
    /// <remarks>
    /// Least differences and free times of single events are kept by the later of two schedules, event by event. So the
    /// latest times found here are together a schedule, and so are the earliest ones; only hands are not looked at.
    /// </remarks>
    public bool Narrow(int[] earliest, int[] latest, IFreeTimes free, out int stuck)
    {
        for (var i = 0; i < events; i++)
        {
            if (!Round(i, earliest, latest, free))
            {
                stuck = i;
                return false;
            }
        }

        while (true)
        {
            var changed = false;
            for (var k = 0; k < 2 * _arcs.Count; k++)
            {
                // Once along the order the arcs were added in and once against it: long chains settle in few rounds.
                var (from, to, minutes) = _arcs[k < _arcs.Count ? k : (2 * _arcs.Count) - 1 - k];
                if (earliest[from] + minutes > earliest[to])
                {
                    earliest[to] = earliest[from] + minutes;
                    changed = true;
                    if (!Round(to, earliest, latest, free))
                    {
                        stuck = to;
                        return false;
                    }
                }

                if (latest[to] - minutes < latest[from])
                {
                    latest[from] = latest[to] - minutes;
                    changed = true;
                    if (!Round(from, earliest, latest, free))
                    {
                        stuck = from;
                        return false;
                    }
                }
            }

            if (!changed)
            {
                stuck = -1;
                return true;
            }
        }
    }

    private static bool Round(int i, int[] earliest, int[] latest, IFreeTimes free)
    {
        var first = free.NextFree(i, earliest[i]);
        var last = free.PreviousFree(i, latest[i]);
        if (first > last || first > latest[i] || last < earliest[i])
        {
            return false;
        }

        earliest[i] = first;
        latest[i] = last;
        return true;
    }

    private LagCycle CycleBehind(int moved, int[] before)
    {
        var onCycle = moved;
        for (var i = 0; i < events; i++)
        {
            onCycle = _arcs[before[onCycle]].From;
        }

        var cycle = new List<int>();
        var total = 0;
        var current = onCycle;
        do
        {
            var (from, _, minutes) = _arcs[before[current]];
            total += minutes;
            cycle.Add(current);
            current = from;
        }
        while (current != onCycle);

        cycle.Reverse();
        return new LagCycle(cycle, total);
    }
}

/// <summary>At which times an event may happen at all, apart from its lags.</summary>
internal interface IFreeTimes
{
    int NextFree(int i, int minute);

    int PreviousFree(int i, int minute);
}
