using NodaTime;

namespace GameNight.Planning.Timeline;

public enum StepKind
{
    Shop,
    Mix,
    Knead,
    BulkRest,
    Ball,
    ColdFerment,
    Temper,
    Sauce,
    GrateCheese,
    PrepareToppings,
    Preheat,
    Soak,
    Shape,
    Top,
    Bake,
    Rack,
    Serve,
}

/// <summary>One step of the host's timeline.</summary>
/// <param name="Id">Stable and readable: "mix-1", "bake-3", "preheat".</param>
/// <param name="Number">Batch or pie number from 1; 0 for steps there is one of.</param>
/// <param name="NeedsHands">True when it takes one pair of hands from start to end.</param>
/// <param name="CanWait">How much later it could start with everything else kept in its lags.</param>
public sealed record TimelineStep(
    string Id, StepKind Kind, int Number, Instant Start, Instant End, bool NeedsHands, Duration CanWait);

/// <summary>How the timeline was found.</summary>
public enum TimelineQuality
{
    /// <summary>Placed backwards by a simple rule.</summary>
    Quick,
    BestFound,
    Proved,
}

/// <summary>What to do when, from shopping to the last pie. Empty of steps when the night cannot work: see the conflicts.</summary>
/// <param name="AnswerBy">When answers stop moving the dough: the start of mixing less shopping. Null without a dough.</param>
/// <param name="DoughCommitment">Mixing begins.</param>
/// <param name="ColdFermentLength">The cold ferment as scheduled: the shortest that any ball gets.</param>
/// <param name="LastPieAt">The last pie is on the table.</param>
public sealed record HostTimeline(
    IReadOnlyList<TimelineStep> Steps,
    Instant? AnswerBy,
    Instant? DoughCommitment,
    Duration ColdFermentLength,
    Instant? FirstPieAt,
    Instant? LastPieAt,
    TimelineQuality Quality,
    double GapPercent,
    int SolverSlices,
    IReadOnlyList<Conflict> Conflicts);
