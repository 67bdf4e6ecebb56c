using System.Collections.Concurrent;
using System.Globalization;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>
/// Numbers and times as people read them, in the reader's language. No digit beyond what the scale or the band can carry.
/// What carries a unit that differs between measures is said by <see cref="Measures"/>.
/// </summary>
public static class QuantityText
{
    /// <summary>Thin no-break space between thousands in every language, as in "1 620": it cannot be taken for a decimal.</summary>
    private const string BetweenThousands = "\u202f";

    private static readonly ConcurrentDictionary<CultureInfo, NumberFormatInfo> NumbersByCulture = new();

    private static readonly Duration FarOff = Duration.FromDays(3);

    private static NumberFormatInfo Numbers => NumbersByCulture.GetOrAdd(Language.Current, static culture =>
    {
        var numbers = (NumberFormatInfo)culture.NumberFormat.Clone();
        numbers.NumberGroupSeparator = BetweenThousands;
        return numbers;
    });

    /// <summary>Grams as a kitchen scale shows them: whole above 20 g, tenths above 2 g, hundredths below.</summary>
    public static string Grams(Grams mass) => Fill(Amounts.Grams, GramNumber(mass));

    /// <summary>The number alone, for a big numeral with its unit beside it.</summary>
    public static string GramNumber(Grams mass) => mass.Value switch
    {
        >= 20 => Whole(mass.Value),
        >= 2 => Tenths(mass.Value),
        _ => Hundredths(mass.Value),
    };

    /// <summary>All digits of a mass that stands on the step of a scale; others as <see cref="GramNumber"/>.</summary>
    public static string ScaleNumber(Grams mass) =>
        Math.Abs(Math.Round(mass.Value, 3) - mass.Value) < 1e-9 ? mass.Value.ToString("#,0.###", Numbers) : GramNumber(mass);

    /// <summary>A share in percent: whole from 10 %, tenths from 1 %, hundredths below.</summary>
    public static string Percent(Share share) => Percent(share.Value);

    public static string Percent(double fraction) => Fill(Amounts.Percent, PercentNumber(fraction));

    public static string PercentNumber(double fraction) => (fraction * 100) switch
    {
        0 => "0",
        >= 10 => (fraction * 100).ToString("0.#", Numbers),
        >= 1 => (fraction * 100).ToString("0.##", Numbers),
        var small => small.ToString("0.###", Numbers),
    };

    /// <summary>A chance: whole percent, and never a false 0 or 100.</summary>
    public static string Chance(Share chance) => chance.Value switch
    {
        <= 0 => Percent(0),
        < 0.01 => Amounts.UnderOnePercent,
        > 0.99 and < 1 => Amounts.OverNinetyNinePercent,
        var value => Fill(Amounts.Percent, Whole(value * 100)),
    };

    public static string Number(double value) => value.ToString("#,0.#", Numbers);

    public static string Whole(double value) => Math.Round(value).ToString("#,0", Numbers);

    /// <summary>All the digits that were typed, up to four behind the point.</summary>
    public static string Exact(double value) => value.ToString("0.####", Numbers);

    public static string Tenths(double value) => value.ToString("#,0.0", Numbers);

    public static string Hundredths(double value) => value.ToString("0.00", Numbers);

    public static string Thousandths(double value) => value.ToString("0.000", Numbers);

    public static string Pies(PieCount count) => Pies(count.Value);

    public static string Pies(int count) => Count(Amounts.ResourceManager, nameof(Amounts.PiesOther), count);

    public static string Balls(int count) => Count(Amounts.ResourceManager, nameof(Amounts.BallsOther), count);

    public static string Slices(double slices) => Count(Amounts.ResourceManager, nameof(Amounts.SlicesOther), Math.Round(slices));

    /// <summary>A mean, to a tenth of a slice.</summary>
    public static string SlicesEach(double slices) => Count(Amounts.ResourceManager, nameof(Amounts.SlicesOther), Math.Round(slices, 1));

    /// <summary>From a moment to another; the day is said once where it is the same.</summary>
    public static string Span(Instant from, Instant until, string zone)
    {
        var (first, last) = (Local(from, zone), Local(until, zone));
        return Range(ShortDayAndTime(first), first.Date == last.Date ? Time(last.TimeOfDay) : ShortDayAndTime(last));
    }

    /// <summary>"4 to 9".</summary>
    public static string Range(string from, string to) => Fill(Amounts.Range, from, to);

    public static string Length(Duration duration)
    {
        var minutes = (long)Math.Round(duration.TotalMinutes);
        return minutes >= 4 * 24 * 60 ? Days(minutes / (24 * 60))
            : minutes < 60 ? Fill(Amounts.Minutes, minutes)
            : minutes % 60 == 0 ? Fill(Amounts.Hours, minutes / 60)
            : Fill(Amounts.HoursAndMinutes, minutes / 60, minutes % 60);
    }

    /// <summary>How long something is still away: in days while it is far off.</summary>
    public static string Wait(Duration duration) => duration >= FarOff ? Days(Math.Floor(duration.TotalDays)) : Length(duration);

    public static string Day(LocalDate date) => Date(Amounts.DayPattern, date);

    public static string ShortDay(LocalDate date) => Date(Amounts.ShortDayPattern, date);

    public static string DayAndYear(LocalDate date) => Date(Amounts.DayAndYearPattern, date);

    public static string ShortDayAndYear(LocalDate date) => Date(Amounts.ShortDayAndYearPattern, date);

    public static string Weekday(IsoDayOfWeek day) => Language.Current.DateTimeFormat.GetDayName(day.ToDayOfWeek());

    /// <summary>Short enough for a big numeral: "Thu 10".</summary>
    public static string DayOfMonth(LocalDate date) => Date(Amounts.DayOfMonthPattern, date);

    /// <summary>Short enough to stand under a column: "10 Dec".</summary>
    public static string DayOfYear(LocalDate date) => Date(Amounts.DayOfYearPattern, date);

    public static string DayWithYear(LocalDate date) => Date(Amounts.DayWithYearPattern, date);

    public static string Time(LocalTime time) => LocalTimePattern.Create(Amounts.TimePattern, Language.Current).Format(time);

    public static string DayAndTime(LocalDateTime at) => Fill(Amounts.DayAndTime, Day(at.Date), Time(at.TimeOfDay));

    public static string ShortDayAndTime(LocalDateTime at) => Fill(Amounts.DayAndTime, ShortDay(at.Date), Time(at.TimeOfDay));

    public static LocalDateTime Local(Instant at, string zone) =>
        at.InZone(DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) ?? DateTimeZone.Utc).LocalDateTime;

    /// <summary>A moment in the night's zone: "Thu 10 Dec, 17:00".</summary>
    public static string Moment(Instant at, string zone) => ShortDayAndTime(Local(at, zone));

    private static string Days(double days) => Count(Amounts.ResourceManager, nameof(Amounts.DaysOther), days);

    private static string Date(string pattern, LocalDate date) => LocalDatePattern.Create(pattern, Language.Current).Format(date);
}
