using System.Reflection;
using GameNight.Planning;

namespace GameNight.TestKit;

/// <summary>Finds the project's shared/ folder from any test, wherever the tests run.</summary>
public static class SharedFolder
{
    public static string Root { get; } = typeof(SharedFolder).Assembly
        .GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(attribute => attribute.Key == "SharedDir").Value!;

    public static string Checks => Path.Combine(Root, "checks");

    public static string Reference => Path.Combine(Root, "reference");

    /// <summary>The real reference tables, parsed once.</summary>
    public static ReferenceTables Tables { get; } = ReferenceTables.Parse(ReferenceTables.Files.ToDictionary(
        file => file, file => File.ReadAllText(Path.Combine(Reference, file))));
}
