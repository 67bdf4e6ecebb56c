using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace GameNight.Planning.Reference;

/// <summary>A reference table cannot be used: names the file and what is wrong with it.</summary>
public sealed class ReferenceTableException(string file, string problem, Exception? inner = null)
    : Exception($"shared/reference/{file}: {problem}", inner);

/// <summary>Turns the text of one table into its record; unknown and missing members are refused.</summary>
internal static class ReferenceText
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        AllowDuplicateProperties = false,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    /// <exception cref="ReferenceTableException">The text is missing or does not have the shape of the table.</exception>
    public static T Parse<T>(IReadOnlyDictionary<string, string> textByFile, string file)
    {
        if (!textByFile.TryGetValue(file, out var text))
        {
            throw new ReferenceTableException(file, "the file is missing.");
        }

        try
        {
            return JsonSerializer.Deserialize<T>(text, Options)
                ?? throw new ReferenceTableException(file, "the file is empty.");
        }
        catch (JsonException problem)
        {
            throw new ReferenceTableException(file, problem.Message, problem);
        }
    }

    /// <exception cref="ReferenceTableException">Not exactly one row for each value of the enumeration.</exception>
    public static IReadOnlyDictionary<TKey, TRow> OneRowEach<TKey, TRow>(
        string file, IEnumerable<TRow> rows, Func<TRow, TKey> key)
        where TKey : struct, Enum
    {
        var byKey = rows.ToLookup(key);
        foreach (var value in Enum.GetValues<TKey>())
        {
            var count = byKey[value].Count();
            if (count != 1)
            {
                throw new ReferenceTableException(file, $"has {count} rows for {value}, needs one.");
            }
        }

        return byKey.ToDictionary(group => group.Key, group => group.Single());
    }
}

/// <summary>A valid range with the reason for its limits.</summary>
public sealed record ValidRange(double Low, double High, string Source)
{
    public bool Holds(double value) => value >= Low && value <= High;

    /// <exception cref="ArgumentOutOfRangeException">The value is outside; the message names the range, its unit and its reason.</exception>
    public double Demand(double value, string name, string unit) => Holds(value)
        ? value
        : throw new ArgumentOutOfRangeException(
            name, value, string.Create(CultureInfo.InvariantCulture, $"Valid is {Low} to {High} {unit} ({Source})."));
}
