using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using GameNight.Nights.Records;
using GameNight.Planning.Contract;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Nights.Moving;

/// <summary>
/// The planner's JSON contract for documents that come from outside: every refusal is a <see cref="JsonException"/> with its
/// path, ids have the one form that plans use, and text can be kept as it is.
/// </summary>
internal static class GroupJson
{
    public static JsonSerializerOptions Options { get; } = Create();

    /// <summary>Names stay readable: the document is a download, never a part of a page.</summary>
    public static JsonWriterOptions Writing { get; } = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static JsonSerializerOptions Create()
    {
        var options = PlanJson.Configure(new JsonSerializerOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        options.Converters.Add(new TextConverter());
        options.Converters.Add(new LocalTimeConverter());
        options.Converters.Add(new LocalDateConverter());
        options.Converters.Add(new GuidConverter());
        options.Converters.Add(new IdConverter<FormulaId>());
        options.Converters.Add(new IdConverter<MenuItemId>());
        options.Converters.Add(new IdConverter<GuestId>());
        options.Converters.Add(new IdConverter<NightId>());
        options.Converters.Add(new IdConverter<DateChoiceId>());
        options.MakeReadOnly();
        return options;
    }

    private static Guid ReadGuid(ref Utf8JsonReader reader) =>
        reader.TokenType == JsonTokenType.String
            && Guid.TryParseExact(reader.GetString(), "N", out var id) && id != Guid.Empty
            ? id
            : throw new JsonException("An id is needed here: 32 digits of 0 to 9 and a to f.");

    private sealed class GuidConverter : JsonConverter<Guid>
    {
        public override Guid Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            ReadGuid(ref reader);

        public override void Write(Utf8JsonWriter writer, Guid value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.ToString("N", CultureInfo.InvariantCulture));
    }

    private sealed class IdConverter<T> : JsonConverter<T>
        where T : struct, IRecordId<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            T.From(ReadGuid(ref reader));

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.Value.ToString("N", CultureInfo.InvariantCulture));
    }

    private sealed class LocalTimeConverter : JsonConverter<LocalDateTime>
    {
        public override LocalDateTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var text = reader.TokenType == JsonTokenType.String ? reader.GetString()! : "";
            return LocalDateTimePattern.ExtendedIso.Parse(text) is { Success: true } parsed
                ? parsed.Value
                : throw new JsonException("A local date and time is needed here, such as 2026-12-12T19:30:00.");
        }

        public override void Write(Utf8JsonWriter writer, LocalDateTime value, JsonSerializerOptions options) =>
            writer.WriteStringValue(LocalDateTimePattern.ExtendedIso.Format(value));
    }

    private sealed class LocalDateConverter : JsonConverter<LocalDate>
    {
        public override LocalDate Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var text = reader.TokenType == JsonTokenType.String ? reader.GetString()! : "";
            return LocalDatePattern.Iso.Parse(text) is { Success: true } parsed
                ? parsed.Value
                : throw new JsonException("A date is needed here, such as 2026-12-12.");
        }

        public override void Write(Utf8JsonWriter writer, LocalDate value, JsonSerializerOptions options) =>
            writer.WriteStringValue(LocalDatePattern.Iso.Format(value));
    }

    /// <summary>The database keeps every character but one.</summary>
    private sealed class TextConverter : JsonConverter<string>
    {
        public override string? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String ? Kept(reader.GetString()!) : throw new JsonException("Text is needed here.");

        public override void Write(Utf8JsonWriter writer, string value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value);

        public override string ReadAsPropertyName(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            Kept(reader.GetString()!);

        public override void WriteAsPropertyName(Utf8JsonWriter writer, string value, JsonSerializerOptions options) =>
            writer.WritePropertyName(value);

        private static string Kept(string text) => text.Contains('\0', StringComparison.Ordinal)
            ? throw new JsonException("This text holds a character that cannot be kept (U+0000).")
            : text;
    }
}
