using GameNight.Planning;

namespace GameNight.Nights.ForHosts;

/// <summary>What came of saving something that another host may be editing too.</summary>
public abstract record SaveResult
{
    private SaveResult()
    {
    }

    public sealed record Saved : SaveResult;

    /// <summary>Another host saved the same thing meanwhile; nothing of this save was kept. Read it anew and compare.</summary>
    public sealed record ChangedMeanwhile : SaveResult;

    /// <summary>It is not there any more.</summary>
    public sealed record Gone : SaveResult;

    /// <summary>Values are outside their ranges; nothing was kept.</summary>
    public sealed record Refused(IReadOnlyList<SnapshotProblem> Problems) : SaveResult;
}
