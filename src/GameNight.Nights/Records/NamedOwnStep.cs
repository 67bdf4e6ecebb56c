using GameNight.Planning.Timeline;

namespace GameNight.Nights.Records;

/// <summary>A step of the host's own for one night. Plans know its number, never its name.</summary>
/// <param name="Name">1 to <see cref="LongestName"/> characters, as the host typed it.</param>
public sealed record NamedOwnStep(string Name, OwnStep Step)
{
    public const int LongestName = 60;
}
