using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Host;

/// <summary>Dates with times as fields of date and time give them, with or without seconds.</summary>
public static class TypedMoments
{
    private static readonly IPattern<LocalDateTime> Both = new CompositePatternBuilder<LocalDateTime>
    {
        { LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm"), _ => true },
        { LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss"), _ => false },
    }.Build();

    /// <summary>As such a field wants it.</summary>
    public static string Show(LocalDateTime moment) => moment.ToString("uuuu-MM-dd'T'HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    public static ParseResult<LocalDateTime> Parse(string text) => Both.Parse(text);
}
