using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
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

    public static string People(int count) => count == 1 ? "1 person" : $"{count} people";

    public static string Came(int people) => people == 0 ? "Nobody came." : $"{People(people)} came.";

    /// <summary>Slices may be counted in halves.</summary>
    public static string Slices(double slices) => $"{Number(slices)} {(slices == 1 ? "slice" : "slices")}";

    public static string Planned(SlicesAccount slices) => slices.Planned is { } planned
        ? $"{Slices(planned)}, {slices.SlicesPerPie} to a pie"
        : "no plan was made";

    public static string Baked(SlicesAccount slices) => slices.Baked is { } baked ? $"{Slices(baked)} baked" : "not noted how many pies were baked";

    /// <summary>A night in one line, for the list.</summary>
    public static string Course(SlicesAccount slices)
    {
        var planned = slices.PlannedPies is { } pies ? $"{Pies(pies)} planned" : "No plan";
        var baked = slices.BakedPies is { } count ? $"{count} baked" : "baked not noted";
        var eaten = slices.Eaten is { } number ? $"{Slices(number)} eaten" : "eaten not known";
        var left = slices.Left is { } rest ? $"{Number(rest)} left" : "left not noted";
        return $"{planned}, {baked}; {eaten}, {left}.";
    }

    /// <summary>What the eaten slices say, set against what was expected. A night that ran out says only how much there was.</summary>
    public static string Eaten(SlicesAccount slices, int people)
    {
        if (slices.Eaten is not { } eaten)
        {
            return slices.Baked is null ? "Pies baked and slices left are not noted yet." : "How many slices were left is not noted.";
        }

        var each = people > 0 && eaten > 0 ? $", about {Number(eaten / people)} each" : "";
        var sentence = $"{Number(eaten)} of {Slices(slices.Baked!.Value)} were eaten{each}.";
        if (slices.Left == 0 && eaten > 0)
        {
            return $"{sentence} Nothing was left, so people may have wanted more.";
        }

        return slices.Wanted is { } wanted ? $"{sentence} {Against(eaten, wanted.Low, wanted.High)}" : sentence;
    }

    public static string Enough(Opinions said) => Question(
        "Enough", "whether there was enough", said.EnoughVoices, said.AverageEnough, said.Enough, WordText.Say, Enough);

    public static string Evening(Opinions said) => Question(
        "The evening", "how the evening was", said.EveningVoices, said.AverageEvening, said.Evening, WordText.Say, Evening);

    public static string SlicesEach(Opinions said) => said switch
    {
        { SlicesVoices: 0 } => "Nobody has said how many slices they ate.",
        { SlicesEach: { } each } => $"{People(said.SlicesVoices)} say they ate {Number(each)} slices on average.",
        _ => $"Only {People(said.SlicesVoices)} said how many slices they ate: too few for an average.",
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
            said.Enough is { } enough ? $"enough: {WordText.Say(enough)}" : null,
            said.Evening is { } evening ? $"the evening: {WordText.Say(evening)}" : null,
            said.Slices is { } slices ? $"{Slices(slices)} eaten" : null,
            said.BestPies.Count > 0 ? $"liked best: {Kinds(said.BestPies.Select(pies.KindOf).OfType<PieKind>().Distinct(), pies)}" : null,
            said.Words.Length > 0 ? $"“{said.Words}”" : null,
        ];
        var text = string.Join("; ", parts.OfType<string>());
        return text.Length == 0 ? "nothing." : text.EndsWith('”') ? text : $"{text}.";
    }

    /// <summary>What won, for hosts: with the votes, however few.</summary>
    public static string Best(Opinions said, NightPies pies) => said switch
    {
        { PieVoices: 0 } => "Nobody has named a best pie.",
        { Winners.Count: 0 } => $"No pie stands out: no two of {People(said.PieVoices)} named the same.",
        _ => $"Liked best: {Kinds(said.Winners, pies)} ({said.Pies[0].Votes} of {said.PieVoices}).",
    };

    /// <summary>What won as the host saw it.</summary>
    public static string Won(IReadOnlyList<PieKind> kinds, NightPies pies) => $"Won, as the host saw it: {Kinds(kinds, pies)}.";

    /// <summary>What won, for other guests.</summary>
    public static string? Best(Averages said, NightPies pies) => said.Best switch
    {
        null => null,
        [] => "No pie stands out: no two people named the same.",
        var best => $"Liked best: {Kinds(best, pies)}.",
    };

    public static string Kinds(IEnumerable<PieKind> kinds, NightPies pies) => string.Join("; ", kinds.Select(kind => Kind(kind, pies)));

    /// <summary>"A (tomato sauce, mozzarella)", or "half A (…), half B (…)": letters first, as they are drawn.</summary>
    public static string Kind(PieKind kind, NightPies pies)
    {
        var sectors = kind.Letters.Select(letter => $"{letter} ({Combination(letter, pies)})").ToList();
        return sectors.Count == 1 ? sectors[0] : string.Join(", ", sectors.Select(sector => $"half {sector}"));
    }

    public static string Combination(string letter, NightPies pies) => WordText.List(pies.Combinations[letter].ItemIds
        .Select(id => pies.Items.FirstOrDefault(item => item.Id.ToString() == id)?.Name ?? "something")
        .Select(name => name.ToLowerInvariant()));

    private static string Against(double eaten, double low, double high)
    {
        var expected = $"{Whole(low)} to {Whole(high)}";
        return eaten < Math.Round(low) ? $"Less than expected ({expected})."
            : eaten > Math.Round(high) ? $"More than expected ({expected})."
            : $"That is within what was expected ({expected}).";
    }

    private static string Question<T>(
        string subject, string asked, int voices, double? average, IReadOnlyDictionary<T, int> counts, Func<T, string> say,
        Func<double, string> inWords)
        where T : struct, Enum
    {
        if (voices == 0)
        {
            return $"Nobody has said {asked}.";
        }

        var each = WordText.And([.. counts.Where(row => row.Value > 0).Select(row => $"{row.Value} {say(row.Key)}")]);
        return average is { } mean
            ? $"{subject}: {inWords(mean)} on average ({each})."
            : $"{subject}: {each}; too few voices for an average.";
    }

    private static string Average(double average, string low, string middle, string high) => average switch
    {
        <= -NextWord => low,
        < -Leaning => $"{middle}, leaning to {low}",
        <= Leaning => middle,
        < NextWord => $"{middle}, leaning to {high}",
        _ => high,
    };
}
