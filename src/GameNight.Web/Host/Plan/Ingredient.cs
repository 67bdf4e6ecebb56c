using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Plan;

/// <summary>What is weighed into a batch, as screen and paper name it.</summary>
/// <param name="Household">The same mass in spoons or cups, where they are known.</param>
internal sealed record Ingredient(string Name, Func<DoughBatch, Grams> Of, Func<Grams, string?> Household)
{
    /// <summary>Everything but the flour, in the order of weighing; what this dough goes without is left out.</summary>
    public static IEnumerable<Ingredient> BesideFlour(NightPlan plan, Measures measures)
    {
        var form = plan.Yeast.Form;
        Ingredient[] all =
        [
            new(Phrase.Fill(PlanPages.WaterAt, measures.SayWholeDegrees(plan.Water.Water.Expected)), batch => batch.Water, HouseholdText.OfWater),
            new(Words.SaltRow, batch => batch.Salt, HouseholdText.OfSalt),
            new(Words.OilRow, batch => batch.Oil, HouseholdText.OfOil),
            plan.Dough.Formula.SugarIsHoney
                ? new(Words.HoneyRow, batch => batch.Sugar, HouseholdText.OfHoney)
                : new(Words.SugarRow, batch => batch.Sugar, HouseholdText.OfSugar),
            new(Phrase.Capital(WordText.Say(form)), batch => batch.Yeast, mass => HouseholdText.OfYeast(form, mass)),
        ];
        return all.Where(row => plan.Dough.Batches.Any(batch => row.Of(batch) > default(Grams)));
    }

    /// <summary>Ounces, spoons and cups beside the grams; empty for who reads grams alone.</summary>
    public string Beside(DoughBatch batch, Measures measures) => HouseholdText.Beside(Of(batch), Household, measures);
}
