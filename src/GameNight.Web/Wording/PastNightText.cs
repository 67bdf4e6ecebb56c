using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>
/// Says what is known of a night that is over, and how little it is where it is little: a value that was not noted is said so,
/// one or two voices are counted and never averaged.
/// </summary>
public static class PastNightText
{
    /// <summary>An average this close to a word is that word; this far, it leans to the next. Our own choice.</summary>
    private const double Leaning = 0.2;

    private const double NextWord = 0.6;

    public static string Came(int people) => people == 0 ? PastNightPages.NobodyCame : Counted(nameof(PastNightPages.CameOther), people);

    /// <summary>Slices may be counted in halves.</summary>
    public static string Slices(double slices) => QuantityText.SlicesEach(slices);

    public static string Planned(SlicesAccount slices) => slices.Planned is { } planned
        ? Fill(PastNightPages.PlannedSlices, Slices(planned), slices.SlicesPerPie)
        : PastNightPages.NoPlanWasMade;

    public static string Baked(SlicesAccount slices) => slices.Baked is { } baked
        ? Counted(nameof(PastNightPages.BakedSlicesOther), baked)
        : PastNightPages.BakedIsNotNoted;

    /// <summary>A night in one line, for the list.</summary>
    public static string Course(SlicesAccount slices) => Fill(
        PastNightPages.Course,
        slices.PlannedPies is { } pies ? Counted(nameof(PastNightPages.PiesPlannedOther), pies.Value) : PastNightPages.NoPlan,
        slices.BakedPies is { } baked ? Counted(nameof(PastNightPages.CoursePiesBakedOther), baked.Value) : PastNightPages.PiesBakedNotNoted,
        slices.Eaten is { } eaten ? Counted(nameof(PastNightPages.SlicesEatenOther), eaten) : PastNightPages.SlicesEatenNotKnown,
        slices.Left is { } left ? Counted(nameof(PastNightPages.CourseSlicesLeftOther), left) : PastNightPages.SlicesLeftNotNoted);

    /// <summary>What the eaten slices say, set against what was expected. A night that ran out says only how much there was.</summary>
    public static string Eaten(SlicesAccount slices, int people)
    {
        if (slices.Eaten is not { } eaten)
        {
            return slices.Baked is null ? PastNightPages.NothingIsNoted : PastNightPages.LeftIsNotNoted;
        }

        var (number, baked) = (Number(eaten), Slices(slices.Baked!.Value));
        var sentence = people > 0 && eaten > 0
            ? Fill(PastNightPages.WereEatenEach, number, baked, Number(eaten / people))
            : Fill(PastNightPages.WereEaten, number, baked);
        if (slices.Left == 0 && eaten > 0)
        {
            return $"{sentence} {PastNightPages.NothingWasLeft}";
        }

        return slices.Wanted is { } wanted ? $"{sentence} {Against(eaten, wanted.Low, wanted.High)}" : sentence;
    }

    public static string Enough(Opinions said) => said switch
    {
        { EnoughVoices: 0 } => PastNightPages.EnoughUnsaid,
        { AverageEnough: { } average } => Fill(PastNightPages.EnoughOnAverage, Enough(average), Voices(said.Enough, WordText.Say)),
        _ => Fill(PastNightPages.EnoughOfFew, Voices(said.Enough, WordText.Say)),
    };

    public static string Evening(Opinions said) => said switch
    {
        { EveningVoices: 0 } => PastNightPages.EveningUnsaid,
        { AverageEvening: { } average } => Fill(PastNightPages.EveningOnAverage, Evening(average), Voices(said.Evening, WordText.Say)),
        _ => Fill(PastNightPages.EveningOfFew, Voices(said.Evening, WordText.Say)),
    };

    public static string SlicesEach(Opinions said) => said switch
    {
        { SlicesVoices: 0 } => PastNightPages.SlicesUnsaid,
        { SlicesEach: { } each } => Counted(nameof(PastNightPages.SlicesOnAverageOther), said.SlicesVoices, Number(each)),
        _ => Counted(nameof(PastNightPages.SlicesOfFewOther), said.SlicesVoices),
    };

    /// <summary>An average of the answers, from -1 to 1, in words.</summary>
    public static string Enough(double average) =>
        Average(average, WordText.Say(Nights.Records.Enough.TooLittle), WordText.Say(Nights.Records.Enough.Right), WordText.Say(Nights.Records.Enough.TooMuch));

    /// <summary>An average of the answers, from -1 to 1, in words.</summary>
    public static string Evening(double average) =>
        Average(average, WordText.Say(Nights.Records.Evening.Poor), WordText.Say(Nights.Records.Evening.Fine), WordText.Say(Nights.Records.Evening.Lovely));

    /// <summary>What one guest said, in one line.</summary>
    public static string Said(LookBackFacts? said, NightPies pies)
    {
        string?[] parts = said is null ? [] :
        [
            said.Enough is { } enough ? Fill(PastNightPages.SaidEnough, WordText.Say(enough)) : null,
            said.Evening is { } evening ? Fill(PastNightPages.SaidEvening, WordText.Say(evening)) : null,
            said.Slices is { } slices ? Counted(nameof(PastNightPages.SlicesEatenOther), slices) : null,
            said.BestPies.Count > 0
                ? Fill(PastNightPages.SaidBest, Kinds(said.BestPies.Select(pies.KindOf).OfType<PieKind>().Distinct(), pies))
                : null,
            said.Words.Length > 0 ? Fill(PastNightPages.Quoted, said.Words) : null,
        ];
        var line = WordText.ListOuter(parts.OfType<string>());
        return line.Length == 0 ? PastNightPages.SaidNothing
            : said!.Words.Length > 0 ? line
            : Fill(PastNightPages.SaidLine, line);
    }

    /// <summary>What won, for hosts: with the votes, however few.</summary>
    public static string Best(Opinions said, NightPies pies) => said switch
    {
        { PieVoices: 0 } => PastNightPages.BestUnsaid,
        { Winners.Count: 0 } => Counted(nameof(PastNightPages.NoPieStandsOutOther), said.PieVoices),
        _ => Fill(PastNightPages.LikedBestWithVotes, Kinds(said.Winners, pies), said.Pies[0].Votes, said.PieVoices),
    };

    /// <summary>What won as the host saw it.</summary>
    public static string Won(IReadOnlyList<PieKind> kinds, NightPies pies) => Fill(PastNightPages.Won, Kinds(kinds, pies));

    /// <summary>What won, for other guests.</summary>
    public static string? Best(Averages said, NightPies pies) => said.Best switch
    {
        null => null,
        [] => PastNightPages.NoPieStandsOutToGuests,
        var best => Fill(PastNightPages.LikedBest, Kinds(best, pies)),
    };

    public static string Kinds(IEnumerable<PieKind> kinds, NightPies pies) => WordText.ListOuter(kinds.Select(kind => Kind(kind, pies)));

    /// <summary>"A (tomato sauce, mozzarella)", or "part A (…), part B (…)": letters first, as they are drawn.</summary>
    public static string Kind(PieKind kind, NightPies pies) => kind.Letters.ToList() is [var whole]
        ? Fill(PastNightPages.WholePie, whole, Combination(whole, pies))
        : WordText.List(kind.Letters.Select(letter => Fill(PastNightPages.PartOfPie, letter, Combination(letter, pies))));

    public static string Combination(string letter, NightPies pies) => WordText.List(pies.Combinations[letter].ItemIds
        .Select(id => pies.Items.FirstOrDefault(item => item.Id.ToString() == id)?.Name.ToLowerInvariant() ?? PastNightPages.SomethingOnIt));

    private static string Against(double eaten, double low, double high)
    {
        var (least, most) = (Whole(low), Whole(high));
        return eaten < Math.Round(low) ? Fill(PastNightPages.LessThanExpected, least, most)
            : eaten > Math.Round(high) ? Fill(PastNightPages.MoreThanExpected, least, most)
            : Fill(PastNightPages.AsExpected, least, most);
    }

    /// <summary>How many said what: "2 right and 1 too much".</summary>
    private static string Voices<T>(IReadOnlyDictionary<T, int> counts, Func<T, string> say)
        where T : struct, Enum =>
        WordText.And([.. counts.Where(row => row.Value > 0).Select(row => Fill(PastNightPages.Voices, row.Value, say(row.Key)))]);

    private static string Average(double average, string low, string middle, string high) => average switch
    {
        <= -NextWord => low,
        < -Leaning => Fill(PastNightPages.Leaning, middle, low),
        <= Leaning => middle,
        < NextWord => Fill(PastNightPages.Leaning, middle, high),
        _ => high,
    };

    private static string Counted(string other, double count, params object?[] values) =>
        Count(PastNightPages.ResourceManager, other, Math.Round(count, 1), values);
}
