using NodaTime;

namespace GameNight.Planning.Fermentation;

/// <summary>
/// The serving time moved, and the dough that is begun is now in the cold for other hours than the host set. With its yeast
/// it then makes <paramref name="GasOfWanted"/> times the gas it should (1 is as wanted; the model is rough).
/// </summary>
public sealed record BegunDoughOffItsHours(
    Duration Cold, Duration Shortest, Duration Longest, double GasOfWanted) : Conflict;
