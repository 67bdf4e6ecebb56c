using System.Text.Json;
using System.Text.Json.Serialization;
using GameNight.Planning.Quantities;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Planning.Contract;

/// <summary>A quantity as one number. An invalid number is refused with the quantity's own message, never read as zero.</summary>
internal sealed class NumberConverter<T>(Func<double, T> read, Func<T, double> write) : JsonConverter<T>
    where T : struct
{
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.Number)
        {
            throw new JsonException($"A number is needed here, not {reader.TokenType}.");
        }

        try
        {
            return read(reader.GetDouble());
        }
        catch (ArgumentException problem)
        {
            throw new JsonException(problem.Message, problem);
        }
    }

    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
        writer.WriteNumberValue(write(value));
}

/// <summary>A moment as RFC 3339 text; any offset is read, UTC is written.</summary>
internal sealed class InstantConverter : JsonConverter<Instant>
{
    public override Instant Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        var text = reader.TokenType == JsonTokenType.String ? reader.GetString()! : "";
        var parsed = OffsetDateTimePattern.Rfc3339.Parse(text);
        return parsed.Success
            ? parsed.Value.ToInstant()
            : throw new JsonException("A date and time with offset is needed here, such as 2026-12-12T19:30:00+01:00.");
    }

    public override void Write(Utf8JsonWriter writer, Instant value, JsonSerializerOptions options) =>
        writer.WriteStringValue(InstantPattern.ExtendedIso.Format(value));
}

internal static class QuantityConverters
{
    /// <summary>Longer is no night: two weeks.</summary>
    private const double MostMinutes = 14 * 24 * 60;

    private const double NanosecondsPerMinute = 60e9;

    public static IReadOnlyList<JsonConverter> All { get; } =
    [
        new NumberConverter<Grams>(value => new Grams(value), grams => grams.Value),
        new NumberConverter<Celsius>(value => new Celsius(value), celsius => celsius.Value),
        new NumberConverter<Centimetres>(value => new Centimetres(value), length => length.Value),
        new NumberConverter<Share>(value => new Share(value), share => share.Value),
        new NumberConverter<PieCount>(Whole, count => count.Value),
        new NumberConverter<Duration>(Minutes, duration => duration.TotalMinutes),
        new InstantConverter(),
    ];

    private static PieCount Whole(double value) =>
        value == Math.Floor(value) && Math.Abs(value) <= PieCount.Highest
            ? new PieCount((int)value)
            : throw new ArgumentOutOfRangeException(nameof(value), value, "A whole number of 0 to 200 pies is needed.");

    // Rounded, not cut: a length that is written and read again and again must stay what it was.
    private static Duration Minutes(double value) => value is >= 0 and <= MostMinutes
        ? Duration.FromNanoseconds((long)Math.Round(value * NanosecondsPerMinute))
        : throw new ArgumentOutOfRangeException(nameof(value), value, "A length of time is 0 to 20160 minutes (two weeks).");
}
