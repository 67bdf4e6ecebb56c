namespace GameNight.Nights.PastNights;

/// <summary>What is wrong with one field of what a host writes down after a night.</summary>
public enum LogFault
{
    OutOfRange,
    TooLong,

    /// <summary>More is left of the single pies than is left in all.</summary>
    LessThanItsPies,

    /// <summary>Nobody of this group.</summary>
    UnknownGuest,

    /// <summary>No pie of the plan.</summary>
    UnknownPie,
}

/// <param name="Subject">Number of the pie, or id of the guest; null when it is about the night.</param>
public sealed record LogProblem(LogField Field, string? Subject, LogFault Fault, double Low = 0, double High = 0);

public enum LogField
{
    Heads,
    Baked,
    Left,
    LeftOfPie,
    Remark,
    ToChange,
}

/// <summary>What came of writing down how a night went.</summary>
public abstract record LogResult
{
    private LogResult()
    {
    }

    public sealed record Written : LogResult;

    /// <summary>Another host wrote it down meanwhile; nothing of this one is kept. Read it anew and compare.</summary>
    public sealed record ChangedMeanwhile : LogResult;

    /// <summary>Not served yet, or called off.</summary>
    public sealed record NotServed : LogResult;

    public sealed record Gone : LogResult;

    public sealed record Refused(IReadOnlyList<LogProblem> Problems) : LogResult;
}
