using NodaTime;

namespace GameNight.Planning.Guests;

/// <summary>When a guest and their companions are there, if not from the first pie to the end.</summary>
/// <param name="ComesAfter">After the first pie, 0 to 24 h; null for who is there from the beginning.</param>
/// <param name="LeavesAfter">After the first pie, 0 to 24 h; null for who stays to the end.</param>
public sealed record Stay(Duration? ComesAfter = null, Duration? LeavesAfter = null);
