using GameNight.Planning.Timeline;

namespace GameNight.Nights.Records;

/// <summary>Somebody who helps the host on one night: a guest of theirs, a name, or just another pair of hands.</summary>
/// <param name="Guest">Null for who is not one of the group's guests; their name goes with them.</param>
/// <param name="Name">Of who is no guest; at most <see cref="LongestName"/> characters. Null for somebody without a name.</param>
public sealed record HelperOfNight(HelperSkill Skill, GuestId? Guest = null, string? Name = null)
{
    public const int Most = 7;
    public const int LongestName = 40;

    public bool HasName => Guest is not null || Name is not null;

    public HelperOfNight Unnamed() => this with { Guest = null, Name = null };
}
