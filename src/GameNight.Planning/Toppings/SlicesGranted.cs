namespace GameNight.Planning.Toppings;

/// <summary>Shares too few slices by largest remainder, so that everybody gives up about the same part.</summary>
internal static class SlicesGranted
{
    /// <summary>
    /// What each eater gets out of <paramref name="available"/> slices: everything they want when it is enough. Equal
    /// remainders go to the earlier eater.
    /// </summary>
    public static int[] From(int available, IReadOnlyList<int> wanted)
    {
        var total = wanted.Sum(slices => (long)slices);
        if (total <= available)
        {
            return [.. wanted];
        }

        var granted = wanted.Select(slices => (int)((long)slices * available / total)).ToArray();
        var byRemainder = Enumerable.Range(0, wanted.Count)
            .OrderByDescending(eater => (long)wanted[eater] * available % total)
            .ThenBy(eater => eater);
        foreach (var eater in byRemainder.Take(available - granted.Sum()))
        {
            granted[eater]++;
        }

        return granted;
    }
}
