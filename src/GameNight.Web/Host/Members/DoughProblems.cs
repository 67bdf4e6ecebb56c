using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Members;

/// <summary>The planner's findings about a dough, beside its fields: as they are typed there, in percent and in hours.</summary>
internal static class DoughProblems
{
    public static IReadOnlyDictionary<string, string> ByField(
        IEnumerable<SnapshotProblem> problems, DoughFormula formula, Measures measures) => problems
        .GroupBy(problem => problem.Field[(problem.Field.IndexOf('.', StringComparison.Ordinal) + 1)..])
        .ToDictionary(group => group.Key, group => Say(group.Key, group.First(), formula, measures));

    private static string Say(string field, SnapshotProblem problem, DoughFormula formula, Measures measures) => (field, problem) switch
    {
        ("flours", { Fault: SnapshotFault.OutOfRange }) => ProblemText.WithReason(
            Phrase.Fill(FormulaPages.FloursMakeWhole, QuantityText.Number(100 * problem.Given)), problem.Field),
        ("flours" or "extras", { Fault: SnapshotFault.WrongCount }) => Phrase.Fill(FormulaPages.MostRows, problem.High),
        ("preferment.waterPerFlour" or "soaker.waterPerFlour", { Fault: SnapshotFault.OutOfRange }) when IsAboutBoth(problem, formula.WaterAhead / formula.FlourAhead) =>
            Phrase.Fill(FormulaPages.TooMuchWaterAhead, Percent(formula.WaterAhead), Percent(problem.High * formula.FlourAhead)),
        ("preferment.ofFlour" or "soaker.ofFlour", { Fault: SnapshotFault.OutOfRange }) when IsAboutBoth(problem, formula.FlourAhead) =>
            Phrase.Fill(FormulaPages.TooMuchAhead, Percent(problem.High)),
        ("preferment.beforeMinutes", _) => ProblemText.SayHere(Times(problem, 1 / 60.0), measures),
        _ when IsShare(problem) => ProblemText.SayHere(Times(problem, 100), measures),
        _ => ProblemText.SayHere(problem, measures),
    };

    /// <summary>Preferment and soaker together are judged beside the field of one of them, from nothing up.</summary>
    private static bool IsAboutBoth(SnapshotProblem problem, double both) => problem.Low == 0 && problem.Given == both;

    private static bool IsShare(SnapshotProblem problem) =>
        problem.Fault == SnapshotFault.OutOfRange && problem.Field.StartsWith("formula.", StringComparison.Ordinal);

    private static SnapshotProblem Times(SnapshotProblem problem, double factor) => problem with
    {
        Given = Math.Round(problem.Given * factor, 4),
        Low = Math.Round(problem.Low * factor, 4),
        High = Math.Round(problem.High * factor, 4),
    };

    private static string Percent(double share) => QuantityText.Number(100 * share);
}
