using NodaTime;

namespace GameNight.Planning.Timeline;

public enum StepKind
{
    Shop,

    /// <summary>The part of the dough that ferments ahead is mixed.</summary>
    Preferment,

    /// <summary>Dry yeast is stirred into warm water of its own, and foams before it is mixed.</summary>
    WakeYeast,
    Mix,
    Knead,
    BulkRest,
    Ball,
    ColdFerment,
    Temper,
    Sauce,
    GrateCheese,
    PrepareToppings,

    /// <summary>The second dough is mixed, in its own bowl and on its own board.</summary>
    SecondMix,

    /// <summary>The second dough rises, as its pack says.</summary>
    SecondRise,
    Preheat,
    Soak,
    Shape,
    Top,
    Bake,
    Rack,
    Serve,

    /// <summary>A step of the host's own.</summary>
    Own,

    /// <summary>What was on the table stands no longer: eaten, or cool and put away by its end.</summary>
    PutAway,
}

/// <summary>One step of the host's timeline.</summary>
/// <param name="Id">Stable and readable: "mix-1", "bake-3", "preheat".</param>
/// <param name="Number">
/// Batch or pie number from 1, for <see cref="StepKind.Temper"/> the number of the wave of balls, for <see cref="StepKind.Own"/> its own;
/// 0 for steps there is one of.
/// </param>
/// <param name="End">For <see cref="StepKind.Temper"/> when the balls are ready; they may wait a while.</param>
/// <param name="NeedsHands">True when it takes one pair of hands from start to end.</param>
/// <param name="CanWait">
/// How much later it could start with every pie still on the table when planned: what comes after it moves along within its
/// lags and the host's free time. Hands are not looked at: of two steps that each can wait, perhaps only one does.
/// </param>
/// <param name="By">Whose hands: the number of a helper, from 1; null for the host's, and for none.</param>
public sealed record TimelineStep(
    string Id, StepKind Kind, int Number, Instant Start, Instant End, bool NeedsHands, Duration CanWait,
    int? By = null);

/// <summary>How the timeline was found.</summary>
public enum TimelineQuality
{
    /// <summary>Placed backwards by a simple rule.</summary>
    Quick,
    BestFound,
    Proved,
}

/// <summary>What to do when, from shopping to the last pie. Empty of steps when the night cannot work: see the conflicts.</summary>
/// <param name="AnswerBy">
/// When answers stop moving the dough: the half hour in which shopping begins, so that it does not move with every answer. Null
/// without a dough.
/// </param>
/// <param name="DoughCommitment">Mixing begins: of the preferment, where there is one, or of dry yeast into its water.</param>
/// <param name="ColdFermentLength">
/// The cold ferment as scheduled: the shortest that any ball gets, from the last balled to the first out.
/// </param>
/// <param name="FirstPieAt">The first pie is on the table: serving it ends.</param>
/// <param name="LastPieAt">The last pie is on the table.</param>
/// <param name="GapPercent">
/// How far the inconvenient minutes may be from the least possible; 0 when proved, and when nothing was tried.
/// </param>
/// <param name="SolverSlices">Slices of solver time used.</param>
/// <param name="OnTime">Null while it is not reckoned: in the quick plan, and without pies.</param>
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
    IReadOnlyList<Conflict> Conflicts,
    OnTimeChance? OnTime = null)
{
    /// <summary>When the first step of a kind begins; null when there is none.</summary>
    public Instant? Begins(StepKind kind) => Begins(Steps, kind);

    internal static Instant? Begins(IEnumerable<TimelineStep> steps, StepKind kind) =>
        steps.Where(step => step.Kind == kind).Select(step => (Instant?)step.Start).Min();

    /// <summary>Half hours of the clock; a figure of our own.</summary>
    private static readonly Duration AnswersCloseEvery = Duration.FromMinutes(30);

    /// <summary>
    /// Rounded down, and not to before the moment of planning: shopping that is due at once leaves the minutes there are.
    /// </summary>
    internal static Instant AnswersClose(Instant shopping, TimelineRequest request)
    {
        var close = Instant.FromUnixTimeTicks(
            shopping.ToUnixTimeTicks() - (shopping.ToUnixTimeTicks() % AnswersCloseEvery.BclCompatibleTicks));
        return request.BegunDough is null && close < request.Now ? shopping : close;
    }
}
