using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>How much one person is expected to eat, attendance counted in, in slices.</summary>
public sealed record EaterForecast(string EaterId, Share Chance, double ExpectedSlices);

/// <summary>What people with the same must-nots eat together at most nine times in ten.</summary>
public sealed record GroupForecast(IReadOnlyList<string> EaterIds, int SlicesNineInTen);

/// <summary>The forecast of the whole appetite of the night.</summary>
/// <param name="Slices">Slices wanted in all.</param>
/// <param name="People">People expected to eat here.</param>
public sealed record SlicesForecast(
    Estimate<double> Slices,
    Estimate<double> People,
    IReadOnlyList<EaterForecast> Eaters,
    IReadOnlyList<GroupForecast> MustNotGroups,
    IReadOnlyList<Reason> Because);

/// <summary>One possible number of pies and what it would mean.</summary>
public sealed record PieChoice(
    PieCount Pies, Share RunOutChance, double ExpectedShortageSlices, double ExpectedLeftoverSlices);

/// <summary>The number of pies, with its neighbours for comparison (fewest first; the chosen one is among them).</summary>
public sealed record PiePlan(Explained<PieCount> Count, IReadOnlyList<PieChoice> Choices)
{
    public PieChoice Chosen => Choices.Single(choice => choice.Pies == Count.Value);
}
