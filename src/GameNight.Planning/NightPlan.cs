using GameNight.Planning.Appetite;
using GameNight.Planning.Cheese;
using GameNight.Planning.Dough;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Heat;
using GameNight.Planning.Safety;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;

namespace GameNight.Planning;

/// <summary>A plan comes in two stages, both complete.</summary>
public enum PlanStage
{
    /// <summary>Numbers are final; split and timeline are feasible and still being improved.</summary>
    Quick,

    /// <summary>Split and timeline are proven or the best found within the effort.</summary>
    Improved,
}

/// <summary>Everything the planner derives from a snapshot, with reasons, cautions and conflicts. Ids only, no names.</summary>
/// <param name="Ripening">What the dough does when; null when there is none.</param>
/// <param name="SolverSlices">Effort it was made with: with the same effort it is computed again bit for bit.</param>
/// <param name="SauceToMake">Null when no sauce is made by a formula.</param>
/// <param name="CheeseToGrate">Null when no cheese is blended here.</param>
/// <param name="WaterLoads">One for each combination on the pies; null in plans of before it was counted.</param>
/// <param name="Oven">Null in plans of before it was reckoned.</param>
/// <param name="Rescue">The second batch of the same dough that the host chose; null without one.</param>
/// <param name="SecondDough">For whoever must not have the main one; null where no pie lies on it.</param>
public sealed record NightPlan(
    string EngineVersion,
    PlanStage Stage,
    SlicesForecast Slices,
    PiePlan Pies,
    DoughPlan Dough,
    WaterTemperature Water,
    YeastDose Yeast,
    SpreadAmount Sauce,
    SpreadAmount Cheese,
    IReadOnlyList<ItemAmount> Amounts,
    ToppingSplit Split,
    HostTimeline Timeline,
    IReadOnlyList<Caution> Cautions,
    IReadOnlyList<Conflict> Conflicts,
    int SolverSlices,
    Ripening? Ripening = null,
    SaucePlan? SauceToMake = null,
    CheesePlan? CheeseToGrate = null,
    IReadOnlyList<WaterLoad>? WaterLoads = null,
    OvenPlan? Oven = null,
    RescuePlan? Rescue = null,
    SecondDoughPlan? SecondDough = null);
