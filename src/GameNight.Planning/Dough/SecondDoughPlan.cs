using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// Pies of the second dough lie on baking paper, and the oven is set hotter than the paper's maker allows.
/// <paramref name="Oven"/> would have to come down to <paramref name="PaperUpTo"/>, or a pan of their own takes its place.
/// </summary>
public sealed record PaperAboveItsLimit(Celsius Oven, Celsius PaperUpTo) : Conflict;

/// <summary>
/// A notice: every pie lies on the second dough, so there is no main one, and no timeline, which begins with it.
/// </summary>
public sealed record EveryPieOnSecondDough(int Pies) : Conflict;

/// <summary>What to weigh of the second dough, in one bowl of its own.</summary>
/// <param name="Pies">How many pies lie on it, at least 1.</param>
/// <param name="PerPie">As the host wrote it from the pack.</param>
/// <param name="Mix">In all, as the kitchen's scales can weigh it; so are the others.</param>
public sealed record SecondDoughPlan(
    int Pies, SecondDoughRecipe PerPie, Grams Mix, Grams Water, Grams Yeast, Grams Oil, Grams Salt, IReadOnlyList<Conflict> Conflicts)
{
    public Grams Total => Mix + Water + Yeast + Oil + Salt;

    /// <summary>What one of the equal pieces weighs.</summary>
    public Grams Ball => Total / Pies;

    /// <param name="scale">Null when the scales are not known: then nothing is rounded.</param>
    /// <returns>Null where no pie lies on it.</returns>
    public static SecondDoughPlan? For(SecondDoughRecipe? recipe, int pies, Celsius oven, KitchenScale? scale)
    {
        if (recipe is null || pies == 0)
        {
            return null;
        }

        return new SecondDoughPlan(
            pies,
            recipe,
            Weighed(recipe.Mix, scale?.Coarse),
            Weighed(recipe.Water, scale?.Coarse),
            Weighed(recipe.Yeast, scale?.Fine),
            Weighed(recipe.Oil, scale?.Coarse),
            Weighed(recipe.Salt, scale?.Fine),
            recipe is { On: SecondDoughOn.BakingPaper, PaperUpTo: { } limit } && oven > limit ? [new PaperAboveItsLimit(oven, limit)] : []);

        Grams Weighed(Grams perPie, Grams? step) => step is { } smallest ? ScaleRounding.OnStep(perPie * pies, smallest) : perPie * pies;
    }
}
