using GameNight.Planning.Appetite;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using NodaTime;

namespace GameNight.Planning;

/// <summary>What the host decided by hand instead of the models; null where the models decide.</summary>
/// <param name="Yeast">Yeast as a share of flour, in the form the formula names.</param>
/// <param name="MixAt">When mixing starts.</param>
/// <param name="Split">What goes on which pie, as far as it is settled.</param>
public sealed record ByHand(
    PieCount? Pies, Grams? Ball, Share? Yeast, Grams? SaucePerPie, Grams? CheesePerPie, Instant? MixAt, SplitByHand? Split = null)
{
    public static ByHand Nothing { get; } = new(null, null, null, null, null, null);
}

/// <summary>Everything a plan depends on, frozen. Ids only: names and notes stay where the night is kept.</summary>
/// <param name="ServeAt">The first pie is on the table.</param>
/// <param name="Away">When the host's hands are not there; may overlap, in any order.</param>
/// <param name="RunOutChance">Accepted chance that the slices end before the appetite does, 0.01 to 0.5.</param>
/// <param name="Begun">The dough that is begun, or null while it still follows the answers.</param>
/// <param name="Readings">What was measured and seen of this dough.</param>
/// <param name="Sauce">The sauce that is made here; null when none is, or nobody wrote it down.</param>
/// <param name="CheeseBlend">The cheese that is blended here; null when none is, or nobody wrote it down.</param>
/// <param name="Courses">What is served beside the pies.</param>
/// <param name="Length">From the first pie to the end of the evening; null when nobody said.</param>
/// <param name="ShortageWeight">A missing pie is as bad as so many left over, 1 to 99; null for the accepted chance.</param>
/// <param name="Late">What the host chose to do about late changes, once a dough is begun.</param>
/// <param name="Players">With how many what is played works; null when nobody said.</param>
/// <param name="OwnSteps">What else the host does, by number; its names stay where the night is kept.</param>
/// <param name="Helpers">What each helper does, one for each pair of hands but the host's; null when all do everything.</param>
public sealed record NightSnapshot(
    Instant ServeAt,
    IReadOnlyList<GuestSnapshot> Guests,
    KitchenSnapshot Kitchen,
    DoughFormula Formula,
    PieShape Shape,
    Menu Menu,
    IReadOnlyList<HostAway> Away,
    ColdFerment ColdFerment,
    Share RunOutChance,
    ByHand ByHand,
    BegunDough? Begun = null,
    IReadOnlyList<DoughReading>? Readings = null,
    HouseSauce? Sauce = null,
    HouseCheese? CheeseBlend = null,
    IReadOnlyList<Course>? Courses = null,
    Duration? Length = null,
    double? ShortageWeight = null,
    LateChoices? Late = null,
    PlayersWanted? Players = null,
    IReadOnlyList<OwnStep>? OwnSteps = null,
    IReadOnlyList<HelperSkill>? Helpers = null);
