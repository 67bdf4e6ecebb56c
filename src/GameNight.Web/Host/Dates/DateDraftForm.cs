using System.Globalization;
using GameNight.Nights.Dates;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.Web.Wording.Texts;
using NodaTime;
using NodaTime.Text;

namespace GameNight.Web.Host.Dates;

/// <summary>An evening as a host types it.</summary>
public sealed class TypedEvening
{
    public string Date { get; set; } = "";
    public string Time { get; set; } = "";
}

/// <summary>What a host types to ask for a date, as text, so that nothing typed is ever lost to parsing.</summary>
public sealed class DateDraftForm
{
    /// <summary>So many evenings stand on an empty page.</summary>
    private const int Beginning = 3;

    /// <summary>Answers are asked for until so many days before the first evening: shopping, two days in the cold, and some air.</summary>
    private const int DaysBeforeFirst = 5;

    private static readonly LocalDatePattern Dates = LocalDatePattern.Iso;

    /// <summary>Where the evenings that were read last stand on the page.</summary>
    private List<int> _places = [];

    /// <summary>Why evenings cannot be held as things stand, by what is typed; a host may ask for them all the same.</summary>
    private IReadOnlyDictionary<(string Date, string Time), string> _hints = new Dictionary<(string, string), string>();

    public string Title { get; set; } = "";
    public string Zone { get; set; } = "";
    public List<TypedEvening> Evenings { get; } = [];
    public string UntilDate { get; set; } = "";
    public string UntilTime { get; set; } = "20:00";
    public string Quorum { get; set; } = "";
    public HashSet<GuestId> Asked { get; } = [];
    public HashSet<GuestId> Needed { get; } = [];

    /// <summary>The next nights of the rhythm, or empty evenings at the usual time.</summary>
    public static DateDraftForm Of(DateStart start, LocalDate today)
    {
        var form = new DateDraftForm { Title = start.Title ?? NightPages.UsualTitle, Zone = start.Zone };
        form.Evenings.AddRange(start.Rhythm.Take(Beginning).Select(night => Typed(night.At)));
        while (form.Evenings.Count < Beginning)
        {
            form.OneMore(start.Usual);
        }

        form.Asked.UnionWith(start.People.Where(person => person.IsStanding && !person.IsHost).Select(person => person.Id));
        form.Quorum = Whole(Math.Max(1, (form.Asked.Count + 1) / 2));
        if (start.Rhythm is [var first, ..])
        {
            var until = first.At.Date.PlusDays(-DaysBeforeFirst);
            form.UntilDate = Dates.Format(until > today ? until : today.PlusDays(1));
        }

        return form;
    }

    public static DateDraftForm Of(DateView view)
    {
        var form = new DateDraftForm
        {
            Title = view.Facts.Title,
            Zone = view.Facts.Zone,
            UntilDate = Dates.Format(view.Facts.OpenUntil.Date),
            UntilTime = TypedTimes.Text(view.Facts.OpenUntil.TimeOfDay),
            Quorum = Whole(view.Facts.Quorum),
        };
        form.Evenings.AddRange(view.Facts.Options.Select(Typed));
        form.Asked.UnionWith(view.Asked.Select(row => row.Id));
        form.Needed.UnionWith(view.Asked.Where(row => row.IsNeeded).Select(row => row.Id));
        return form;
    }

    /// <summary>Shows what stands in the way of the evenings that were read last.</summary>
    /// <returns>True when some of it was not on the page yet: then the host looks at it before anything is asked.</returns>
    public bool Warns(DateChoiceFacts facts, IReadOnlyDictionary<LocalDateTime, IReadOnlyList<DateObstacle>> obstacles)
    {
        var before = _hints;
        _hints = facts.Options
            .Select((option, index) => (Typed: Evenings[_places[index]], Obstacles: obstacles.GetValueOrDefault(option) ?? []))
            .Where(row => row.Obstacles.Count > 0)
            .ToDictionary(
                row => (row.Typed.Date, row.Typed.Time),
                row => string.Join(' ', row.Obstacles.Select(obstacle => Wording.Phrase.Fill(
                    DatePages.CannotBe, Wording.DateText.Say(obstacle, facts.Zone, new Dictionary<string, string>())))));
        return _hints.Any(hint => before.GetValueOrDefault(hint.Key) != hint.Value);
    }

    /// <returns>Null where nothing stands in the way, and for what was typed since.</returns>
    public string? HintOf(TypedEvening evening) => _hints.GetValueOrDefault((evening.Date, evening.Time));

    /// <summary>Another evening, at the time of the last one.</summary>
    public void OneMore(LocalTime? usual = null) => Evenings.Add(new TypedEvening
    {
        Time = Evenings.LastOrDefault()?.Time is { Length: > 0 } time ? time : TypedTimes.Text(usual ?? new LocalTime(19, 30)),
    });

    /// <returns>What is asked, or the fields that cannot be read. An evening without a date is none.</returns>
    public (DateChoiceFacts? Facts, Asking Asking, IReadOnlyDictionary<string, string> Problems) Read()
    {
        var problems = new Dictionary<string, string>();
        var options = new List<LocalDateTime>();
        var places = new List<int>();
        for (var index = 0; index < Evenings.Count; index++)
        {
            if (Evenings[index].Date.Length == 0)
            {
                continue;
            }

            if (Moment(Evenings[index].Date, Evenings[index].Time) is { } evening)
            {
                options.Add(evening);
                places.Add(index);
            }
            else
            {
                problems[$"option{index}"] = DatePages.PickEvening;
            }
        }

        var until = Moment(UntilDate, UntilTime);
        if (until is null)
        {
            problems["openUntil"] = DatePages.PickDeadline;
        }

        if (!int.TryParse(Quorum, NumberStyles.Integer, CultureInfo.InvariantCulture, out var quorum))
        {
            problems["quorum"] = Wording.Phrase.Fill(DatePages.WholeQuorum, Asked.Count + 1);
        }

        _places = places;
        var asking = new Asking([.. Asked], [.. Needed.Where(Asked.Contains)]);
        return problems.Count > 0
            ? (null, asking, problems)
            : (new DateChoiceFacts(Title.Trim(), Zone.Trim(), options, quorum, until!.Value), asking, problems);
    }

    /// <summary>Problems that the desk found, by the field they belong to here.</summary>
    public IReadOnlyDictionary<string, string> Placed(IReadOnlyList<DateProblem> problems) => problems
        .GroupBy(problem => problem.Field.StartsWith("option", StringComparison.Ordinal) && int.TryParse(problem.Field["option".Length..], out var index)
            ? $"option{_places[index]}"
            : problem.Field)
        .ToDictionary(group => group.Key, group => Wording.DateText.Say(group.First()));

    private static LocalDateTime? Moment(string date, string time) =>
        Dates.Parse(date) is { Success: true } day && TypedTimes.Parse(time) is { Success: true } hour
            ? day.Value + hour.Value
            : null;

    private static TypedEvening Typed(LocalDateTime at) =>
        new() { Date = Dates.Format(at.Date), Time = TypedTimes.Text(at.TimeOfDay) };

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);
}
