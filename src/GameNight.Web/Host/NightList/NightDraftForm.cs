using System.Globalization;
using GameNight.Nights.Dates;
using GameNight.Nights.ForHosts;
using GameNight.Nights.Records;
using GameNight.Planning.Appetite;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Host.NightList;

/// <summary>What a host types for a night, as text, so that nothing typed is ever lost to parsing.</summary>
public sealed class NightDraftForm
{
    private static readonly LocalDatePattern Dates = LocalDatePattern.Iso;

    public string Title { get; set; } = NightPages.UsualTitle;
    public string Date { get; set; } = "";
    public string Time { get; set; } = "19:30";
    public string EndTime { get; set; } = "";
    public string Zone { get; set; } = "";
    public string Address { get; set; } = "";
    public string Bring { get; set; } = "";
    public string Formula { get; set; } = "";
    public string RunOutPercent { get; set; } = "10";
    public string ShortestColdHours { get; set; } = "40";
    public string WantedColdHours { get; set; } = "48";
    public string LongestColdHours { get; set; } = "72";
    public string MostCompanions { get; set; } = "2";

    /// <summary>A course on a line.</summary>
    public string Courses { get; set; } = "";

    /// <summary>Empty goes by the accepted run-out chance.</summary>
    public string ShortageWeight { get; set; } = "";

    /// <summary>Empty for as many as come.</summary>
    public string Seats { get; set; } = "";

    /// <summary>Empty when nobody says what is played.</summary>
    public string Played { get; set; } = "";

    public string FewestPlayers { get; set; } = "";
    public string MostPlayers { get; set; } = "";

    public static NightDraftForm Of(NightFacts facts) => new()
    {
        Title = facts.Title,
        Date = Dates.Format(facts.ServeAt.Date),
        Time = TypedTimes.Text(facts.ServeAt.TimeOfDay),
        EndTime = facts.EndsAt is { } end ? TypedTimes.Text(end.TimeOfDay) : "",
        Zone = facts.Zone,
        Address = facts.Address,
        Bring = facts.Bring,
        Formula = facts.Formula.ToString(),
        RunOutPercent = Text(facts.RunOutChance.Percent),
        ShortestColdHours = Text(facts.ShortestColdHours),
        WantedColdHours = Text(facts.WantedColdHours),
        LongestColdHours = Text(facts.LongestColdHours),
        MostCompanions = Text(facts.MostCompanions),
        Courses = CourseLines.Write(facts.Courses ?? []),
        ShortageWeight = facts.ShortageWeight is { } weight ? Text(weight) : "",
        Seats = facts.Seats is { } seats ? Text(seats) : "",
        Played = facts.Played?.Name ?? "",
        FewestPlayers = facts.Played?.Players?.Fewest is { } fewest ? Text(fewest) : "",
        MostPlayers = facts.Played?.Players?.Most is { } most ? Text(most) : "",
    };

    /// <summary>Last time's choices on the day that the rhythm of the nights proposes, or an empty start.</summary>
    /// <param name="nights">Days of the nights so far.</param>
    /// <param name="proposed">The next night of the group's rhythm; null goes by the nights so far.</param>
    public static NightDraftForm Next(NightFacts? last, IReadOnlyList<LocalDate> nights, string zone, LocalDate today, RhythmNight? proposed = null)
    {
        var form = last is null
            ? new NightDraftForm { Zone = zone, Date = Dates.Format(today.Next(IsoDayOfWeek.Saturday)) }
            : Of(last);
        if (proposed is not null)
        {
            form.Date = Dates.Format(proposed.At.Date);
            form.Time = TypedTimes.Text(proposed.At.TimeOfDay);
        }
        else if (last is not null)
        {
            form.Date = Dates.Format(NightRhythm.Next([last.ServeAt.Date, .. nights], today));
        }

        return form;
    }

    /// <returns>The facts, or the fields that cannot be read.</returns>
    public (NightFacts? Facts, IReadOnlyDictionary<string, string> Problems) Read()
    {
        var problems = new Dictionary<string, string>();
        var date = Parsed(Dates.Parse(Date), "date", NightPages.ChooseDate);
        var time = Parsed(TypedTimes.Parse(Time), "time", NightPages.GiveTime);
        var end = EndTime.Length == 0 ? (LocalTime?)null : Parsed(TypedTimes.Parse(EndTime), "endTime", NightPages.GiveEndTime);
        var runOut = Whole(RunOutPercent, "runOutPercent", 1, 50);
        var shortest = Whole(ShortestColdHours, "coldHours", 0, NightDraft.MostColdHours);
        var wanted = Whole(WantedColdHours, "coldHours", 0, NightDraft.MostColdHours);
        var longest = Whole(LongestColdHours, "coldHours", 0, NightDraft.MostColdHours);
        var companions = Whole(MostCompanions, "mostCompanions", 0, NightFacts.MostCompanionsAllowed);
        var weight = ShortageWeight.Length == 0 ? (int?)null : Whole(ShortageWeight, "shortageWeight", 1, 99);
        var courses = CourseLines.Read(Courses);
        var seats = WholeOrNone(Seats, "seats", NightFacts.MostSeats);
        var players = new PlayersWanted(
            WholeOrNone(FewestPlayers, "players", PlayersWanted.MostPlayers), WholeOrNone(MostPlayers, "players", PlayersWanted.MostPlayers));
        var game = Played.Trim();
        if (game.Length == 0 && players != new PlayersWanted())
        {
            problems["played"] = NightPages.PlayedFirst;
        }

        if (!Guid.TryParse(Formula, out var formula))
        {
            problems["formula"] = Problems.UnknownFormula;
        }

        if (problems.Count > 0)
        {
            return (null, problems);
        }

        var serveAt = date + time;
        var endsAt = end is { } hour ? (hour > time ? date : date.PlusDays(1)) + hour : (LocalDateTime?)null;
        return (
            new NightFacts(
                Title.Trim(), serveAt, endsAt, Zone.Trim(), Address.Trim(), Bring.Trim(), new FormulaId(formula),
                new Share(runOut / 100.0), shortest, wanted, longest, companions,
                courses.Count > 0 ? courses : null, weight, seats,
                game.Length == 0 ? null : new Played(game, players == new PlayersWanted() ? null : players)),
            problems);

        T Parsed<T>(ParseResult<T> result, string field, string sentence)
        {
            if (!result.Success)
            {
                problems[field] = sentence;
            }

            return result.TryGetValue(default!, out var value) ? value : value;
        }

        int? WholeOrNone(string text, string field, int high) => text.Trim().Length == 0 ? null : Whole(text, field, 1, high);

        int Whole(string text, string field, int low, int high)
        {
            if (int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var value) && value >= low && value <= high)
            {
                return value;
            }

            problems[field] = Phrase.Fill(NightPages.ChooseWholeNumber, low, high);
            return low;
        }
    }

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
