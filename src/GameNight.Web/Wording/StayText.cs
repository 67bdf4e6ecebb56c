using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Web.Wording.Texts;
using NodaTime;

namespace GameNight.Web.Wording;

/// <summary>Who is there for a part of the evening.</summary>
internal static class StayText
{
    /// <summary>From and until, as an answer says it; nothing for the whole evening.</summary>
    public static IEnumerable<string> Say(AnswerFacts answer)
    {
        if (answer.ComesAtMinute is { } comes)
        {
            yield return Phrase.Fill(AnswerPages.FromAbout, Time(comes));
        }

        if (answer.LeavesAtMinute is { } leaves)
        {
            yield return Phrase.Fill(AnswerPages.UntilAbout, Time(leaves));
        }
    }

    /// <summary>What it means for the host: slices, and pies that come before and after.</summary>
    public static IEnumerable<string> Say(PartOfTheNight part, string name, string zone)
    {
        var who = part.Answer is AnswerState.Coming or AnswerState.Host ? name : Phrase.Fill(TablePages.NameIfTheyCome, name);
        var slices = QuantityText.SlicesEach(part.Slices);
        yield return (part.ComesAt, part.LeavesAt) switch
        {
            ({ } comes, { } leaves) => Phrase.Fill(TablePages.ComesAndLeaves, who, At(comes), At(leaves), slices),
            ({ } comes, null) => Phrase.Fill(TablePages.ComesLate, who, At(comes), slices),
            (_, { } leaves) => Phrase.Fill(TablePages.LeavesEarly, who, At(leaves), slices),
            _ => "",
        };
        var later = part.PiesWhileThere + part.PiesAfter;
        if (part.ComesAt is not null && part.PiesBefore > 0)
        {
            yield return later == 0
                ? Phrase.Count(TablePages.ResourceManager, nameof(TablePages.AllBeforeTheyComeOther), part.PiesBefore)
                : Phrase.Count(
                    TablePages.ResourceManager, nameof(TablePages.BeforeTheyComeOther), part.PiesBefore, later, part.PiesBefore + later);
        }

        if (part.LeavesAt is not null && part.PiesAfter > 0)
        {
            yield return Phrase.Count(TablePages.ResourceManager, nameof(TablePages.AfterTheyLeaveOther), part.PiesAfter);
        }

        string At(Instant at) => QuantityText.Time(at.InZone(NightTime.Zone(zone) ?? DateTimeZone.Utc).TimeOfDay);
    }

    private static string Time(int minute) => QuantityText.Time(LocalTime.FromMinutesSinceMidnight(minute));
}
