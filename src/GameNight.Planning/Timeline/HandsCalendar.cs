namespace GameNight.Planning.Timeline;

/// <summary>Hands and a place that were taken, to be given back.</summary>
/// <param name="Class">Null when nobody's hands were taken.</param>
internal readonly record struct TakenHands(int? Class, Station? Station, int Start, int Minutes);

/// <summary>
/// How many pairs of hands of each class, and how many places of hob and oven, are still free in each minute, for placing steps
/// one after the other.
/// </summary>
internal sealed class HandsCalendar
{
    private readonly int _from;
    private readonly byte[][] _free;
    private readonly bool[] _away;
    private readonly Crew _crew;
    private readonly Stations _stations;
    private readonly Dictionary<Station, byte[]> _places;

    public HandsCalendar(int from, int until, Crew crew, AwayWindows away, Stations stations)
    {
        (_from, _crew, _stations) = (from, crew, stations);
        _places = stations.Scarce.ToDictionary(one => one.Station, one =>
        {
            var places = new byte[until - from];
            Array.Fill(places, (byte)one.Places);
            return places;
        });
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

    /// <param name="needsHands">Else it is only begun, and takes at most a place.</param>
    public bool Fits(StepKind kind, int number, int start, int length, bool needsHands = true) =>
        ClassFor(_crew.Able(kind, number), start, needsHands ? length : 0) is not null && HasPlace(kind, number, start, length);

    /// <summary>The first fitting start within the closed range, or null.</summary>
    public int? Earliest(StepKind kind, int number, int from, int until, int length, bool needsHands = true)
    {
        for (var start = from; start <= until; start++)
        {
            if (Fits(kind, number, start, length, needsHands))
            {
                return start;
            }
        }

        return null;
    }

    /// <summary>The last fitting start within the closed range, or null.</summary>
    public int? Latest(StepKind kind, int number, int from, int until, int length, bool needsHands = true)
    {
        for (var start = until; start >= from; start--)
        {
            if (Fits(kind, number, start, length, needsHands))
            {
                return start;
            }
        }

        return null;
    }

    /// <exception cref="InvalidOperationException">It does not fit.</exception>
    public TakenHands Take(StepKind kind, int number, int start, int length, bool needsHands = true)
    {
        if (!Fits(kind, number, start, length, needsHands))
        {
            throw new InvalidOperationException($"No room for {kind} {number} at {start}.");
        }

        var taken = new TakenHands(
            needsHands ? ClassFor(_crew.Able(kind, number), start, length) : null, _stations.Of(kind, number), start, length);
        Count(taken, -1);
        return taken;
    }

    public void GiveBack(TakenHands taken) => Count(taken, 1);

    private void Count(TakenHands taken, int more)
    {
        if (taken.Class is { } one)
        {
            foreach (ref var free in _free[one].AsSpan(taken.Start - _from, taken.Minutes))
            {
                free = (byte)(free + more);
            }
        }

        if (taken.Station is { } station && _places.TryGetValue(station, out var places))
        {
            foreach (ref var free in places.AsSpan(taken.Start - _from, taken.Minutes))
            {
                free = (byte)(free + more);
            }
        }
    }

    private bool HasPlace(StepKind kind, int number, int start, int length) =>
        _places.Count == 0 || _stations.Of(kind, number) is not { } station || !_places.TryGetValue(station, out var places)
        || (start - _from + length <= places.Length && places.AsSpan(start - _from, length).IndexOf((byte)0) < 0);

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
