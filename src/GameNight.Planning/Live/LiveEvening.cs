using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Live;

/// <summary>How far a step is.</summary>
public enum LiveState
{
    /// <summary>Its time has not come.</summary>
    Later,

    /// <summary>Its time has come and nobody said that it began.</summary>
    Due,

    /// <summary>It runs: begun by a tap, or because the hands it needs have nothing before it.</summary>
    Running,

    Done,
}

/// <summary>A step as it turned out, or as it is expected now.</summary>
/// <param name="Planned">As the plan had it.</param>
/// <param name="IsTapped">Somebody says when it begins or is done; the others follow from those.</param>
/// <param name="StartsItself">It only has to be begun: balls out, oven on. Its end comes by itself.</param>
public sealed record LiveStep(TimelineStep Planned, Instant Start, Instant End, LiveState State, bool IsTapped, bool StartsItself)
{
    public string Id => Planned.Id;
    public StepKind Kind => Planned.Kind;
    public int Number => Planned.Number;
}

/// <summary>What a clock runs down to.</summary>
public enum LiveClockKind
{
    /// <summary>The pie comes out.</summary>
    PieOut,

    /// <summary>The pie leaves the rack.</summary>
    OffTheRack,

    /// <summary>The surface has its heat back for the next pie.</summary>
    SurfaceReady,

    /// <summary>Balls are warm enough to shape.</summary>
    BallsReady,

    /// <summary>The air of the oven is hot.</summary>
    AirHot,

    /// <summary>Stone, steel or iron is ready.</summary>
    SurfaceSoaked,

    /// <summary>Woken yeast should foam by then.</summary>
    YeastFoams,

    /// <summary>The dough has rested and is balled.</summary>
    DoughRested,

    /// <summary>What is left on the table has stood as long as it may: of the first pie with number 1, of all with 0.</summary>
    PutAway,

    /// <summary>The host's own.</summary>
    Own,
}

/// <summary>A clock that runs, or has run out and not been heard.</summary>
/// <param name="Id">Stable, for hearing it and for ringing once.</param>
/// <param name="Number">Of the pie, wave or batch; 0 where there is one.</param>
/// <param name="Name">Of the host's own clock.</param>
public sealed record LiveClock(string Id, LiveClockKind Kind, int Number, Instant Ends, string? Name = null);

/// <summary>Something waits longer than is good for it, whatever is done now.</summary>
/// <param name="Waiting">The step whose outcome waits: a topped pie, a tempered ball.</param>
/// <param name="For">What it waits for.</param>
/// <param name="Over">So much longer than it should.</param>
public sealed record LiveRisk(StepKind Waiting, StepKind For, int Number, Duration Over);

/// <summary>Work that is left, in a new order.</summary>
/// <param name="Start">In the new order; <paramref name="Before"/> in the one that was kept.</param>
public sealed record LiveWork(StepKind Kind, int Number, Instant Start, Instant Before);

/// <summary>Another order of what is left.</summary>
/// <param name="Starts">Of every step by id, for the mark that takes it.</param>
/// <param name="Work">What is not begun, in the new order.</param>
/// <param name="LessOver">By so much less are limits of waiting broken, all together.</param>
/// <param name="LastPieAt">When the last pie is on the table then.</param>
/// <param name="Sooner">By so much sooner; negative when it is later.</param>
public sealed record LiveOrder(
    IReadOnlyDictionary<string, Instant> Starts, IReadOnlyList<LiveWork> Work, Duration LessOver, Instant LastPieAt, Duration Sooner);

/// <summary>The night as it stands: what is done, what runs, what comes when.</summary>
/// <param name="Steps">In the order in which they begin.</param>
/// <param name="Next">The step for a pair of hands now, or next; null when all is done.</param>
/// <param name="Clocks">Which rings first, first.</param>
/// <param name="LastPieAt">When the last pie is on the table, as things stand.</param>
/// <param name="Late">How much later than planned that is; zero when it is not.</param>
public sealed record LiveEvening(
    IReadOnlyList<LiveStep> Steps,
    LiveStep? Next,
    IReadOnlyList<LiveClock> Clocks,
    IReadOnlyList<LiveRisk> Risks,
    Instant LastPieAt,
    Duration Late,
    int Hands);
