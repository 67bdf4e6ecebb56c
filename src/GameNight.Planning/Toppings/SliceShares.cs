namespace GameNight.Planning.Toppings;

/// <summary>Divides whole slices among people in proportion to what each is expected to eat (largest remainder).</summary>
public static class SliceShares
{
    /// <param name="expected">Expected slices of each, 0 or more.</param>
    /// <param name="slices">Slices to divide, 0 or more.</param>
    /// <returns>Whole slices of each; they add up to <paramref name="slices"/> unless nobody is expected to eat.</returns>
    public static IReadOnlyList<int> Divide(IReadOnlyList<double> expected, int slices)
    {
        var total = expected.Sum();
        if (total <= 0)
        {
            return [.. expected.Select(_ => 0)];
        }

        var exact = expected.Select(share => share / total * slices).ToList();
        var whole = exact.Select(share => (int)Math.Floor(share)).ToArray();
        var byRemainder = Enumerable.Range(0, whole.Length)
            .OrderByDescending(index => exact[index] - whole[index])
            .ThenBy(index => index);
        foreach (var index in byRemainder.Take(slices - whole.Sum()))
        {
            whole[index]++;
        }

        return whole;
    }
}
