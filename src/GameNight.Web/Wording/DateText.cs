using GameNight.Nights.Dates;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>Sentences about evenings that are asked about, and about the rhythm of a group.</summary>
internal static class DateText
{
    public static string Say(DateAnswer answer) => answer switch
    {
        DateAnswer.Works => DateGuestPages.Works,
        DateAnswer.AtAPinch => DateGuestPages.AtAPinch,
        DateAnswer.No => DateGuestPages.No,
    };

    /// <summary>Evenings of which another answer gave way to the one that counts.</summary>
    public static IEnumerable<string> Differences(DateQuestion question, ReplacedSaying before) =>
        from evening in question.Evenings
        where before.Answers.ContainsKey(evening.Id) && question.Answers.ContainsKey(evening.Id)
        let pair = (Was: before.Answers[evening.Id], Is: question.Answers[evening.Id])
        where pair.Was != pair.Is
        select Phrase.Fill(DateGuestPages.ReplacedWas, QuantityText.DayAndTime(evening.At), Say(pair.Was), Say(pair.Is));

    /// <param name="names">By guest id.</param>
    public static string Say(DateObstacle obstacle, string zone, IReadOnlyDictionary<string, string> names) => obstacle switch
    {
        DateObstacle.HasPassed => DatePages.HasPassed,
        DateObstacle.DayOff off => Phrase.Fill(DatePages.DayOff, QuantityText.Day(off.Day)),
        DateObstacle.EveningTaken taken => Phrase.Fill(
            DatePages.EveningTaken, QuantityText.Moment(taken.From, zone), QuantityText.Moment(taken.Until, zone)),
        DateObstacle.DoughTooLate late => Phrase.Fill(
            DatePages.DoughTooLate, QuantityText.Length(late.ShortestCold), QuantityText.Moment(late.MixBy, zone)),
        DateObstacle.NoHandsForDough none => Phrase.Fill(
            DatePages.NoHands, QuantityText.Moment(none.From, zone), QuantityText.Moment(none.Until, zone)),
        DateObstacle.MustHaveSaysNo no => Phrase.Fill(
            DatePages.MustHaveSaysNo, WordText.And([.. no.Guests.Select(guest => names.GetValueOrDefault(guest, ""))])),
        var other => throw new InvalidOperationException($"Unknown obstacle {other}."),
    };

    public static string Say(DateProblem problem) => problem.Fault switch
    {
        DateFault.Missing => DatePages.NameIt,
        DateFault.TooLong => Phrase.Fill(DatePages.NameTooLong, problem.High),
        DateFault.UnknownZone => DatePages.ZoneUnknown,
        DateFault.NoOption => DatePages.NoEvening,
        DateFault.TooManyOptions => Phrase.Fill(DatePages.TooManyEvenings, problem.High),
        DateFault.HasPassed => DatePages.InThePast,
        DateFault.InSkippedHour => DatePages.InSkippedHour,
        DateFault.TooFarAhead => DatePages.TooFarAhead,
        DateFault.Repeated => DatePages.Repeated,
        DateFault.QuorumOutOfRange => Phrase.Fill(DatePages.QuorumRange, problem.Low, problem.High),
        DateFault.NeededNotAsked => DatePages.NeededNotAsked,
        DateFault.NobodyAsked => DatePages.NobodyAsked,
        DateFault.TooManyAsked => Phrase.Fill(DatePages.TooManyAsked, problem.High),
        DateFault.DeadlineHasPassed => DatePages.DeadlinePassed,
        DateFault.DeadlineAfterFirst => DatePages.DeadlineAfterFirst,
    };

    public static string Say(RhythmProblem problem) => problem.Fault switch
    {
        RhythmFault.OutOfRange => Phrase.Fill(RhythmPages.OutOfRange, problem.Low, problem.High),
        RhythmFault.NoDistance => RhythmPages.NoDistance,
        RhythmFault.TooManyDaysOff => Phrase.Fill(RhythmPages.TooManyDaysOff, problem.High),
        RhythmFault.TooManyMoved => Phrase.Fill(RhythmPages.TooManyMoved, problem.High),
        RhythmFault.NotANight => RhythmPages.NotANight,
        RhythmFault.HasPassed => RhythmPages.HasPassed,
        RhythmFault.InSkippedHour => RhythmPages.InSkippedHour,
        RhythmFault.TooFarMoved => Phrase.Fill(RhythmPages.TooFarMoved, problem.High),
    };

    /// <summary>How often, by the value it has in a list: <c>w2</c> for every second week, <c>m-1</c> for the last of a month.</summary>
    public static IReadOnlyList<(string Value, string Text)> Distances() =>
    [
        .. Enumerable.Range(1, Rhythm.MostWeeks).Select(weeks => ($"w{weeks}", weeks switch
        {
            1 => RhythmPages.EveryWeek,
            2 => RhythmPages.EverySecondWeek,
            _ => Phrase.Fill(RhythmPages.EveryWeeks, weeks),
        })),
        ("m1", RhythmPages.FirstOfMonth),
        ("m2", RhythmPages.SecondOfMonth),
        ("m3", RhythmPages.ThirdOfMonth),
        ("m4", RhythmPages.FourthOfMonth),
        ("m-1", RhythmPages.LastOfMonth),
    ];
}
