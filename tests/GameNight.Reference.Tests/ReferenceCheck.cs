using System.Text.Json;
using GameNight.TestKit;

namespace GameNight.Reference.Tests;

/// <summary>One row of a file in shared/checks: a number from outside the project.</summary>
public sealed record ReferenceCheck(
    string Id, string What, string Unit, double Expected, double Tolerance, string Source)
{
    private sealed record Table(string Note, IReadOnlyList<ReferenceCheck> Checks);

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static IReadOnlyList<ReferenceCheck> All { get; } =
    [
        .. Directory.GetFiles(SharedFolder.Checks, "*.json").Order(StringComparer.Ordinal)
            .SelectMany(file => JsonSerializer.Deserialize<Table>(File.ReadAllText(file), Options)!.Checks),
    ];
}
