using GameNight.Planning.Toppings;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>Says why a pie is on the table and how well everybody fares. Counts only: a pie tells nobody's name.</summary>
public static class SplitText
{
    /// <summary>"8 slices are planned from it, for 4 people; for 3 of them it is as good as anything could be."</summary>
    public static string Why(ToppingSplit split, PieOrder pie)
    {
        var eaters = split.Servings.Where(serving => serving.PieNumber == pie.Number).ToList();
        var people = eaters.Select(serving => serving.EaterId).Distinct().ToList();
        if (people.Count == 0)
        {
            return PiesByHand.NobodysYet;
        }

        var content = people.Count(id => split.Satisfactions.FirstOrDefault(row => row.EaterId == id) is { } row && row.Score >= row.BestPossible - 0.01);
        return Count(
            PiesByHand.ResourceManager, nameof(PiesByHand.WhyOther), people.Count,
            QuantityText.Slices(eaters.Sum(serving => serving.Slices)), content);
    }

    /// <summary>How near this person comes to the best they could have, and what keeps them from it.</summary>
    public static string Nearness(Satisfaction row) => row.BestPossible <= 0
        ? PiesByHand.NothingToLike
        : QuantityText.Percent(Math.Round(row.Score / row.BestPossible, 2));

    /// <summary>How far the search has come: proved, or how much better it could be at most.</summary>
    public static string Found(ToppingSplit split, int slices) => split.Quality == SplitQuality.Proved
        ? Fill(PiesByHand.FoundProved, slices)
        : Fill(PiesByHand.FoundWithGap, slices, QuantityText.Percent(Math.Round(split.GapPercent / 100, 3)));

    /// <summary>That somebody counts more tonight, and why; null for who counts as usual.</summary>
    public static string? Weight(int percent) => percent <= FairOverTime.UsualPercent
        ? null
        : Fill(PiesByHand.CountsMore, QuantityText.Exact(percent / 100.0));

    /// <summary>What another split would do for everybody, beside the one there is.</summary>
    public static string Difference(ToppingSplit now, ToppingSplit then)
    {
        var before = now.Satisfactions.ToDictionary(row => row.EaterId, Share);
        var better = then.Satisfactions.Count(row => before.TryGetValue(row.EaterId, out var was) && Share(row) > was + 0.005);
        var worse = then.Satisfactions.Count(row => before.TryGetValue(row.EaterId, out var was) && Share(row) < was - 0.005);
        return Fill(PiesByHand.Difference, Percent(Worst(now)), Percent(Worst(then)), better, worse, then.Combinations.Count, now.Combinations.Count);
    }

    private static double Worst(ToppingSplit split) => split.Satisfactions.Select(Share).DefaultIfEmpty(1).Min();

    private static double Share(Satisfaction row) => row.BestPossible <= 0 ? 1 : row.Score / row.BestPossible;

    private static string Percent(double share) => QuantityText.Percent(Math.Round(share, 2));
}
