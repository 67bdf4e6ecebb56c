using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>How much one person is expected to eat, attendance counted in, in slices.</summary>
public sealed record EaterForecast(string EaterId, Share Chance, double ExpectedSlices);

/// <summary>What people with the same must-nots eat together at most nine times in ten.</summary>
public sealed record GroupForecast(IReadOnlyList<string> EaterIds, int SlicesNineInTen);

/// <summary>What past nights say of a guest, beside what would be believed without any.</summary>
/// <param name="Answered">Nights with the answer of tonight.</param>
/// <param name="Eaten">Nights of which they said what they ate.</param>
/// <param name="RanOut">Nights on which nothing was left: what they ate is the least they wanted.</param>
/// <param name="SlicesBefore">On a usual evening, if they come; 0 for who eats nothing here.</param>
public sealed record PastCounted(
    string EaterId, int Answered, Share ChanceBefore, Share Chance, int Eaten, int RanOut, double SlicesBefore, double Slices);

/// <summary>The forecast of the whole appetite of the night.</summary>
/// <param name="Slices">Slices wanted in all.</param>
/// <param name="People">People expected to eat here.</param>
/// <param name="Past">Guests whose own past nights count; null when none do.</param>
/// <param name="Players">How many may play; null when nobody said with how many it works.</param>
public sealed record SlicesForecast(
    Estimate<double> Slices,
    Estimate<double> People,
    IReadOnlyList<EaterForecast> Eaters,
    IReadOnlyList<GroupForecast> MustNotGroups,
    IReadOnlyList<Reason> Because,
    IReadOnlyList<PastCounted>? Past = null,
    PlayersForecast? Players = null);

/// <summary>One possible number of pies and what it would mean.</summary>
public sealed record PieChoice(
    PieCount Pies, Share RunOutChance, double ExpectedShortageSlices, double ExpectedLeftoverSlices);

/// <summary>The run-out chance of each number of pies, from a number on which it is nearly certain to one that is nearly safe.</summary>
public sealed record RunOutCurve(PieCount From, IReadOnlyList<double> Chances);

/// <summary>The number of pies, with its neighbours for comparison (fewest first; the chosen one is among them).</summary>
/// <param name="Curve">Null in plans of before it was kept, and when nobody is expected.</param>
public sealed record PiePlan(Explained<PieCount> Count, IReadOnlyList<PieChoice> Choices, RunOutCurve? Curve = null)
{
    public PieChoice Chosen => Choices.Single(choice => choice.Pies == Count.Value);
}
