using System.Text.Json.Serialization;
using NodaTime;

namespace GameNight.Nights.Records;

/// <summary>When the host's hands are not there, week in, week out. Times are local; minutes after midnight in storage.</summary>
/// <param name="SleepFromMinute">Sleep may run over midnight: 23:00 to 07:00 is 1380 and 420.</param>
public sealed record HostHours(int SleepFromMinute, int SleepUntilMinute, IReadOnlyList<WorkingHours> Work)
{
    public static HostHours Usual { get; } = new(23 * 60, 7 * 60, []);

    [JsonIgnore]
    public LocalTime SleepFrom => LocalTime.FromMinutesSinceMidnight(SleepFromMinute);

    [JsonIgnore]
    public LocalTime SleepUntil => LocalTime.FromMinutesSinceMidnight(SleepUntilMinute);
}

/// <summary>Away on one day of the week.</summary>
public sealed record WorkingHours(IsoDayOfWeek Day, int FromMinute, int UntilMinute);
