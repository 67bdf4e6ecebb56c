using System.Text.RegularExpressions;
using GameNight.Nights.ForHosts;
using GameNight.Planning;
using GameNight.Planning.Foods;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>Says what is wrong with a field, with the range that would be right.</summary>
public static partial class ProblemText
{
    /// <summary>The field, what it is, what it can be, and why.</summary>
    public static string Say(SnapshotProblem problem) => Say(problem, problem.Field);

    private static string Say(SnapshotProblem problem, string name) => With(WhyOf(problem.Field, problem.Why), problem.Fault switch
    {
        SnapshotFault.OutOfRange when problem.IsAboveLow =>
            Fill(Problems.AboveRange, name, Range(problem.Given), Range(problem.Low), Range(problem.High)),
        SnapshotFault.OutOfRange => Fill(Problems.OutOfRange, name, Range(problem.Given), Range(problem.Low), Range(problem.High)),
        SnapshotFault.WrongCount => Fill(Problems.WrongCount, name, Range(problem.Given), Range(problem.Low), Range(problem.High)),
        SnapshotFault.Repeated => Fill(Problems.Repeated, name),
        SnapshotFault.BadId => Fill(Problems.BadId, name, Range(problem.High)),
        SnapshotFault.BackToFront => Fill(Problems.BackToFront, name),
        SnapshotFault.WarmerThanRoom => Fill(Problems.WarmerThanRoom, name, Range(problem.Given), Range(problem.High), Range(problem.Low)),
        SnapshotFault.BeforeMixing => Fill(Problems.BeforeMixing, name),
        SnapshotFault.InTheFuture => Fill(Problems.InTheFuture, name),
        SnapshotFault.Circle => Fill(Problems.Circle, name),
        SnapshotFault.UnknownStep => Fill(Problems.UnknownStep, name),
        SnapshotFault.NoTime => Fill(Problems.NoTime, name),
    });

    /// <summary>What to do about a fridge as it is typed, in the unit of the reader.</summary>
    public static string WarmerThanRoom(double fridgeCelsius, double roomCelsius, Measures measures) =>
        SayHere(new SnapshotProblem("kitchen.fridgeCelsius", SnapshotFault.WarmerThanRoom, fridgeCelsius, -1, roomCelsius), measures);

    /// <summary>Beside the field itself, where its name would only be noise.</summary>
    /// <param name="measures">What the reader types.</param>
    public static string SayHere(SnapshotProblem problem, Measures measures) =>
        Say(In(measures.UnitOf(problem.Field), problem), Problems.ThisField);

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
        DraftFault.OutOfRange => WithReason(Fill(Problems.ChooseInRange, Range(problem.Low), Range(problem.High)), $"draft.{problem.Field}"),
        DraftFault.HoursBackToFront => Problems.HoursBackToFront,
        DraftFault.UnknownFormula => Problems.UnknownFormula,
        DraftFault.FewerThanSeated => Fill(Problems.FewerThanSeated, Range(problem.Low)),
        DraftFault.PlayersBackToFront => Problems.PlayersBackToFront,
    };

    /// <param name="field">Whose range it is: says why it ends there.</param>
    public static string TypeNumber(double low, double high, string field = "") =>
        With(WhyOf(field, RangeReasons.Of(field)), Fill(Problems.TypeNumber, Range(low), Range(high)));

    public static string TypeWholeNumber(int low, int high, string field = "") =>
        With(WhyOf(field, RangeReasons.Of(field)), Fill(Problems.TypeWholeNumber, Range(low), Range(high)));

    /// <summary>A sentence with the reason of the range of that field, if it has one.</summary>
    public static string WithReason(string sentence, string field) => With(WhyOf(field, RangeReasons.Of(field)), sentence);

    /// <summary>Parts of a sauce have reasons of their own.</summary>
    private static string? WhyOf(string field, RangeReason? why) =>
        why == RangeReason.SaucePart && FoodIn().Match(field) is { Success: true } part && Enum.TryParse<Food>(part.Groups[1].Value, true, out var food)
            && FoodText.WhyNoMore(food) is { } known ? known
        : why is { } reason ? RangeReasonText.Say(reason)
        : null;

    private static string With(string? why, string sentence) => why is null ? sentence : Fill(Problems.WithReason, sentence, why);

    private static SnapshotProblem In(Unit? unit, SnapshotProblem problem) => unit is null ? problem : problem with
    {
        Given = Math.Round(unit.From(problem.Given), 2),
        Low = unit.LowestTyped(problem.Low),
        High = unit.HighestTyped(problem.High),
    };

    private static string Range(double value) => Math.Abs(value) >= 1000 ? QuantityText.Whole(value) : QuantityText.Exact(value);

    [GeneratedRegex(@"parts\[(\w+)\]\.grams$")]
    private static partial Regex FoodIn();
}
