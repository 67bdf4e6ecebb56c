namespace GameNight.Planning;

/// <summary>What is wrong with one field of a snapshot.</summary>
public enum SnapshotFault
{
    /// <summary>Outside <see cref="SnapshotProblem.Low"/> to <see cref="SnapshotProblem.High"/>.</summary>
    OutOfRange,

    /// <summary>A list is longer or shorter than allowed.</summary>
    WrongCount,

    /// <summary>An id occurs twice.</summary>
    Repeated,

    /// <summary>An id is empty or longer than 64 characters.</summary>
    BadId,

    /// <summary>An interval ends before it starts, a low exceeds a high, or what is in the order of time is not.</summary>
    BackToFront,

    /// <summary>A fridge that is warmer than the room, which is <see cref="SnapshotProblem.High"/>.</summary>
    WarmerThanRoom,

    /// <summary>Taken before the dough was mixed.</summary>
    BeforeMixing,

    /// <summary>Taken at a time that is still to come.</summary>
    InTheFuture,

    /// <summary>Steps that each come after the other, or after themselves.</summary>
    Circle,

    /// <summary>It names a step that is not there.</summary>
    UnknownStep,

    /// <summary>Nothing says when.</summary>
    NoTime,
}

/// <summary>One problem of a snapshot, as data: field path in JSON terms, fault, the given value and the valid range.</summary>
/// <param name="IsAboveLow">The value must be more than <paramref name="Low"/>, not just as much.</param>
public sealed record SnapshotProblem(
    string Field, SnapshotFault Fault, double Given = 0, double Low = 0, double High = 0, bool IsAboveLow = false)
{
    /// <summary>Why the range is what it is; null for faults that are about no range.</summary>
    public RangeReason? Why => Fault switch
    {
        SnapshotFault.OutOfRange => RangeReasons.Of(Field),
        SnapshotFault.WrongCount => RangeReasons.OfCount(Field),
        _ => null,
    };
}
