using System.Text.RegularExpressions;
using GameNight.TestKit;

namespace GameNight.Rules.Tests;

/// <summary>The project's own source files as text.</summary>
internal static partial class SourceTree
{
    public static string Root { get; } = Path.GetFullPath(Path.Combine(SharedFolder.Root, ".."));

    public static IEnumerable<(string Path, string Text)> Files(string folder, string pattern = "*.cs") => Directory
        .EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
        .Where(path => !path.Contains("/obj/", StringComparison.Ordinal) && !path.Contains("/bin/", StringComparison.Ordinal)
            && !path.Contains("/Migrations/", StringComparison.Ordinal))
        .Select(path => (Path.GetRelativePath(Root, path), File.ReadAllText(path)));

    public static IEnumerable<string> Usings(string text) =>
        UsingLine().Matches(text).Select(match => match.Groups[1].Value);

    [GeneratedRegex(@"^using (?:static )?([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex UsingLine();
}
