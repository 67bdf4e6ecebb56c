using System.Globalization;

namespace GameNight.Web.Wording;

/// <summary>The forms a word takes after a number, by the names of Unicode's CLDR. They end the keys of counted texts.</summary>
internal enum PluralForm
{
    One,
    Few,
    Many,
    Other,
}

/// <summary>Which form goes with which number: one rule for each language that is shipped (CLDR, plural rules, cardinal).</summary>
internal static class PluralRules
{
    private static readonly Dictionary<string, Func<double, PluralForm>> ByLanguage = new()
    {
        ["en"] = count => count == 1 ? PluralForm.One : PluralForm.Other,
    };

    public static bool Has(CultureInfo culture) => ByLanguage.ContainsKey(culture.TwoLetterISOLanguageName);

    /// <param name="count">The number as it is shown, already rounded.</param>
    public static PluralForm Of(double count) => ByLanguage[Language.Current.TwoLetterISOLanguageName](count);
}
