using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Web.Wording;

namespace GameNight.Web.Host.Plan;

/// <summary>What is weighed into a batch, as screen and paper name it.</summary>
/// <param name="Household">The same mass in spoons or cups, where they are known.</param>
/// <param name="IsPart">It is part of the row above and adds nothing.</param>
/// <param name="At">At which step it goes in, where that is another than for the rest of its bowl.</param>
internal sealed record Ingredient(
    string Name, Func<DoughBatch, Grams> Of, Func<Grams, string?> Household, bool IsPart = false, StepKind? At = null)
{
    /// <summary>Ounces, spoons and cups beside the grams; empty for who reads grams alone.</summary>
    public string Beside(DoughBatch batch, Measures measures) => HouseholdText.Beside(Of(batch), Household, measures);
}
