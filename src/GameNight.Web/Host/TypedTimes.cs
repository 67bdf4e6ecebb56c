using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Host;

/// <summary>Times of day as time fields give them: "19:30" as typed, "19:30:00" as the browser's event says it.</summary>
public static class TypedTimes
{
    private static readonly LocalTimePattern Short = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    private static readonly IPattern<LocalTime> Both = new CompositePatternBuilder<LocalTime>
    {
        { Short, _ => true },
        { LocalTimePattern.CreateWithInvariantCulture("HH:mm:ss"), _ => false },
    }.Build();

    public static string Text(LocalTime time) => Short.Format(time);

    public static ParseResult<LocalTime> Parse(string text) => Both.Parse(text);
}
