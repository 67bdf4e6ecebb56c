using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>
/// A time around one night in which nobody's hands are in the kitchen. Only the times are kept, whatever a calendar called them.
/// </summary>
/// <param name="IsAtTable">A round of the game with everybody; else the host is away.</param>
public sealed record BusyTime(Instant From, Instant Until, bool IsAtTable)
{
    public const int Most = 100;

    /// <summary>Before the serving time; nothing of a night begins earlier.</summary>
    public static readonly Duration FurthestBefore = Duration.FromDays(6);

    public static readonly Duration FurthestAfter = Duration.FromDays(1);

    /// <summary>It ends after it begins, and lies where a step of the night could.</summary>
    public bool IsOf(Instant serveAt) => Until > From && From >= serveAt - FurthestBefore && Until <= serveAt + FurthestAfter;
}
