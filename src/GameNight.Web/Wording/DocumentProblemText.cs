using System.Globalization;
using GameNight.Nights.Moving;

namespace GameNight.Web.Wording;

/// <summary>Says what is wrong at a place of a document, and what would be right.</summary>
public static class DocumentProblemText
{
    private const int LongestPath = 120;

    public static string Say(DocumentProblem problem) => $"{Place(problem.Path)}: {What(problem)}";

    private static string What(DocumentProblem problem) => problem.Fault switch
    {
        DocumentFault.Unreadable => problem.Said
            ?? "this cannot be read. The document is cut off or was changed by hand: download it again and bring it in unchanged.",
        DocumentFault.OutOfRange => $"this can be {Number(problem.Low)} to {Number(problem.High)}.",
        DocumentFault.WrongCount when problem.High == 0 => "nothing can stand here.",
        DocumentFault.WrongCount => $"{Number(problem.Low)} to {Number(problem.High)} are needed here.",
        DocumentFault.Repeated => "the same is here twice; each must be there once.",
        DocumentFault.BadId => "an id is empty or too long.",
        DocumentFault.BackToFront => "this runs backwards; the first value must not exceed the next.",
        DocumentFault.Missing => "something is needed here.",
        DocumentFault.TooLong => $"at most {Number(problem.High)} characters fit here.",
        DocumentFault.UnknownZone => "this time zone is not known. One such as Europe/Lisbon is needed.",
        DocumentFault.UnknownId => "this names something that is nowhere in the document.",
        DocumentFault.OutOfTime => "this date or time cannot be meant.",
    };

    /// <summary>The whole document has no name in it.</summary>
    private static string Place(string path) => path switch
    {
        "$" => "The document",
        { Length: > LongestPath } => $"{path[..LongestPath]}…",
        _ => path,
    };

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
