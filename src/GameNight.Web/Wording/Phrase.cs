using System.Globalization;
using System.Resources;

namespace GameNight.Web.Wording;

/// <summary>Fills the numbered places of a text from the resources.</summary>
internal static class Phrase
{
    /// <summary>Fills place 0 with itself, for <see cref="Around"/> to split a text whose other places are filled.</summary>
    public const string Kept = "{0}";

    public static string Fill(string text, params object?[] values) => string.Format(Language.Current, text, values);

    /// <summary>The text that fits a number, which is its place 0; what else is told follows from place 1.</summary>
    /// <param name="texts">The resources that hold it.</param>
    /// <param name="other">Key of the form "other", as <c>nameof(Amounts.PiesOther)</c>; the other forms share all but its end.</param>
    /// <param name="count">The number as it is shown, already rounded.</param>
    public static string Count(ResourceManager texts, string other, double count, params object?[] values) =>
        Count(texts, other, count, QuantityText.Number(count), values);

    /// <param name="shown">How the number is written, where that is not its plain form.</param>
    public static string Count(ResourceManager texts, string other, double count, string shown, object?[] values)
    {
        var stem = other[..^nameof(PluralForm.Other).Length];
        var culture = CultureInfo.CurrentUICulture;
        var text = texts.GetString(stem + PluralRules.Of(count), culture) ?? texts.GetString(other, culture)!;
        return Fill(text, [shown, .. values]);
    }

    /// <summary>What stands before and after place 0, for a value that is marked up.</summary>
    public static (string Before, string After) Around(string text)
    {
        var place = text.IndexOf(Kept, StringComparison.Ordinal);
        return (text[..place], text[(place + Kept.Length)..]);
    }

    /// <summary>For a label or the start of a line.</summary>
    public static string Capital(string text) =>
        text.Length == 0 ? text : char.ToUpper(text[0], Language.Current) + text[1..];
}
