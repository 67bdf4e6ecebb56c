using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>An eater and how many slices the plan sets aside for them.</summary>
/// <param name="WeightPercent">How much their gain counts beside others' once the worst-off are served, 100 to 150.</param>
public sealed record SplitEater(
    string Id, int Slices, DietaryNeeds Needs, IReadOnlyDictionary<string, Liking> Likes, int WeightPercent = FairOverTime.UsualPercent);

/// <summary>
/// Eaters with the same must-nots, and how many slices they eat together at most nine times out of ten: that many
/// permitted slices must be on the table for them.
/// </summary>
public sealed record MustNotGroup(IReadOnlyList<string> EaterIds, DietaryNeeds Needs, int SlicesNineInTen);

/// <summary>Whose gain counts more once nobody lacks slices.</summary>
public enum SplitAim
{
    /// <summary>The worst-off eater first, then all together (sum of logarithms). Found and mostly proved within seconds.</summary>
    WorstOff,

    /// <summary>
    /// Level by level: as few eaters as possible below an eighth of their best, then below two eighths, and so on; then all
    /// together. Takes several times as long, and is hopeless above about 40 eaters.
    /// </summary>
    EveryLevel,
}

/// <summary>How much water a square centimetre of topped area may carry before the middle stays soggy.</summary>
/// <param name="AtLeastGramsPerCm2">Water that an item brings, the low end of what is known, by item id.</param>
public sealed record WetnessRule(double BoundGramsPerCm2, IReadOnlyDictionary<string, double> AtLeastGramsPerCm2);

/// <summary>
/// Everything the topping split depends on. When the eaters want more slices than there are, <see cref="ContestedShares"/> says whose are fewer.
/// </summary>
/// <param name="SlicesPerPie">4 to 16. An odd number allows whole pies only; an even one halves as well, one of four quarters.</param>
/// <param name="Parts">Into how many parts of their own combination a pie may be divided at most: 1, 2 or 4.</param>
/// <param name="Pins">What the host has settled; the rule of wetness does not hold for it.</param>
/// <param name="Wetness">Which combinations are too wet for the middle of a pie; null lets all be.</param>
/// <param name="Stock">By item id, where something is known; null where everything is bought as needed.</param>
/// <param name="MainBalls">Pies that the main dough is enough for, once it is begun: all others lie on the second one. Null while it can follow.</param>
public sealed record SplitRequest(
    IReadOnlyList<SplitEater> Eaters,
    IReadOnlyList<MustNotGroup> Groups,
    Menu Menu,
    int Pies,
    int SlicesPerPie,
    SplitAim Aim = SplitAim.WorstOff,
    int Parts = SplitRequest.UsualParts,
    IReadOnlyList<Pin>? Pins = null,
    WetnessRule? Wetness = null,
    IReadOnlyDictionary<string, ItemStock>? Stock = null,
    int? MainBalls = null)
{
    public const int UsualParts = 2;

    public int AllSlices => Pies * SlicesPerPie;

    /// <summary>As many equal parts as are wanted and the slices allow.</summary>
    public int PartsPerPie => PartsOf(SlicesPerPie, Parts);

    /// <inheritdoc cref="PartsPerPie"/>
    public static int PartsOf(int slicesPerPie, int wanted) =>
        wanted >= 4 && slicesPerPie % 4 == 0 ? 4 : wanted >= 2 && slicesPerPie % 2 == 0 ? 2 : 1;

    /// <summary>The slices of the smallest sector.</summary>
    public int SlicesPerPart => SlicesPerPie / PartsPerPie;
}
