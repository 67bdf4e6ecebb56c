using System.Globalization;
using GameNight.Planning;
using GameNight.Web.Wording;

namespace GameNight.Web.Host;

/// <summary>
/// Reads numbers that a host typed and collects what cannot be read. Comma and point both separate decimals.
/// </summary>
/// <param name="path">What the fields are part of in JSON terms: finds why their ranges end where they do.</param>
public sealed class TypedNumbers(string path = "")
{
    private readonly Dictionary<string, string> _problems = [];

    public IReadOnlyDictionary<string, string> Problems => _problems;

    public static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>Notes what is wrong with a field that is no number, or no number alone.</summary>
    public void Refuse(string field, string problem) => _problems[field] = problem;

    /// <returns>The number, or <paramref name="low"/> with a problem noted.</returns>
    public double Read(string field, string text, double low, double high)
    {
        var plain = text.Trim().Replace(',', '.');
        if (double.TryParse(plain, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            && double.IsFinite(value) && value >= low && value <= high)
        {
            return value;
        }

        _problems[field] = ProblemText.TypeNumber(low, high, $"{path}.{field}");
        return low;
    }

    /// <summary>Reads what was typed in the host's own unit; limits and result are in the unit that is kept.</summary>
    /// <param name="shown">What the field showed, unrounded: as long as its text is untouched, nothing changes.</param>
    public double Read(string field, string text, double low, double high, Unit unit, double? shown = null)
    {
        if (shown is { } kept && text == unit.Typed(kept) && kept >= low && kept <= high)
        {
            return kept;
        }

        var typed = Read(field, text, unit.LowestTyped(low), unit.HighestTyped(high));
        return Math.Clamp(unit.ToKept(typed), low, high);
    }

    public int ReadWhole(string field, string text, int low, int high)
    {
        var value = Read(field, text, low, high);
        if (value != Math.Floor(value))
        {
            _problems[field] = ProblemText.TypeWholeNumber(low, high, $"{path}.{field}");
            return low;
        }

        return (int)value;
    }

    /// <summary>Puts the planner's own findings beside the field they are about (by the last part of its path).</summary>
    public static Dictionary<string, string> ByField(IEnumerable<SnapshotProblem> problems, Measures measures) => problems
        .GroupBy(problem => problem.Field[(problem.Field.LastIndexOf('.') + 1)..])
        .ToDictionary(group => group.Key, group => ProblemText.SayHere(group.First(), measures));
}
