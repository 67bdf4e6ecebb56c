using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Resources;
using System.Text.RegularExpressions;

namespace GameNight.WideLetters;

/// <summary>
/// A language that shows what does not come from the resources: it says every text in wide letters between brackets. Only who
/// asks for its culture sees it.
/// </summary>
public sealed partial class PseudoLanguage : ResourceManager
{
    private const int ToWide = 'Ａ' - 'A';

    private readonly ResourceManager _english;

    private PseudoLanguage(ResourceManager english)
    {
        _english = english;
    }

    private static Assembly Web => Assembly.Load("GameNight.Web");

    public static CultureInfo Culture { get; } = CultureInfo.GetCultureInfo("qps-Ploc");

    /// <summary>Puts itself between the classes of texts and their resources, once.</summary>
    public static void Install()
    {
        foreach (var texts in Classes())
        {
            var field = texts.GetField("resourceMan", BindingFlags.NonPublic | BindingFlags.Static)!;
            var manager = (ResourceManager)texts.GetProperty("ResourceManager", BindingFlags.NonPublic | BindingFlags.Static)!.GetValue(null)!;
            if (manager is not PseudoLanguage)
            {
                field.SetValue(null, new PseudoLanguage(manager));
            }
        }

        // It counts as English does, like any language that is shipped with a rule.
        var rules = (IDictionary)Web.GetType("GameNight.Web.Wording.PluralRules")!
            .GetField("ByLanguage", BindingFlags.NonPublic | BindingFlags.Static)!.GetValue(null)!;
        rules[Culture.TwoLetterISOLanguageName] = rules["en"];
    }

    private static IEnumerable<Type> Classes() => Web.GetTypes()
        .Where(type => type.Namespace == "GameNight.Web.Wording.Texts" && type.GetField("resourceMan", BindingFlags.NonPublic | BindingFlags.Static) is not null);

    public override string? GetString(string name, CultureInfo? culture)
    {
        var english = _english.GetString(name, CultureInfo.InvariantCulture);
        return !Culture.Equals(culture ?? CultureInfo.CurrentUICulture) || english is null || name.EndsWith("Pattern", StringComparison.Ordinal)
            ? english
            : $"⟦{Letter().Replace(english, match => ((char)(match.Value[0] + ToWide)).ToString())}⟧";
    }

    /// <summary>What was said without the resources: letters that are plain, or that stand outside every pair of brackets.</summary>
    /// <param name="shown">What a reader sees, in the order of reading.</param>
    /// <param name="given">Names and the like, which people gave and nobody translates.</param>
    public static string Foreign(string shown, IEnumerable<string> given)
    {
        var left = given.Concat(DatesOf(CultureInfo.InvariantCulture)).OrderByDescending(word => word.Length)
            .Aggregate(shown, (text, word) => Regex.Replace(text, $@"(?<![A-Za-z]){Regex.Escape(word)}(?![A-Za-z])", "#"));
        var inside = Brackets().Replace(left, "");
        while (inside.Length < left.Length)
        {
            var plain = string.Concat(left.Where(char.IsAsciiLetter));
            if (plain.Length > 0)
            {
                return left;
            }

            (left, inside) = (inside, Brackets().Replace(inside, ""));
        }

        return left.Any(char.IsLetter) ? left : "";
    }

    private static IEnumerable<string> DatesOf(CultureInfo culture) => culture.DateTimeFormat.DayNames
        .Concat(culture.DateTimeFormat.AbbreviatedDayNames)
        .Concat(culture.DateTimeFormat.MonthNames)
        .Concat(culture.DateTimeFormat.AbbreviatedMonthNames)
        .Where(name => name.Length > 0);

    [GeneratedRegex(@"(?<!\{[^}]*)[A-Za-z](?![^{]*\})")]
    private static partial Regex Letter();

    [GeneratedRegex("⟦[^⟦⟧]*⟧")]
    private static partial Regex Brackets();
}
