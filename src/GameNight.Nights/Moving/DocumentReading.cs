using System.Text.Json;
using System.Text.RegularExpressions;

namespace GameNight.Nights.Moving;

/// <summary>What came of reading a document.</summary>
internal abstract partial record DocumentReading
{
    private DocumentReading()
    {
    }

    internal sealed record Read(GroupDocument Document) : DocumentReading;

    /// <summary>It is JSON, and something else than a group.</summary>
    internal sealed record NotOurs : DocumentReading;

    internal sealed record FromTheFuture(int Version) : DocumentReading;

    internal sealed record Refused(DocumentProblem Problem) : DocumentReading;

    /// <summary>Reads the envelope first: a document of a later version is told so, not that its members are unknown.</summary>
    public static DocumentReading Of(ReadOnlySpan<byte> bytes)
    {
        var json = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        var (schema, version) = Envelope(json);
        try
        {
            if (schema != GroupDocument.SchemaName || version is null or < 1)
            {
                return new NotOurs();
            }

            if (version > GroupDocument.CurrentVersion)
            {
                return new FromTheFuture(version.Value);
            }

            return JsonSerializer.Deserialize<GroupDocument>(json, GroupJson.Options) is { } document
                ? new Read(document)
                : new NotOurs();
        }
        catch (JsonException problem)
        {
            return new Refused(new DocumentProblem(
                problem.Path is { Length: > 0 } path ? path : "$", DocumentFault.Unreadable, Said: Said(problem)));
        }
        catch (Exception problem) when (problem is NotSupportedException or ArgumentException or FormatException)
        {
            // A reason or conflict without its kind, or a value that its own type refuses.
            return new Refused(new DocumentProblem(PathIn(problem.Message) ?? "$", DocumentFault.Unreadable));
        }
    }

    /// <summary>As far as it can be read: what comes behind it is told with its place when all of it is read.</summary>
    private static (string? Schema, int? Version) Envelope(ReadOnlySpan<byte> json)
    {
        (string? schema, int? version) = (null, null);
        try
        {
            ReadEnvelope(json, ref schema, ref version);
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException)
        {
            // Cut off, no JSON at all, or text that is none.
        }

        return (schema, version);
    }

    private static void ReadEnvelope(ReadOnlySpan<byte> json, ref string? schema, ref int? version)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = GroupJson.Options.MaxDepth });
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
        {
            return;
        }

        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var isSchema = reader.ValueTextEquals("schema"u8);
            var isVersion = reader.ValueTextEquals("version"u8);
            reader.Read();
            if (isSchema && reader.TokenType == JsonTokenType.String)
            {
                schema = reader.GetString();
            }
            else if (isVersion && reader.TokenType == JsonTokenType.Number && reader.TryGetInt32(out var number))
            {
                version = number;
            }

            reader.Skip();
        }
    }

    /// <summary>Not every refusal of the serializer carries its place as data.</summary>
    private static string? PathIn(string message) =>
        PlaceInMessage().Match(message) is { Success: true } place ? place.Groups[1].Value : null;

    [GeneratedRegex(@" Path: (\$\S*) \|")]
    private static partial Regex PlaceInMessage();

    /// <summary>Our own sentences as they are; those of the serializer would name our types.</summary>
    private static string? Said(JsonException problem)
    {
        var message = problem.InnerException is ArgumentException inner ? inner.Message.Split(" (Parameter ")[0] : problem.Message;
        return message.Contains("LineNumber: ", StringComparison.Ordinal) || message.Contains(" type '", StringComparison.Ordinal)
            ? null
            : message;
    }
}
