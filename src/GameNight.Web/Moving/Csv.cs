using System.Buffers;
using System.Globalization;
using System.Text;

namespace GameNight.Web.Moving;

/// <summary>
/// Lists for spreadsheets after RFC 4180: UTF-8 with its mark, CRLF, numbers with a point, dates as ISO has them. A cell
/// that a spreadsheet would run as a formula gets an apostrophe in front; <see cref="Original"/> takes it off again.
/// </summary>
internal static class Csv
{
    private const char Apostrophe = '\'';

    private static readonly SearchValues<char> Quoted = SearchValues.Create(",\"\r\n");

    public static byte[] Write(IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<object?>> rows)
    {
        var text = new StringBuilder("\uFEFF");
        foreach (var row in rows.Prepend(heads))
        {
            text.AppendJoin(',', row.Select(cell => Cell(Convert.ToString(cell, CultureInfo.InvariantCulture) ?? ""))).Append("\r\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>An apostrophe of the text's own is doubled, so that taking one off always gives the text back.</summary>
    public static string Neutral(string cell) =>
        cell is [('=' or '+' or '-' or '@' or '\t' or '\r' or Apostrophe), ..] ? Apostrophe + cell : cell;

    public static string Original(string cell) => cell is [Apostrophe, .. var rest] ? rest : cell;

    private static string Cell(string text)
    {
        var neutral = Neutral(text);
        return neutral.AsSpan().ContainsAny(Quoted) ? $"\"{neutral.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : neutral;
    }
}
