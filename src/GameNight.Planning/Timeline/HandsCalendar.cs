namespace GameNight.Planning.Timeline;

/// <summary>Hands that were taken, to be given back.</summary>
internal readonly record struct TakenHands(int Class, int Start, int Minutes);

/// <summary>How many pairs of hands of each class are still free in each minute, for placing steps one after the other.</summary>
internal sealed class HandsCalendar
{
    private readonly int _from;
    private readonly byte[][] _free;
    private readonly bool[] _away;
    private readonly Crew _crew;

    public HandsCalendar(int from, int until, Crew crew, AwayWindows away)
    {
        (_from, _crew) = (from, crew);
        _free = [.. crew.Counts.Select(_ => new byte[until - from])];
        _away = new bool[until - from];
        foreach (var (free, count) in _free.Zip(crew.Counts))
        {
            Array.Fill(free, (byte)count);
        }

        foreach (var window in away.Windows)
        {
            var first = Math.Clamp(window.From - from, 0, _away.Length);
            var count = Math.Clamp(window.Until - from, 0, _away.Length) - first;
            Array.Fill(_away, true, first, count);
            foreach (var free in _free)
            {
                Array.Fill(free, (byte)0, first, count);
            }
        }
    }

    public bool Fits(StepKind kind, int number, int start, int length) => ClassFor(_crew.Able(kind, number), start, length) is not null;

    /// <summary>The first fitting start within the closed range, or null.</summary>
    public int? Earliest(StepKind kind, int number, int from, int until, int length)
    {
        var able = _crew.Able(kind, number);
        for (var start = from; start <= until; start++)
        {
            if (ClassFor(able, start, length) is not null)
            {
                return start;
            }
        }

        return null;
    }

    /// <summary>The last fitting start within the closed range, or null.</summary>
    public int? Latest(StepKind kind, int number, int from, int until, int length)
    {
        var able = _crew.Able(kind, number);
        for (var start = until; start >= from; start--)
        {
            if (ClassFor(able, start, length) is not null)
            {
                return start;
            }
        }

        return null;
    }

    /// <exception cref="InvalidOperationException">It does not fit.</exception>
    public TakenHands Take(StepKind kind, int number, int start, int length)
    {
        var one = ClassFor(_crew.Able(kind, number), start, length) ?? throw new InvalidOperationException($"No hands for {kind} {number} at {start}.");
        foreach (ref var free in _free[one].AsSpan(start - _from, length))
        {
            free--;
        }

        return new TakenHands(one, start, length);
    }

    public void GiveBack(TakenHands taken)
    {
        foreach (ref var free in _free[taken.Class].AsSpan(taken.Start - _from, taken.Minutes))
        {
            free++;
        }
    }

    /// <summary>The first class that is able and free; null when none is.</summary>
    private int? ClassFor(IReadOnlyList<int> able, int start, int length)
    {
        var first = start - _from;
        if (first < 0 || first + Math.Max(1, length) > _away.Length)
        {
            return null;
        }

        if (length == 0)
        {
            return _away[first] || able.Count == 0 ? null : able[0];
        }

        for (var i = 0; i < able.Count; i++)
        {
            if (_free[able[i]].AsSpan(first, length).IndexOf((byte)0) < 0)
            {
                return able[i];
            }
        }

        return null;
    }
}
