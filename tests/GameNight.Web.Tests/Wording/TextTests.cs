using System.Text.RegularExpressions;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Wording;

public partial class TextTests
{
    private static readonly string Sources = string.Concat(
        new[] { "*.cs", "*.razor" }.SelectMany(pattern => Directory.GetFiles(TextFile.Web, pattern, SearchOption.AllDirectories))
            .Where(path => !path.Contains("/obj/", StringComparison.Ordinal))
            .Select(File.ReadAllText));

    public static TheoryData<string> Areas => [.. TextFile.English.Select(file => file.Area)];

    [Theory]
    [MemberData(nameof(Areas))]
    public void Every_text_is_said_somewhere(string area)
    {
        var file = TextFile.English.Single(file => file.Area == area);
        var said = Regex.Matches(Sources, $@"\b{area}\.(\w+)").Select(match => match.Groups[1].Value).ToHashSet();

        Assert.NotEmpty(file.Texts);
        Assert.All(file.Texts.Keys, key => Assert.True(
            said.Contains(key) || (key.EndsWith("One", StringComparison.Ordinal) && said.Contains(TextFile.StemOf(key) + "Other")),
            $"{area}.{key} is said nowhere"));
    }

    [Theory]
    [MemberData(nameof(Areas))]
    public void Counted_texts_have_both_English_forms_with_the_same_places(string area)
    {
        var texts = TextFile.English.Single(file => file.Area == area).Texts;
        var counted = Counted().Matches(Sources).Where(match => match.Groups[1].Value == area).Select(match => match.Groups[2].Value);

        Assert.All(counted.Distinct(), stem => Assert.Equal(
            TextFile.PlacesBesideCount(texts[stem + "Other"]), TextFile.PlacesBesideCount(texts[stem + "One"])));
        Assert.All(texts.Keys.Where(key => key.EndsWith("Other", StringComparison.Ordinal)), key => Assert.Contains(TextFile.StemOf(key), counted));
    }

    [Fact]
    public void Every_filled_text_is_handed_as_many_values_as_it_has_places()
    {
        var texts = TextFile.English.SelectMany(file => file.Texts.Select(text => (Key: $"{file.Area}.{text.Key}", text.Value)))
            .ToDictionary(text => text.Key, text => text.Value);
        var filled = Filled().Matches(Sources)
            .Select(match => (Key: match.Groups[1].Value, Values: ArgumentsFrom(match.Index + match.Length)))
            .ToList();

        Assert.NotEmpty(filled);
        Assert.All(filled, call => Assert.Equal(
            (call.Key, string.Join(',', Enumerable.Range(0, call.Values))), (call.Key, TextFile.Places(texts[call.Key]))));
    }

    [Fact]
    public void Every_shipped_language_has_a_plural_rule_and_translations_agree_with_the_English_texts()
    {
        Assert.Contains(Language.English, Language.Shipped);
        Assert.All(Language.Shipped, culture => Assert.True(PluralRules.Has(culture), $"no plural rule for {culture.Name}"));
        Assert.Empty(TextFile.All.Where(file => file.Language is not null)
            .SelectMany(file => TextFile.English.Single(english => english.Area == file.Area).FaultsOf(file)));
    }

    [Theory]
    [InlineData("Pies", "{0} pies", "{0} tartes", "")]
    [InlineData("Pies", "{0} pies", "tartes", "has the places , needs 0")]
    [InlineData("Pies", "{0} of {1}", "{1} de {0}", "")]
    [InlineData("Pies", "{0} of {1}", "{1} de {2}", "has the places 1,2, needs 0,1")]
    public void A_translation_keeps_the_places_but_not_their_order(string key, string english, string translated, string fault)
    {
        var faults = new TextFile("Sample", null, new Dictionary<string, string> { [key] = english })
            .FaultsOf(new TextFile("Sample", "fr", new Dictionary<string, string> { [key] = translated })).ToList();

        Assert.Equal(fault.Length == 0 ? 0 : 1, faults.Count);
        Assert.All(faults, found => Assert.Contains(fault, found, StringComparison.Ordinal));
    }

    [Fact]
    public void A_translation_may_have_more_plural_forms_and_must_not_lack_a_text()
    {
        var english = new TextFile("Sample", null, new Dictionary<string, string> { ["PiesOne"] = "{0} pie", ["PiesOther"] = "{0} pies" });

        Assert.Empty(english.FaultsOf(new TextFile("Sample", "pl", new Dictionary<string, string> { ["PiesFew"] = "{0} pizze", ["PiesOther"] = "pizz" })));
        Assert.Single(english.FaultsOf(new TextFile("Sample", "pl", new Dictionary<string, string> { ["PiesFew"] = "{0} pizze" })));
        Assert.Single(english.FaultsOf(new TextFile("Sample", "pl", new Dictionary<string, string> { ["PiesOther"] = "{0}", ["Pizze"] = "pizze" })));
    }

    /// <summary>Counts the arguments from here to the parenthesis that closes the call.</summary>
    private static int ArgumentsFrom(int index)
    {
        var (depth, commas, inText) = (0, 0, false);
        for (; ; index++)
        {
            var letter = Sources[index];
            inText ^= letter == '"';
            if (inText)
            {
                continue;
            }

            depth += letter is '(' or '[' or '{' ? 1 : letter is ')' or ']' or '}' ? -1 : 0;
            commas += letter == ',' && depth == 0 ? 1 : 0;
            if (depth < 0)
            {
                return commas;
            }
        }
    }

    [GeneratedRegex(@"nameof\((\w+)\.(\w+)Other\)")]
    private static partial Regex Counted();

    [GeneratedRegex(@"\bFill\(\s*(\w+\.\w+)(?=[,)])")]
    private static partial Regex Filled();
}
