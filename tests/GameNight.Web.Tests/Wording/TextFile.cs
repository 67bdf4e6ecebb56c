using System.Text.RegularExpressions;
using System.Xml.Linq;
using GameNight.TestKit;

namespace GameNight.Web.Tests.Wording;

/// <summary>One file of texts, as it lies in the source tree.</summary>
internal sealed partial record TextFile(string Area, string? Language, IReadOnlyDictionary<string, string> Texts)
{
    public static string Web { get; } = Path.GetFullPath(Path.Combine(SharedFolder.Root, "..", "src", "GameNight.Web"));

    public static IReadOnlyList<TextFile> All { get; } =
        [.. Directory.GetFiles(Path.Combine(Web, "Wording", "Texts"), "*.resx").Select(Read)];

    public static IEnumerable<TextFile> English => All.Where(file => file.Language is null);

    /// <summary>The numbers of the places in a text, each once.</summary>
    public static string Places(string text) => string.Join(',', PlacesOf(text));

    /// <summary>The same without the number that chose the form: "one" may be said in words.</summary>
    public static string PlacesBesideCount(string text) => string.Join(',', PlacesOf(text).Where(place => place != "0"));

    /// <summary>What is wrong with a translation of this file, one line for each finding.</summary>
    public IEnumerable<string> FaultsOf(TextFile translation)
    {
        foreach (var (key, text) in translation.Texts)
        {
            if ((Texts.GetValueOrDefault(key) ?? Texts.GetValueOrDefault(StemOf(key) + "Other")) is not { } english)
            {
                yield return $"{translation.Area}.{translation.Language}: {key} is not an English key";
            }
            else if (StemOf(key) != key ? PlacesBesideCount(english) != PlacesBesideCount(text) : Places(english) != Places(text))
            {
                yield return $"{translation.Area}.{translation.Language}: {key} has the places {Places(text)}, needs {Places(english)}";
            }
        }

        foreach (var key in Texts.Keys.Where(key => !translation.Texts.ContainsKey(key) && !key.EndsWith("One", StringComparison.Ordinal)))
        {
            yield return $"{translation.Area}.{translation.Language}: {key} is missing";
        }
    }

    public static string StemOf(string key) => PluralEnd().Replace(key, "");

    private static IEnumerable<string> PlacesOf(string text) =>
        Place().Matches(text).Select(match => match.Groups[1].Value).Distinct().Order(StringComparer.Ordinal);

    private static TextFile Read(string path)
    {
        var parts = Path.GetFileNameWithoutExtension(path).Split('.');
        return new TextFile(
            parts[0],
            parts.Length > 1 ? parts[1] : null,
            XDocument.Load(path).Root!.Elements("data")
                .ToDictionary(row => row.Attribute("name")!.Value, row => row.Element("value")!.Value));
    }

    [GeneratedRegex(@"\{(\d+)")]
    private static partial Regex Place();

    [GeneratedRegex("(One|Few|Many|Other)$")]
    private static partial Regex PluralEnd();
}
