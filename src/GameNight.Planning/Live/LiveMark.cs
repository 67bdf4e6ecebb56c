using GameNight.Planning.Timeline;
using NodaTime;

namespace GameNight.Planning.Live;

/// <summary>What a mark says.</summary>
public enum LiveMarkKind
{
    /// <summary>The step began: balls are out, the oven is on.</summary>
    StepBegun,

    /// <summary>The step is done. A topped pie that is done is in the oven.</summary>
    StepDone,

    /// <summary>Work with hands goes on at that moment at the earliest: the host is late, or sits at the table.</summary>
    NotBefore,

    /// <summary>A clock of the host's own, with a name.</summary>
    ClockSet,

    /// <summary>A clock that rang was heard.</summary>
    ClockHeard,

    /// <summary>So many pairs of hands from now on: a helper came or left.</summary>
    HandsNow,

    /// <summary>A step went wrong in a known way; the step begins, or ends, later for it.</summary>
    WentWrong,

    /// <summary>What is left goes on in another order; the steps begin at <see cref="LiveMark.Starts"/> where they can.</summary>
    NewOrder,
}

/// <summary>One tap of the night. What was taken back is not among them.</summary>
/// <param name="Id">Of the tap: a repeat of it is the same mark.</param>
/// <param name="Step">The step's id, or that of a clock; null where the mark is of the whole night.</param>
/// <param name="Until">For <see cref="LiveMarkKind.NotBefore"/> and <see cref="LiveMarkKind.ClockSet"/>.</param>
/// <param name="Name">Of a clock of the host's own.</param>
/// <param name="Hands">1 to 8, for <see cref="LiveMarkKind.HandsNow"/>.</param>
/// <param name="Starts">Of every step by id, for <see cref="LiveMarkKind.NewOrder"/>. With other steps than the plan's the mark says nothing.</param>
public sealed record LiveMark(
    string Id,
    Instant At,
    LiveMarkKind Kind,
    string? Step = null,
    Instant? Until = null,
    string? Name = null,
    int? Hands = null,
    StepTrouble? Trouble = null,
    IReadOnlyDictionary<string, Instant>? Starts = null);
