using System.Globalization;
using GameNight.Nights.Records;
using GameNight.Web.Wording.Texts;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Host.Dates;

/// <summary>A day as a host types it.</summary>
public sealed class TypedDay
{
    public string Date { get; set; } = "";
}

/// <summary>What a host types of a rhythm, as text, so that nothing typed is ever lost to parsing.</summary>
public sealed class RhythmForm
{
    private static readonly LocalDatePattern Dates = LocalDatePattern.Iso;

    /// <summary>As the list of distances has it.</summary>
    public string Distance { get; set; } = "w2";

    public string Day { get; set; } = "5";
    public string Time { get; set; } = "19:30";
    public string From { get; set; } = "";
    public List<TypedDay> DaysOff { get; } = [];

    /// <summary>Nights that were moved stay so while the rhythm has them.</summary>
    private IReadOnlyList<MovedDay> Moved { get; set; } = [];

    public static RhythmForm Of(Rhythm? rhythm, LocalDate today)
    {
        if (rhythm is null)
        {
            return new RhythmForm { From = Dates.Format(today) };
        }

        var form = new RhythmForm
        {
            Distance = rhythm.EveryWeeks is { } weeks
                ? string.Create(CultureInfo.InvariantCulture, $"w{weeks}")
                : string.Create(CultureInfo.InvariantCulture, $"m{rhythm.OfMonth}"),
            Day = ((int)rhythm.Day).ToString(CultureInfo.InvariantCulture),
            Time = TypedTimes.Text(LocalTime.FromMinutesSinceMidnight(rhythm.ServeMinute)),
            From = Dates.Format(rhythm.From),
            Moved = rhythm.Moved,
        };
        form.DaysOff.AddRange(rhythm.DaysOff.Select(day => new TypedDay { Date = Dates.Format(day) }));
        return form;
    }

    /// <returns>The rhythm, or the fields that cannot be read. A day off without a date is none.</returns>
    public (Rhythm? Rhythm, IReadOnlyDictionary<string, string> Problems) Read()
    {
        var problems = new Dictionary<string, string>();
        var time = TypedTimes.Parse(Time);
        var from = Dates.Parse(From);
        if (!time.Success)
        {
            problems["time"] = RhythmPages.PickTime;
        }

        if (!from.Success)
        {
            problems["from"] = RhythmPages.PickDate;
        }

        if (!(int.TryParse(Day, NumberStyles.None, CultureInfo.InvariantCulture, out var day) && day is >= 1 and <= 7))
        {
            problems["day"] = RhythmPages.PickDay;
        }

        var isDistance = int.TryParse(Distance.AsSpan(Math.Min(1, Distance.Length)), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number);
        if (!isDistance || !(Distance.StartsWith('w') || Distance.StartsWith('m')))
        {
            problems["distance"] = RhythmPages.NoDistance;
        }

        var off = new List<LocalDate>();
        for (var index = 0; index < DaysOff.Count; index++)
        {
            if (DaysOff[index].Date.Length == 0)
            {
                continue;
            }

            if (Dates.Parse(DaysOff[index].Date) is { Success: true } parsed)
            {
                off.Add(parsed.Value);
            }
            else
            {
                problems[$"off{index}"] = RhythmPages.PickDate;
            }
        }

        return problems.Count > 0
            ? (null, problems)
            : (
                new Rhythm(
                    (IsoDayOfWeek)day, (time.Value.Hour * 60) + time.Value.Minute, Distance.StartsWith('w') ? number : null,
                    Distance.StartsWith('m') ? number : null, from.Value, off, Moved),
                problems);
    }
}
