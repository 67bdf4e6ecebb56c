namespace GameNight.Planning.Toppings;

/// <summary>
/// Divides too little among people who want a known amount each, by the rule of the contested garment: up to half of what all
/// want, everybody gets the same, at most half of their own wish; beyond it everybody lacks the same, at most half of it. A
/// child's two slices are not cut like a big eater's six, and nobody is left with nothing while another has all.
/// Source: Aumann and Maschler 1985 (the nucleolus of the bankruptcy game).
/// </summary>
internal static class ContestedShares
{
    /// <param name="wanted">What each wants, 0 or more.</param>
    /// <param name="available">What there is, 0 to the sum of the wishes.</param>
    /// <returns>The share of each, in the order of the wishes; together what there is.</returns>
    public static IReadOnlyList<double> Of(IReadOnlyList<double> wanted, double available)
    {
        double[] halves = [.. wanted.Select(wish => wish / 2)];
        var half = halves.Sum();
        return available <= half
            ? EqualUpTo(halves, available)
            : [.. wanted.Zip(EqualUpTo(halves, (2 * half) - available), (wish, lack) => wish - lack)];
    }

    /// <summary>Whole slices near the shares, by largest remainder; nobody gets more than they want.</summary>
    public static IReadOnlyList<int> Whole(IReadOnlyList<int> wanted, int available)
    {
        var exact = Of([.. wanted.Select(wish => (double)wish)], available);
        int[] whole = [.. exact.Select(share => (int)Math.Floor(share))];
        var left = available - whole.Sum();
        var first = Enumerable.Range(0, whole.Length)
            .Where(index => whole[index] < wanted[index])
            .OrderByDescending(index => exact[index] - whole[index])
            .ThenBy(index => index);
        foreach (var index in first.Take(left).ToArray())
        {
            whole[index]++;
        }

        return whole;
    }

    /// <summary>The same for everybody, except those whose limit is lower.</summary>
    private static double[] EqualUpTo(double[] limits, double available)
    {
        var shares = new double[limits.Length];
        var (left, people) = (available, limits.Length);
        foreach (var index in Enumerable.Range(0, limits.Length).OrderBy(index => limits[index]))
        {
            shares[index] = Math.Min(limits[index], left / people);
            left -= shares[index];
            people--;
        }

        return shares;
    }
}
