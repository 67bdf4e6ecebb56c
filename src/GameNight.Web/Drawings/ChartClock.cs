using GameNight.Nights.Records;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Drawings;

/// <summary>What is written below a chart of days: noon and midnight, or every third hour of a dough of one day.</summary>
public static class ChartClock
{
    private const double HoursOfADay = 30;

    /// <returns>Marks in hours after <paramref name="start"/>.</returns>
    public static IReadOnlyList<ChartMark> Between(Instant start, Instant end, string zone)
    {
        var step = (end - start).TotalHours > HoursOfADay ? 12 : 3;
        var marks = new List<ChartMark>();
        for (var at = QuantityText.Local(start, zone).Date.AtMidnight(); ; at = at.PlusHours(step))
        {
            var moment = NightTime.ToInstant(at, zone);
            if (moment > end)
            {
                return marks;
            }

            if (moment >= start && (at.Hour != 0 || step < 12 || moment - start > Duration.FromHours(2)))
            {
                marks.Add(new ChartMark((moment - start).TotalHours, at.Hour == 0 ? QuantityText.ShortDay(at.Date) : QuantityText.Time(at.TimeOfDay)));
            }
        }
    }
}
