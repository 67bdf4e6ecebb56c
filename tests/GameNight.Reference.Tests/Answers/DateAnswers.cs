using GameNight.Planning.Appetite;
using GameNight.Planning.Dates;

namespace GameNight.Reference.Tests;

/// <summary>What the engine says of evenings that are asked about.</summary>
internal static class DateAnswers
{
    public static IReadOnlyDictionary<string, Func<double>> ById { get; } = Rows().ToDictionary(row => row.Id, row => row.Answer);

    private static IEnumerable<(string Id, Func<double> Answer)> Rows() =>
        new[] { ("fri", "YYYMMN"), ("sat", "YYMMMM"), ("sun", "YYYYNN") }.SelectMany(day => new (string, Func<double>)[]
        {
            ($"5.1.{day.Item1}.mean", () => Evening(day.Item2, 1).Heads.Mean),
            ($"5.1.{day.Item1}.variance", () => Evening(day.Item2, 1).Heads.Variance),
            ($"5.1.{day.Item1}.atLeast4", () => Evening(day.Item2, 4).Quorum),
            ($"5.1.{day.Item1}.atLeast3", () => Evening(day.Item2, 3).Quorum),
        });

    private static (SliceDistribution Heads, double Quorum, IReadOnlyDictionary<string, double>) Evening(string answers, int quorum) =>
        DateModel.Heads(
            [.. answers.Select((_, index) => new DateGuest($"{index}", new Dictionary<string, DateAnswer>()))],
            guest => answers[int.Parse(guest.Id, System.Globalization.CultureInfo.InvariantCulture)] switch
            {
                'Y' => DateAnswer.Works,
                'M' => DateAnswer.AtAPinch,
                _ => DateAnswer.No,
            },
            guest => answers[int.Parse(guest.Id, System.Globalization.CultureInfo.InvariantCulture)] switch { 'Y' => .9, 'M' => .5, _ => .05 },
            quorum);
}
