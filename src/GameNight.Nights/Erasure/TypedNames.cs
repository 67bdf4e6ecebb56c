using System.Text.RegularExpressions;
using GameNight.Nights.Records;

namespace GameNight.Nights.Erasure;

/// <summary>A guest's name in what hosts type as they go: names of their own steps and clocks. It goes with the guest; the rest stays.</summary>
internal static class TypedNames
{
    private const string Gone = "…";

    /// <summary>People are called by the first word of their name; a shorter one is too easily another word.</summary>
    private const int LeastLetters = 3;

    /// <summary>Not within a longer word: who is called Ro is not in every roast.</summary>
    public static bool IsIn(string? text, string? name) => text is not null && Of(name) is { } pattern && pattern.IsMatch(text);

    public static string Without(string text, string name) => Of(name)?.Replace(text, Gone) ?? text;

    public static bool IsIn(NightOverrides overrides, string? name) => overrides.Own?.Any(own => IsIn(own.Name, name)) == true;

    public static NightOverrides Without(NightOverrides overrides, string name) =>
        overrides with { Own = overrides.Own?.Select(own => own with { Name = Without(own.Name, name) }).ToList() };

    private static Regex? Of(string? name)
    {
        if (string.IsNullOrWhiteSpace(name))
        {
            return null;
        }

        string[] words = name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var called = string.Join('|', new[] { name.Trim(), words[0] }.Where((one, index) => index == 0 || one.Length >= LeastLetters).Distinct().Select(Regex.Escape));
        return new Regex($@"(?<!\w)(?:{called})(?!\w)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));
    }
}
