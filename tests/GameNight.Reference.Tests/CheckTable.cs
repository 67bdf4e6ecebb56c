using System.Globalization;
using System.Text;

namespace GameNight.Reference.Tests;

/// <summary>All checks in one table for people to read: what the source gives, what the engine says, and the difference.</summary>
internal static class CheckTable
{
    private const string Head = """
        # Numbers from outside, and ours

        Every row is run by `./gamenight test`, which also makes this table and fails when it is out of step. The tolerance is what
        a test allows (rounding of the source, difference of two laws), not the physical uncertainty; that is in
        [models.md](../models.md). "From memory" and "derived" are said in the source.

        | id | what | source | value | tolerance | ours | difference | unit |
        | --- | --- | --- | --- | --- | --- | --- | --- |

        """;

    public static string Of(IEnumerable<ReferenceCheck> checks, IReadOnlyDictionary<string, Func<double>> ours)
    {
        var table = new StringBuilder(Head);
        foreach (var check in checks.OrderBy(check => check.Id, StringComparer.Ordinal))
        {
            var answer = ours[check.Id]();
            table.Append(CultureInfo.InvariantCulture, $"| {check.Id} | {check.What} | {check.Source} | {Number(check.Expected)} | ");
            table.Append(CultureInfo.InvariantCulture, $"{Number(check.Tolerance)} | {Number(answer)} | {Difference(answer, check)} | {check.Unit} |\n");
        }

        return table.ToString();
    }

    /// <summary>Five digits: the same on every machine, whatever its arithmetic does in the sixteenth.</summary>
    private static string Number(double value) => value.ToString("G5", CultureInfo.InvariantCulture);

    /// <summary>To the digits that the tolerance is about: what lies below is noise.</summary>
    private static string Difference(double ours, ReferenceCheck check)
    {
        var digits = check.Tolerance > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(check.Tolerance)), 0, 9) : 0;
        var difference = Math.Round(ours - check.Expected, digits);
        return difference == 0 ? "0" : difference.ToString("+0.#########;-0.#########", CultureInfo.InvariantCulture);
    }
}
