using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Plan;

/// <summary>What is weighed together: all of a batch, or what goes into its preferment, its soaker and the dough itself.</summary>
/// <param name="Name">Null when everything goes into one bowl.</param>
/// <param name="IsCounted">False for what only says how the flour of the others is made up.</param>
/// <param name="At">At which step it is weighed; null where the timeline has none for it.</param>
internal sealed record Weighing(string? Name, IReadOnlyList<Ingredient> Rows, bool IsCounted = true, StepKind? At = null)
{
    /// <summary>In the order of work; what this dough goes without is left out.</summary>
    public static IReadOnlyList<Weighing> Of(NightPlan plan, Measures measures)
    {
        var formula = plan.Dough.Formula;
        var flours = Flours(formula);
        Weighing[] all = formula.FlourAhead > 0
            ?
            [
                new(WeighPages.FloursInAll, flours, IsCounted: false),
                .. formula.Preferment is { } preferment
                    ? [new Weighing(
                        Phrase.Fill(WeighPages.IntoPreferment, preferment.Name, QuantityText.Length(preferment.Before)),
                        Portion(batch => batch.Preferment, flours.Count > 0 ? WeighPages.FlourOfBlend : Words.FlourRow, plan.Yeast.Form),
                        At: StepKind.Preferment)]
                    : Array.Empty<Weighing>(),
                .. formula.Soaker is { } soaker
                    ? [new Weighing(
                        Phrase.Fill(WeighPages.IntoSoaker, soaker.Name),
                        Portion(batch => batch.Soaker, soaker.Name, plan.Yeast.Form))]
                    : Array.Empty<Weighing>(),
                new(WeighPages.IntoDough, [Flour, .. HeldBack(plan), .. BesideFlour(plan, measures)], At: StepKind.Mix),
            ]
            : [new(null, [.. flours.Count > 0 ? flours : [Flour], .. HeldBack(plan), .. BesideFlour(plan, measures)], At: StepKind.Mix)];
        return
        [
            .. all
                .Select(part => part with { Rows = [.. part.Rows.Where(row => plan.Dough.Batches.Any(batch => row.Of(batch) > default(Grams)))] })
                .Where(part => part.Rows.Count > 0),
        ];
    }

    /// <summary>The batches as they are weighed: on the steps of the kitchen's scales, where those are known.</summary>
    public static IReadOnlyList<DoughBatch> Batches(DoughPlan dough) =>
        dough.OnScale is { } rounded ? [.. rounded.Select(one => one.Batch)] : dough.Batches;

    /// <summary>Batches that weigh the same stand together: they differ by one ball at most.</summary>
    public static IReadOnlyList<IReadOnlyList<DoughBatch>> Kinds(DoughPlan dough) =>
        [.. Batches(dough).GroupBy(batch => batch.Balls).Select(same => same.ToList())];

    private static Ingredient Flour => new(Words.FlourRow, batch => batch.FinalFlour, HouseholdText.OfFlour);

    private static List<Ingredient> Flours(DoughFormula formula) =>
    [
        .. (formula.Flours ?? []).Select((flour, index) => new Ingredient(
            flour.Name, batch => batch.Flours?[index].Mass ?? default, _ => null)),
    ];

    private static IEnumerable<Ingredient> HeldBack(NightPlan plan) =>
        [new(plan.Dough.Formula.Flours is { Count: > 1 } ? WeighPages.HeldBackOfAll : WeighPages.HeldBack, batch => batch.HeldBackFlour, _ => null, IsPart: true)];

    private static List<Ingredient> Portion(Func<DoughBatch, BatchPortion?> of, string flour, YeastForm yeast) =>
    [
        new(flour, batch => of(batch)?.Flour ?? default, _ => null),
        new(Words.WaterRow, batch => of(batch)?.Water ?? default, HouseholdText.OfWater),
        new(Phrase.Capital(WordText.Say(yeast)), batch => of(batch)?.Yeast ?? default, mass => HouseholdText.OfYeast(yeast, mass)),
    ];

    private static IEnumerable<Ingredient> BesideFlour(NightPlan plan, Measures measures)
    {
        var (form, formula, water) = (plan.Yeast.Form, plan.Dough.Formula, plan.Water);
        return
        [
            .. Water(water, measures),
            new(WeighPages.AsIce, batch => batch.FinalWater * water.IceShare, _ => null, IsPart: true),
            new(Words.SaltRow, batch => batch.Salt, HouseholdText.OfSalt),
            new(Words.OilRow, batch => batch.Oil, HouseholdText.OfOil),
            formula.SugarIsHoney
                ? new(Words.HoneyRow, batch => batch.Sugar, HouseholdText.OfHoney)
                : new(Words.SugarRow, batch => batch.Sugar, HouseholdText.OfSugar),
            .. (formula.Extras ?? []).Select((extra, index) => new Ingredient(
                extra.Name, batch => batch.Extras?[index].Mass ?? default, _ => null)),
            new(Phrase.Capital(WordText.Say(form)), batch => batch.FinalYeast, mass => HouseholdText.OfYeast(form, mass), At: water.Rest is null ? null : StepKind.WakeYeast),
        ];
    }

    /// <summary>Yeast that is woken takes its own part of the water at its own temperature.</summary>
    private static IEnumerable<Ingredient> Water(WaterTemperature water, Measures measures) =>
        water.Because.OfType<YeastIsWoken>().FirstOrDefault() is { } woken
            ?
            [
                new(Phrase.Fill(WeighPages.WaterForYeast, measures.SayWholeDegrees(woken.Water)), batch => batch.FinalWater * woken.OfWater, HouseholdText.OfWater, At: StepKind.WakeYeast),
                new(Phrase.Fill(WeighPages.OtherWater, measures.SayWholeDegrees(woken.Rest)), batch => batch.FinalWater * (1 - woken.OfWater.Value), HouseholdText.OfWater),
            ]
            : [new(Phrase.Fill(PlanPages.WaterAt, measures.SayWholeDegrees(water.Water.Expected)), batch => batch.FinalWater, HouseholdText.OfWater)];
}
