using System.Text.Json;
using System.Text.RegularExpressions;

namespace GameNight.Rules.Tests;

/// <summary>Nothing is shipped whose licence nobody looked at. The list is docs/licences.md, written by deploy/licences.sh.</summary>
public partial class LicenceTests
{
    private static readonly HashSet<string> Allowed = new(StringComparer.Ordinal)
    {
        "MIT", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "PostgreSQL", "MS-PL", "OFL-1.1",
    };

    [Fact]
    public void Every_package_that_is_shipped_is_on_the_list_and_nothing_else() => Assert.Equal(
        Locked().Concat(ServerPrograms()).Order(StringComparer.Ordinal),
        Listed().Where(row => row.From != "fonts").Select(row => $"{row.Name} {row.Version}").Order(StringComparer.Ordinal));

    [Fact]
    public void Every_font_that_is_shipped_is_on_the_list()
    {
        var families = Listed().Where(row => row.From == "fonts").Select(row => row.Name).ToList();

        Assert.NotEmpty(families);
        Assert.All(
            Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src/GameNight.Web/wwwroot/fonts"), "*.woff2"),
            file => Assert.Contains(families, family => Path.GetFileName(file).StartsWith(family, StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_licence_on_the_list_is_one_of_those_allowed() => Assert.All(
        Listed(), row => Assert.All(row.Licence.Split(" AND "), licence => Assert.Contains(licence, Allowed)));

    private static List<(string Name, string Version, string Licence, string From)> Listed() =>
    [
        .. Row().Matches(File.ReadAllText(Path.Combine(SourceTree.Root, "docs/licences.md")))
            .Select(row => (row.Groups[1].Value, row.Groups[2].Value, row.Groups[3].Value, row.Groups[4].Value)),
    ];

    private static IEnumerable<string> Locked()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "src/GameNight.Web/packages.lock.json")));
        return
        [
            .. file.RootElement.GetProperty("dependencies").EnumerateObject()
                .SelectMany(target => target.Value.EnumerateObject())
                .Where(package => package.Value.GetProperty("type").GetString() != "Project")
                .Select(package => $"{package.Name} {package.Value.GetProperty("resolved").GetString()}").Distinct(),
        ];
    }

    private static IEnumerable<string> ServerPrograms()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "src/GameNight.LocalPostgres/server/package.json")));
        return [.. file.RootElement.GetProperty("dependencies").EnumerateObject().Select(package => $"{package.Name} {package.Value.GetString()}")];
    }

    [GeneratedRegex(@"^\| (\S+) \| ([^|]+?) \| ([^|]+?) \| (NuGet|npm|fonts) \|$", RegexOptions.Multiline)]
    private static partial Regex Row();
}
