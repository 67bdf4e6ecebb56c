using GameNight.Planning;
using GameNight.Planning.Reference;

namespace GameNight.Nights.Reference;

/// <summary>Reads the reference tables once, at start. Never writes.</summary>
public static class ReferenceFolder
{
    /// <exception cref="ReferenceTableException">A table is missing or malformed; the message names it.</exception>
    public static ReferenceTables Read(string folder) => ReferenceTables.Parse(
        ReferenceTables.Files
            .Select(file => (File: file, Path: Path.Combine(folder, file)))
            .Where(file => File.Exists(file.Path))
            .ToDictionary(file => file.File, file => File.ReadAllText(file.Path)));
}
