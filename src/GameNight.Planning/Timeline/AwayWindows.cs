namespace GameNight.Planning.Timeline;

/// <summary>The host's unavailable hours in minutes, sorted and joined where they overlap or touch.</summary>
internal sealed class AwayWindows
{
    private readonly List<(int From, int Until)> _windows = [];

    public AwayWindows(IEnumerable<(int From, int Until)> windows)
    {
        foreach (var (from, until) in windows.Where(w => w.Until > w.From).OrderBy(w => w.From))
        {
            if (_windows.Count > 0 && from <= _windows[^1].Until)
            {
                _windows[^1] = (_windows[^1].From, Math.Max(_windows[^1].Until, until));
            }
            else
            {
                _windows.Add((from, until));
            }
        }
    }

    public static AwayWindows None { get; } = new([]);

    public IReadOnlyList<(int From, int Until)> Windows => _windows;

    /// <summary>Only the hours that end within so many minutes of their beginning.</summary>
    public AwayWindows NoLongerThan(int minutes) => new(_windows.Where(window => window.Until - window.From <= minutes));

    public bool IsFree(int start, int length) => length == 0 || NextFree(start, length) == start;

    /// <summary>The first start from <paramref name="start"/> on at which <paramref name="length"/> minutes are free.</summary>
    public int NextFree(int start, int length)
    {
        if (length == 0)
        {
            return start;
        }

        foreach (var (from, until) in _windows)
        {
            if (start < until && start + length > from)
            {
                start = until;
            }
        }

        return start;
    }

    /// <summary>The last start up to <paramref name="start"/> at which <paramref name="length"/> minutes are free.</summary>
    public int PreviousFree(int start, int length)
    {
        if (length == 0)
        {
            return start;
        }

        for (var i = _windows.Count - 1; i >= 0; i--)
        {
            if (start < _windows[i].Until && start + length > _windows[i].From)
            {
                start = _windows[i].From - length;
            }
        }

        return start;
    }

    /// <summary>
    /// When to begin what has to be ready in time: these minutes ahead if that is free, else as late as possible; null when
    /// no minute of the closed range is free.
    /// </summary>
    public int? BeginAhead(int earliest, int latest, int ahead)
    {
        var wished = latest - ahead;
        if (wished >= earliest && PreviousFree(wished, 1) is var early && early >= earliest)
        {
            return early;
        }

        var late = PreviousFree(latest, 1);
        return late >= earliest ? late : null;
    }

    /// <summary>All free starts from <paramref name="earliest"/> to <paramref name="latest"/>, as closed ranges.</summary>
    public IEnumerable<(int First, int Last)> FreeStarts(int earliest, int latest, int length)
    {
        if (length > 0)
        {
            foreach (var (from, until) in _windows)
            {
                if (earliest <= Math.Min(latest, from - length))
                {
                    yield return (earliest, Math.Min(latest, from - length));
                }

                // Windows far apart do not touch this range; those that do push its beginning behind them.
                if (from - length < latest)
                {
                    earliest = Math.Max(earliest, until);
                }
            }
        }

        if (earliest <= latest)
        {
            yield return (earliest, latest);
        }
    }
}
