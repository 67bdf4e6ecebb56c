using GameNight.Nights.ForHosts;
using GameNight.Planning;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says what is wrong with a field, with the range that would be right.</summary>
public static class ProblemText
{
    public static string Say(SnapshotProblem problem) => problem.Fault switch
    {
        SnapshotFault.OutOfRange => $"{problem.Field} is {Range(problem.Given)}; it can be {Range(problem.Low)} to {Range(problem.High)}.",
        SnapshotFault.WrongCount => $"{problem.Field} has {Range(problem.Given)}; it can have {Range(problem.Low)} to {Range(problem.High)}.",
        SnapshotFault.Repeated => $"{problem.Field} holds the same id twice; each must be there once.",
        SnapshotFault.BadId => $"{problem.Field} holds an id that is empty or too long; 1 to {Range(problem.High)} characters are needed.",
        SnapshotFault.BackToFront => $"{problem.Field} runs backwards; the first value must not exceed the next.",
    };

    /// <summary>Beside the field itself, where its name would only be noise.</summary>
    public static string SayHere(SnapshotProblem problem) => Say(problem with { Field = "This" });

    /// <summary>What a quantity says of a number it refuses, without the programmer's part.</summary>
    public static string Say(ArgumentException problem) => problem.Message.Split(" (Parameter ")[0];

    public static string Say(DraftProblem problem) => problem.Fault switch
    {
        DraftFault.Missing => "Give the night a name.",
        DraftFault.TooLong => $"At most {Range(problem.High)} characters fit here.",
        DraftFault.UnknownZone => "This time zone is not known. Choose one such as Europe/Lisbon.",
        DraftFault.HasPassed => "This time has passed. Choose a serving time in the future.",
        DraftFault.TooFarAhead => "Choose a date within the next two years.",
        DraftFault.EndsBeforeServing => "The night ends before the first pie is served. Choose a later end.",
        DraftFault.OutOfRange => $"Choose a value from {Range(problem.Low)} to {Range(problem.High)}.",
        DraftFault.HoursBackToFront => "The shortest cold ferment must not exceed the wanted one, nor that the longest.",
        DraftFault.UnknownFormula => "Choose one of your doughs.",
    };

    private static string Range(double value) => Math.Abs(value) >= 1000 ? Whole(value) : value.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);
}
