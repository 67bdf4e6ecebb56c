using System.Text.Json;
using System.Text.Json.Serialization;
using GameNight.Nights.Records;
using GameNight.Planning.Contract;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Nights.Storage;

/// <summary>The planner's JSON contract, plus the local times and ids that only records know.</summary>
internal static class StoredJson
{
    public static JsonSerializerOptions Options { get; } = Create();

    private static JsonSerializerOptions Create()
    {
        var options = PlanJson.Configure(new JsonSerializerOptions());
        options.Converters.Add(new LocalDateTimeConverter());
        options.Converters.Add(new LocalDateConverter());
        options.Converters.Add(new FormulaIdConverter());
        options.MakeReadOnly();
        return options;
    }

    private sealed class LocalDateTimeConverter : JsonConverter<LocalDateTime>
    {
        public override LocalDateTime Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            LocalDateTimePattern.ExtendedIso.Parse(reader.GetString() ?? "").Value;

        public override void Write(Utf8JsonWriter writer, LocalDateTime value, JsonSerializerOptions options) =>
            writer.WriteStringValue(LocalDateTimePattern.ExtendedIso.Format(value));
    }

    private sealed class LocalDateConverter : JsonConverter<LocalDate>
    {
        public override LocalDate Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            LocalDatePattern.Iso.Parse(reader.GetString() ?? "").Value;

        public override void Write(Utf8JsonWriter writer, LocalDate value, JsonSerializerOptions options) =>
            writer.WriteStringValue(LocalDatePattern.Iso.Format(value));
    }

    private sealed class FormulaIdConverter : JsonConverter<FormulaId>
    {
        public override FormulaId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            new(reader.GetGuid());

        public override void Write(Utf8JsonWriter writer, FormulaId value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.Value);
    }
}
