using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>
/// Mixing would have to have begun before now for the shortest cold ferment. What would work: serving at
/// <paramref name="EarliestServeAt"/>, or a shorter dough that is ready <paramref name="HoursPossible"/> after mixing: from the
/// earliest mixing, with shopping before it, to the shaping of the first pie. <paramref name="ColdPossible"/> of them could be cold,
/// in whole hours; null when even a dough without cold hours would not be ready.
/// </summary>
public sealed record TooLateForColdFerment(
    Instant NeededMixAt, Instant EarliestServeAt, Duration HoursPossible, Duration? ColdPossible = null) : Conflict;

/// <summary>The serving time has passed.</summary>
public sealed record ServingTimeHasPassed(Instant ServeAt) : Conflict;

/// <summary>
/// The host has no free time where a step must happen. <paramref name="NearestFree"/> is the closest time outside the window
/// at which it would fit; <paramref name="ServeAtThen"/> is the serving time that would make it work, if one was found. When
/// the hours stand in the way of several steps, up to three kinds of them are named. <paramref name="HandsThen"/> pairs of hands
/// would make it work as it is; null when no number of them would. Any one of <paramref name="FreeThen"/>, were it free, would as
/// well; null when none of the day's would.
/// </summary>
public sealed record NoFreeHands(
    StepKind Step, int Number, Instant WindowFrom, Instant WindowUntil, Instant? NearestFree, Instant? ServeAtThen,
    int? HandsThen = null, IReadOnlyList<HostAway>? FreeThen = null) : Conflict;

/// <summary>The lags contradict each other: the named steps form a cycle that is too long by <paramref name="By"/>.</summary>
public sealed record RulesClash(IReadOnlyList<StepKind> Steps, Duration By) : Conflict;

/// <summary>The host's own mixing time leaves a cold ferment outside its window.</summary>
public sealed record ChosenMixTimeDoesNotFit(Instant MixAt, Instant EarliestMixAt, Instant LatestMixAt) : Conflict;

/// <summary>
/// A notice: the last pie is on the table this long after the first. <paramref name="PiesPerBakeNeeded"/> pies at once with
/// <paramref name="HandsNeeded"/> hands would bring it in time; both null when nothing a kitchen has would.
/// </summary>
public sealed record LastPieIsLate(Duration AfterFirst, int? PiesPerBakeNeeded, int? HandsNeeded) : Conflict;
