namespace GameNight.Planning;

/// <summary>
/// A value the host may overrule, with the reasons for it. <see cref="Proposed"/> is what the models say;
/// <see cref="Value"/> is what counts.
/// </summary>
public sealed record Explained<T>(T Value, T Proposed, bool IsByHand, IReadOnlyList<Reason> Because)
    where T : struct;

public static class Explained
{
    /// <summary>The host's own value when there is one, else the proposed one.</summary>
    public static Explained<T> Decide<T>(T? byHand, T proposed, params IReadOnlyList<Reason> because)
        where T : struct => new(byHand ?? proposed, proposed, byHand is not null, because);
}
