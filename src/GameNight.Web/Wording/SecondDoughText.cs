using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording.Texts;
using NodaTime;
using static GameNight.Web.Wording.Phrase;

namespace GameNight.Web.Wording;

/// <summary>Says what is known of the dough beside the main one. Never that it is fit for anybody.</summary>
public static class SecondDoughText
{
    /// <param name="called">What the house calls it; null where nobody described it (any more).</param>
    public static string Name(string? called) => called ?? OtherDough.UsualName;

    public static string Where(SecondDoughOn on, Celsius? paperUpTo, Measures measures) => on switch
    {
        SecondDoughOn.OwnPan => OtherDough.OnOwnPan,
        SecondDoughOn.OwnSurface => OtherDough.OnOwnSurface,
        SecondDoughOn.BakingPaper => paperUpTo is { } limit ? Fill(OtherDough.OnPaperUpTo, measures.Say(limit)) : OtherDough.OnBakingPaper,
    };

    public static string Facts(SecondDoughRecipe recipe, Measures measures)
    {
        var (ball, where) = (measures.SayDough(recipe.Ball), Where(recipe.On, recipe.PaperUpTo, measures));
        return recipe.Rise > Duration.Zero
            ? Fill(OtherDough.Facts, ball, QuantityText.Length(recipe.Rise), where)
            : Fill(OtherDough.FactsWithoutRise, ball, where);
    }

    /// <summary>How it is handled.</summary>
    public static IEnumerable<string> How(SecondDoughPlan plan, Measures measures) =>
    [
        Fill(OtherDough.MixFirst, Where(plan.PerPie.On, plan.PerPie.PaperUpTo, measures)),
        .. plan.PerPie.Rise > Duration.Zero ? [Fill(OtherDough.Rises, QuantityText.Length(plan.PerPie.Rise))] : Array.Empty<string>(),
    ];

    /// <summary>What to take care of, and what it is not.</summary>
    public static IEnumerable<string> Cares(SecondDoughPlan plan, Measures measures) =>
    [
        .. plan.Conflicts.OfType<PaperAboveItsLimit>().Select(hot => Fill(Conflicts.PaperAboveItsLimit, measures.Say(hot.Oven), measures.Say(hot.PaperUpTo))),
        Cautions.KitchenUsesWheat,
    ];

    public static string Caption(SecondDoughPlan plan, Measures measures) => Count(
        OtherDough.ResourceManager, nameof(OtherDough.CaptionOther), plan.Pies, measures.SayDough(plan.Ball), measures.SayDough(plan.Total));

    /// <summary>What is weighed: name, grams for one pie, grams in all. What the pack does not ask for is left out.</summary>
    public static IReadOnlyList<(string Name, Grams ForOne, Grams InAll)> Rows(SecondDoughPlan plan) =>
    [
        .. new (string Name, Grams ForOne, Grams InAll)[]
        {
            (OtherDough.MixRow, plan.PerPie.Mix, plan.Mix),
            (Words.WaterRow, plan.PerPie.Water, plan.Water),
            (OtherDough.YeastRow, plan.PerPie.Yeast, plan.Yeast),
            (Words.OilRow, plan.PerPie.Oil, plan.Oil),
            (Words.SaltRow, plan.PerPie.Salt, plan.Salt),
        }.Where(row => row.ForOne > default(Grams)),
    ];
}
