using GameNight.Nights.ForHosts;
using GameNight.Planning;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>Says what is wrong with a field, with the range that would be right.</summary>
public static class ProblemText
{
    public static string Say(SnapshotProblem problem) => problem.Fault switch
    {
        SnapshotFault.OutOfRange => Fill(Problems.OutOfRange, problem.Field, Range(problem.Given), Range(problem.Low), Range(problem.High)),
        SnapshotFault.WrongCount => Fill(Problems.WrongCount, problem.Field, Range(problem.Given), Range(problem.Low), Range(problem.High)),
        SnapshotFault.Repeated => Fill(Problems.Repeated, problem.Field),
        SnapshotFault.BadId => Fill(Problems.BadId, problem.Field, Range(problem.High)),
        SnapshotFault.BackToFront => Fill(Problems.BackToFront, problem.Field),
    };

    /// <summary>Beside the field itself, where its name would only be noise.</summary>
    /// <param name="measures">What the reader types.</param>
    public static string SayHere(SnapshotProblem problem, Measures measures) =>
        Say(In(measures.UnitOf(problem.Field), problem) with { Field = Problems.ThisField });

    /// <summary>What a quantity says of a number it refuses, without the programmer's part.</summary>
    public static string Say(ArgumentException problem) => problem.Message.Split(" (Parameter ")[0];

    public static string Say(DraftProblem problem) => problem.Fault switch
    {
        DraftFault.Missing => Problems.NameMissing,
        DraftFault.TooLong => Fill(Problems.TooLong, Range(problem.High)),
        DraftFault.UnknownZone => Problems.UnknownZone,
        DraftFault.HasPassed => Problems.HasPassed,
        DraftFault.TooFarAhead => Problems.TooFarAhead,
        DraftFault.EndsBeforeServing => Problems.EndsBeforeServing,
        DraftFault.OutOfRange => Fill(Problems.ChooseInRange, Range(problem.Low), Range(problem.High)),
        DraftFault.HoursBackToFront => Problems.HoursBackToFront,
        DraftFault.UnknownFormula => Problems.UnknownFormula,
        DraftFault.FewerThanSeated => Fill(Problems.FewerThanSeated, Range(problem.Low)),
        DraftFault.PlayersBackToFront => Problems.PlayersBackToFront,
    };

    public static string TypeNumber(double low, double high) => Fill(Problems.TypeNumber, Range(low), Range(high));

    public static string TypeWholeNumber(int low, int high) => Fill(Problems.TypeWholeNumber, Range(low), Range(high));

    private static SnapshotProblem In(Unit? unit, SnapshotProblem problem) => unit is null ? problem : problem with
    {
        Given = Math.Round(unit.From(problem.Given), 2),
        Low = unit.LowestTyped(problem.Low),
        High = unit.HighestTyped(problem.High),
    };

    private static string Range(double value) => Math.Abs(value) >= 1000 ? QuantityText.Whole(value) : QuantityText.Exact(value);
}
