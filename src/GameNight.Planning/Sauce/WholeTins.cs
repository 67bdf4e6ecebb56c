using GameNight.Planning.Quantities;

namespace GameNight.Planning.Sauce;

/// <summary>Finds the whole tins that cover a need: first the least tomato, then the fewest tins.</summary>
internal static class WholeTins
{
    /// <param name="sizes">In whole grams: what a tin is said to hold is rounded to that.</param>
    /// <param name="made">What so much tomato becomes. More tomato must in the end make more sauce.</param>
    public static (IReadOnlyList<TinCount> Tins, SimmeredSauce Sauce) Covering(
        IReadOnlyList<Grams> sizes, Func<Grams, SimmeredSauce> made, Grams needed)
    {
        var grams = sizes.Select(size => (int)Math.Round(size.Value)).Distinct().OrderDescending().ToArray();

        // Per sum of grams the fewest tins that make it, and the last of them; grown one gram at a time.
        List<(int Tins, int Last)> fewest = [(0, 0)];
        for (var sum = 1; ; sum++)
        {
            var best = (Tins: int.MaxValue, Last: 0);
            foreach (var size in grams)
            {
                if (size <= sum && fewest[sum - size].Tins < best.Tins - 1)
                {
                    best = (fewest[sum - size].Tins + 1, size);
                }
            }

            fewest.Add(best);
            if (best.Last > 0 && made(new Grams(sum)) is var sauce && sauce.Finished >= needed)
            {
                return (CountOf(fewest, sum), sauce);
            }
        }
    }

    private static List<TinCount> CountOf(List<(int Tins, int Last)> fewest, int sum)
    {
        var used = new List<int>();
        for (; sum > 0; sum -= fewest[sum].Last)
        {
            used.Add(fewest[sum].Last);
        }

        return [.. used.GroupBy(size => size).OrderByDescending(size => size.Key).Select(size => new TinCount(new Grams(size.Key), size.Count()))];
    }
}
