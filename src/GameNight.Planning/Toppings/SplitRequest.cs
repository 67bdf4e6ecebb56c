using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>An eater and how many slices the plan sets aside for them.</summary>
public sealed record SplitEater(string Id, int Slices, DietaryNeeds Needs, IReadOnlyDictionary<string, Liking> Likes);

/// <summary>
/// Eaters with the same must-nots, and how many slices they eat together at most nine times out of ten: that many
/// permitted slices must be on the table for them.
/// </summary>
public sealed record MustNotGroup(IReadOnlyList<string> EaterIds, DietaryNeeds Needs, int SlicesNineInTen);

/// <summary>
/// Everything the topping split depends on. When the eaters want more slices than there are, all are cut in proportion.
/// </summary>
/// <param name="SlicesPerPie">4 to 16. An odd number allows whole pies only; an even one halves as well.</param>
public sealed record SplitRequest(
    IReadOnlyList<SplitEater> Eaters,
    IReadOnlyList<MustNotGroup> Groups,
    Menu Menu,
    int Pies,
    int SlicesPerPie)
{
    public int AllSlices => Pies * SlicesPerPie;

    /// <summary>The slices of the smallest sector: half a pie, or the whole of it where a pie cannot be halved evenly.</summary>
    public int SlicesPerHalf => SlicesPerPie % 2 == 0 ? SlicesPerPie / 2 : SlicesPerPie;
}
