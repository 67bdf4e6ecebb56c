using System.Text.Json;
using System.Text.RegularExpressions;
using GameNight.Planning;
using GameNight.TestKit;
using GameNight.Web.Wording;
using Json.Schema;

namespace GameNight.Rules.Tests;

public partial class TreeTests
{
    private const int LongestFile = 400;

    /// <summary>The tables of the planner, and the one that only what is shown needs.</summary>
    public static TheoryData<string> Tables => [.. ReferenceTables.Files, Household.Table];

    [Fact]
    public void No_source_file_is_longer_than_a_reader_can_hold() => Assert.All(
        SourceTree.Files("src").Concat(SourceTree.Files("src", "*.razor")),
        file => Assert.True(file.Text.Count(letter => letter == '\n') <= LongestFile, $"{file.Path} is too long"));

    [Fact]
    public void Every_project_of_the_product_says_what_it_is() => Assert.All(
        Directory.GetDirectories(Path.Combine(SourceTree.Root, "src")),
        folder => Assert.True(File.Exists(Path.Combine(folder, "README.md")), $"{folder} has no README.md"));

    [Theory]
    [MemberData(nameof(Tables))]
    public void Every_reference_table_keeps_its_schema(string file) => Validate(
        Path.Combine(SharedFolder.Reference, "schema", Path.ChangeExtension(file, ".schema.json")),
        Path.Combine(SharedFolder.Reference, file));

    [Fact]
    public void The_checks_keep_their_schema() => Assert.All(
        Directory.GetFiles(SharedFolder.Checks, "*.json"),
        file => Validate(Path.Combine(SharedFolder.Checks, "schema", "checks.schema.json"), file));

    [Fact]
    public void Every_table_in_the_folder_is_read() => Assert.Equal(
        ReferenceTables.Files.Append(Household.Table).Order(StringComparer.Ordinal),
        Directory.GetFiles(SharedFolder.Reference, "*.json").Select(Path.GetFileName).Order(StringComparer.Ordinal)!);

    /// <summary>Expectations are written down with the tests that show them.</summary>
    [Fact]
    public void Every_test_that_the_developers_page_names_is_there()
    {
        var page = File.ReadAllText(Path.Combine(SourceTree.Root, "DEVELOPERS.md"));
        var tests = SourceTree.Files("tests").Where(file => file.Path.EndsWith("Tests.cs", StringComparison.Ordinal)).ToList();
        var named = NamedTest().Matches(page).Select(match => (Class: match.Groups[1].Value, Method: match.Groups[2].Value)).ToList();

        Assert.True(named.Count >= 20, "The table of expectations is gone.");
        Assert.All(named, test => Assert.True(
            tests.Any(file => file.Text.Contains($"class {test.Class}", StringComparison.Ordinal) && file.Text.Contains($" {test.Method}(", StringComparison.Ordinal)),
            $"{test.Class}.{test.Method} is not there."));
    }

    [GeneratedRegex(@"`(\w+Tests)\.(\w+_\w+)`")]
    private static partial Regex NamedTest();

    [Fact]
    public void No_test_is_switched_off() => Assert.All(
        SourceTree.Files("tests").Where(file => !file.Path.EndsWith("TreeTests.cs", StringComparison.Ordinal)),
        file => Assert.DoesNotContain("Skip = \"", file.Text, StringComparison.Ordinal));

    private static void Validate(string schemaFile, string file)
    {
        var schema = JsonSchema.FromText(File.ReadAllText(schemaFile));
        using var document = JsonDocument.Parse(File.ReadAllText(file));
        var result = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });

        Assert.True(result.IsValid, string.Join('\n', (result.Details ?? [])
            .Where(detail => detail.Errors is not null)
            .Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}")));
    }
}
