using GameNight.Nights.Moving;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>Says what is wrong at a place of a document, and what would be right.</summary>
public static class DocumentProblemText
{
    private const int LongestPath = 120;

    public static string Say(DocumentProblem problem) => Fill(MovingPages.ProblemAt, Place(problem.Path), What(problem));

    private static string What(DocumentProblem problem) => problem.Fault switch
    {
        DocumentFault.Unreadable => problem.Said ?? MovingPages.Unreadable,
        DocumentFault.OutOfRange => ProblemText.WithReason(
            Fill(MovingPages.OutOfRange, QuantityText.Exact(problem.Low), QuantityText.Exact(problem.High)), problem.Path),
        DocumentFault.WrongCount when problem.High == 0 => MovingPages.NothingCanStandHere,
        DocumentFault.WrongCount => Fill(MovingPages.WrongCount, QuantityText.Exact(problem.Low), QuantityText.Exact(problem.High)),
        DocumentFault.Repeated => MovingPages.Repeated,
        DocumentFault.BadId => MovingPages.BadId,
        DocumentFault.BackToFront => MovingPages.BackToFront,
        DocumentFault.Missing => MovingPages.Missing,
        DocumentFault.TooLong => Fill(MovingPages.TooLong, QuantityText.Exact(problem.High)),
        DocumentFault.UnknownZone => MovingPages.UnknownZone,
        DocumentFault.UnknownId => MovingPages.UnknownId,
        DocumentFault.OutOfTime => MovingPages.OutOfTime,
    };

    /// <summary>The whole document has no name in it.</summary>
    private static string Place(string path) => path switch
    {
        "$" => MovingPages.WholeDocument,
        { Length: > LongestPath } => $"{path[..LongestPath]}…",
        _ => path,
    };
}
