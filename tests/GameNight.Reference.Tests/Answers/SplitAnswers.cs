using GameNight.Planning.Toppings;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of sharing out slices.</summary>
internal static class SplitAnswers
{
    private static readonly double[] Wishes = [100, 200, 300];

    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = (
        from available in new[] { 100, 200, 300 }
        from person in Enumerable.Range(0, Wishes.Length)
        select ($"2.4.{available}.{Wishes[person]:0}", (Func<double>)(() => ContestedShares.Of(Wishes, available)[person])))
        .ToDictionary(row => row.Item1, row => row.Item2);
}
