using GameNight.Nights.ForHosts;
using GameNight.Planning;

namespace GameNight.Nights.Moving;

/// <summary>What is wrong at one place of a document.</summary>
public enum DocumentFault
{
    /// <summary>Not JSON, cut off, unknown, or not of its kind.</summary>
    Unreadable,
    OutOfRange,
    WrongCount,
    Repeated,
    BadId,
    BackToFront,
    Missing,
    TooLong,
    UnknownZone,

    /// <summary>An id that nothing in the document has.</summary>
    UnknownId,

    /// <summary>A moment or date that cannot be meant.</summary>
    OutOfTime,
}

/// <summary>One problem of a document, as data: where it is in JSON terms, and the range that would be right.</summary>
/// <param name="Path">Such as <c>$.nights[3].facts.title</c>.</param>
/// <param name="Said">What the contract says of it, in a sentence; null when the fault says it all.</param>
public sealed record DocumentProblem(string Path, DocumentFault Fault, double Low = 0, double High = 0, string? Said = null)
{
    internal static DocumentProblem At(string path, SnapshotProblem problem) => new(
        $"{path}.{problem.Field}",
        problem.Fault switch
        {
            SnapshotFault.OutOfRange => DocumentFault.OutOfRange,
            SnapshotFault.WrongCount => DocumentFault.WrongCount,
            SnapshotFault.Repeated => DocumentFault.Repeated,
            SnapshotFault.BadId => DocumentFault.BadId,
            SnapshotFault.BackToFront or SnapshotFault.Circle => DocumentFault.BackToFront,
            SnapshotFault.UnknownStep => DocumentFault.UnknownId,
            SnapshotFault.NoTime => DocumentFault.Missing,
            SnapshotFault.WarmerThanRoom => DocumentFault.OutOfRange,
            SnapshotFault.BeforeMixing or SnapshotFault.InTheFuture => DocumentFault.OutOfTime,
        },
        problem.Low,
        problem.High);

    internal static DocumentProblem At(string path, DraftProblem problem) => new(
        $"{path}.{problem.Field}",
        problem.Fault switch
        {
            DraftFault.Missing => DocumentFault.Missing,
            DraftFault.TooLong => DocumentFault.TooLong,
            DraftFault.UnknownZone => DocumentFault.UnknownZone,
            DraftFault.HasPassed or DraftFault.TooFarAhead => DocumentFault.OutOfTime,
            DraftFault.EndsBeforeServing or DraftFault.HoursBackToFront or DraftFault.PlayersBackToFront => DocumentFault.BackToFront,
            DraftFault.OutOfRange or DraftFault.FewerThanSeated => DocumentFault.OutOfRange,
            DraftFault.UnknownFormula => DocumentFault.UnknownId,
        },
        problem.Low,
        problem.High);
}
