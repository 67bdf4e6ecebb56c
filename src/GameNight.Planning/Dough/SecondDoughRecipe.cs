using GameNight.Planning.Quantities;
using NodaTime;

namespace GameNight.Planning.Dough;

/// <summary>What pies of the second dough lie on, apart from everybody else's.</summary>
public enum SecondDoughOn
{
    OwnPan,

    /// <summary>A stone, steel or tray that nothing else is baked on, with its own peel.</summary>
    OwnSurface,

    /// <summary>Only up to the temperature that its maker names.</summary>
    BakingPaper,
}

/// <summary>
/// A dough beside the main one, as its pack asks for it: what goes into one pie. It follows the pack alone; no model of ours
/// says anything of its yeast or its hours.
/// </summary>
/// <param name="Mix">Flour or mix, 20 to 1000 g.</param>
/// <param name="Water">0 to 1000 g.</param>
/// <param name="Yeast">0 to 50 g, of the kind the pack names.</param>
/// <param name="Oil">0 to 200 g.</param>
/// <param name="Salt">0 to 30 g.</param>
/// <param name="Rise">From mixed to shaped, none to 12 hours.</param>
/// <param name="PaperUpTo">What the maker of the baking paper allows, 120 to 300 °C; null where nothing lies on paper.</param>
public sealed record SecondDoughRecipe(
    Grams Mix, Grams Water, Grams Yeast, Grams Oil, Grams Salt, Duration Rise, SecondDoughOn On, Celsius? PaperUpTo = null)
{
    /// <summary>The dough of one pie.</summary>
    public Grams Ball => Mix + Water + Yeast + Oil + Salt;
}
