namespace GameNight.Planning.Timeline;

/// <summary>How many pairs of hands are still free in each minute, for placing steps one after the other.</summary>
internal sealed class HandsCalendar
{
    private readonly int _from;
    private readonly byte[] _free;
    private readonly bool[] _away;

    public HandsCalendar(int from, int until, int hands, AwayWindows away)
    {
        _from = from;
        _free = new byte[until - from];
        _away = new bool[until - from];
        Array.Fill(_free, (byte)hands);
        foreach (var window in away.Windows)
        {
            var first = Math.Clamp(window.From - from, 0, _free.Length);
            var count = Math.Clamp(window.Until - from, 0, _free.Length) - first;
            Array.Fill(_free, (byte)0, first, count);
            Array.Fill(_away, true, first, count);
        }
    }

    public bool Fits(int start, int length)
    {
        var first = start - _from;
        if (first < 0 || first + Math.Max(1, length) > _free.Length)
        {
            return false;
        }

        return length == 0 ? !_away[first] : _free.AsSpan(first, length).IndexOf((byte)0) < 0;
    }

    /// <summary>The first fitting start within the closed range, or null.</summary>
    public int? Earliest(int from, int until, int length)
    {
        for (var start = from; start <= until; start++)
        {
            if (Fits(start, length))
            {
                return start;
            }
        }

        return null;
    }

    /// <summary>The last fitting start within the closed range, or null.</summary>
    public int? Latest(int from, int until, int length)
    {
        for (var start = until; start >= from; start--)
        {
            if (Fits(start, length))
            {
                return start;
            }
        }

        return null;
    }

    public void Take(int start, int length)
    {
        foreach (ref var free in _free.AsSpan(start - _from, length))
        {
            free--;
        }
    }

    public void GiveBack(int start, int length)
    {
        foreach (ref var free in _free.AsSpan(start - _from, length))
        {
            free++;
        }
    }
}
