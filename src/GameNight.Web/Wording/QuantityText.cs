using System.Globalization;
using GameNight.Planning.Quantities;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Wording;

/// <summary>Numbers, masses and times as people read them. No digit beyond what the scale or the band can carry.</summary>
public static class QuantityText
{
    private static readonly CultureInfo Culture = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>Thin no-break space between thousands, as in "1 620".</summary>
    private static readonly NumberFormatInfo Numbers = new()
    {
        NumberGroupSeparator = "\u202f",
        NumberDecimalSeparator = ".",
        PercentGroupSeparator = "\u202f",
    };

    private static readonly Duration FarOff = Duration.FromDays(3);

    /// <summary>Grams as a kitchen scale shows them: whole above 20 g, tenths above 2 g, hundredths below.</summary>
    public static string Grams(Grams mass) => $"{GramNumber(mass)} g";

    /// <summary>The number alone, for a big numeral with its unit beside it.</summary>
    public static string GramNumber(Grams mass) => mass.Value switch
    {
        >= 20 => mass.Value.ToString("#,0", Numbers),
        >= 2 => mass.Value.ToString("0.0", Numbers),
        _ => mass.Value.ToString("0.00", Numbers),
    };

    public static string Celsius(Celsius temperature) => $"{temperature.Value.ToString("0.#", Numbers)} °C";

    public static string Centimetres(Centimetres length) => $"{length.Value.ToString("0.#", Numbers)} cm";

    /// <summary>A share in percent: whole from 10 %, tenths from 1 %, hundredths below.</summary>
    public static string Percent(Share share) => Percent(share.Value);

    public static string Percent(double fraction) => $"{PercentNumber(fraction)} %";

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
        <= 0 => "0 %",
        < 0.01 => "under 1 %",
        > 0.99 and < 1 => "over 99 %",
        var value => $"{Math.Round(value * 100).ToString(Numbers)} %",
    };

    public static string Number(double value) => value.ToString("0.#", Numbers);

    public static string Whole(double value) => Math.Round(value).ToString("#,0", Numbers);

    public static string Pies(PieCount count) => Pies(count.Value);

    public static string Pies(int count) => count == 1 ? "1 pie" : $"{count} pies";

    public static string Slices(double slices) => Math.Round(slices) == 1 ? "1 slice" : $"{Whole(slices)} slices";

    public static string Length(Duration duration)
    {
        var minutes = (long)Math.Round(duration.TotalMinutes);
        if (minutes >= 4 * 24 * 60)
        {
            return $"{minutes / (24 * 60)} days";
        }

        return minutes < 60 ? $"{minutes} min"
            : minutes % 60 == 0 ? $"{minutes / 60} h"
            : $"{minutes / 60} h {minutes % 60} min";
    }

    /// <summary>How long something is still away: in days while it is far off.</summary>
    public static string Wait(Duration duration) => duration >= FarOff ? $"{Math.Floor(duration.TotalDays)} days" : Length(duration);

    public static string Day(LocalDate date) => LocalDatePattern.Create("dddd, d MMMM", Culture).Format(date);

    public static string ShortDay(LocalDate date) => LocalDatePattern.Create("ddd d MMM", Culture).Format(date);

    /// <summary>Short enough for a big numeral: "Thu 10".</summary>
    public static string DayOfMonth(LocalDate date) => LocalDatePattern.Create("ddd d", Culture).Format(date);

    /// <summary>Short enough to stand under a column: "10 Dec".</summary>
    public static string DayOfYear(LocalDate date) => LocalDatePattern.Create("d MMM", Culture).Format(date);

    public static string Time(LocalTime time) => LocalTimePattern.Create("HH:mm", Culture).Format(time);

    public static string DayAndTime(LocalDateTime at) => $"{Day(at.Date)}, {Time(at.TimeOfDay)}";

    public static string ShortDayAndTime(LocalDateTime at) => $"{ShortDay(at.Date)}, {Time(at.TimeOfDay)}";

    public static LocalDateTime Local(Instant at, string zone) =>
        at.InZone(DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) ?? DateTimeZone.Utc).LocalDateTime;

    /// <summary>A moment in the night's zone: "Thu 10 Dec, 17:00".</summary>
    public static string Moment(Instant at, string zone) => ShortDayAndTime(Local(at, zone));
}
