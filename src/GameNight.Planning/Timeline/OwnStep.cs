using NodaTime;

namespace GameNight.Planning.Timeline;

/// <summary>What an own step comes before or after: all steps of a kind that the plan has, or one other own step.</summary>
/// <param name="Number">Of the own step, where <paramref name="Step"/> is <see cref="StepKind.Own"/>; else null.</param>
public sealed record StepTie(StepKind Step, int? Number = null)
{
    /// <summary>Kinds with a start of their own; rests and racks only follow from others.</summary>
    public static IReadOnlyList<StepKind> Kinds { get; } =
    [
        StepKind.Shop, StepKind.Mix, StepKind.Knead, StepKind.Ball, StepKind.Sauce, StepKind.PrepareToppings, StepKind.GrateCheese,
        StepKind.Temper, StepKind.Preheat, StepKind.Shape, StepKind.Top, StepKind.Bake, StepKind.Serve,
    ];
}

/// <summary>What a step takes besides hands, from its start to its end.</summary>
public enum Station
{
    /// <summary>A ring of the hob.</summary>
    Hob,

    /// <summary>The oven, at another heat than the pies': before it is heated up for them, or after the last one.</summary>
    OvenAtOtherHeat,
}

/// <summary>
/// A step of the host's own, put among the planned ones: the chairs are fetched, the garden lit. It is named where the night is
/// kept. At least one limit says when.
/// </summary>
/// <param name="Number">1 to <see cref="HighestNumber"/>, its own as long as it is there.</param>
/// <param name="Length">1 minute to <see cref="Longest"/>.</param>
/// <param name="NeedsHands">One pair of hands from start to end; else it is only begun.</param>
/// <param name="From">It begins then or later. With an <paramref name="Until"/> just its length away: at that time.</param>
/// <param name="Until">It has ended by then.</param>
/// <param name="After">It begins when all of these have ended, and within a day.</param>
/// <param name="Before">It has ended when the first of these begins.</param>
/// <param name="Who">Whose hands: 0 for the host, else the number of a helper; null for anybody's.</param>
/// <param name="Takes">Null when it takes neither hob nor oven.</param>
public sealed record OwnStep(
    int Number, Duration Length, bool NeedsHands, Instant? From = null, Instant? Until = null, StepTie? After = null, StepTie? Before = null,
    int? Who = null, Station? Takes = null)
{
    public const int Most = 20;
    public const int HighestNumber = 999_999;

    /// <summary>What takes longer is two steps with a rest between them.</summary>
    public static readonly Duration Longest = Duration.FromHours(12);

    public bool HasLimit => From is not null || Until is not null || After is not null || Before is not null;

    /// <summary>Numbers of own steps that this one names on either side.</summary>
    public IEnumerable<int> Names => new[] { After, Before }.Where(tie => tie?.Step == StepKind.Own).Select(tie => tie!.Number ?? 0);
}

/// <summary>
/// An own step that the night has no room for, and that the plan goes without. Of it: <paramref name="NearestFree"/> is the
/// closest time at which it would fit, from which on nothing else is moved.
/// </summary>
/// <param name="WindowFrom">It could begin from then, by its own limits; null when they leave no time at all.</param>
/// <param name="WindowUntil">It would have to end by then.</param>
/// <param name="TakenBy">What the hands do in that time, three kinds at most; none when they are not there at all.</param>
/// <param name="OvenTakenFrom">The pies have the oven from then; null when the step does not need it.</param>
/// <param name="OvenTakenUntil">The pies have the oven until then.</param>
public sealed record OwnStepFindsNoRoom(
    int Number, Instant? WindowFrom, Instant? WindowUntil, IReadOnlyList<StepKind> TakenBy, Instant? NearestFree,
    Instant? OvenTakenFrom = null, Instant? OvenTakenUntil = null) : Conflict;
