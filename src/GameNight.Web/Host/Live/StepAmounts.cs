using GameNight.Planning;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.Planning.Sauce;
using GameNight.Planning.Timeline;
using GameNight.Planning.Toppings;
using GameNight.Web.Host.Plan;
using GameNight.Web.Wording;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Host.Live;

/// <summary>One line of what a step takes.</summary>
public sealed record StepAmount(string Name, string Amount);

/// <summary>What a step takes, for whoever stands at it with floury hands: the same figures as on the pages of the plan.</summary>
internal static class StepAmounts
{
    /// <summary>None for steps that weigh nothing.</summary>
    /// <param name="items">Names of what is on the menu, by id.</param>
    public static IReadOnlyList<StepAmount> Of(
        StepKind step, int number, NightPlan plan, Menu menu, IReadOnlyDictionary<string, string> items, Measures measures)
    {
        return step switch
        {
            StepKind.Preferment or StepKind.WakeYeast or StepKind.Mix => [.. Weighed(step, number, plan, measures)],
            StepKind.Ball when plan.Dough.Batches.FirstOrDefault(batch => batch.Number == number) is { } batch =>
                [new(QuantityText.Balls(batch.Balls), Phrase.Fill(LivePages.EachOf, measures.SayDough(plan.Dough.Ball.Value)))],
            StepKind.Sauce when plan.SauceToMake is { } sauce => [.. Pot(sauce, measures)],
            StepKind.GrateCheese when plan.CheeseToGrate is { } cheese =>
                [.. cheese.Parts.Select(part => new StepAmount(Phrase.Capital(FoodText.Say(part.Food)), measures.SayDough(part.OnPies)))],
            StepKind.Sauce => Items(MenuRole.Base),
            StepKind.GrateCheese => Items(MenuRole.Cheese),
            StepKind.PrepareToppings => Items(MenuRole.Topping),
            _ => [],
        };

        IReadOnlyList<StepAmount> Items(MenuRole role) =>
        [
            .. from item in menu.Of(role)
               join amount in plan.Amounts on item.Id equals amount.ItemId
               select new StepAmount(items.GetValueOrDefault(item.Id, Words.Something), measures.SayDough(amount.Amount.Expected)),
        ];
    }

    /// <summary>What of the dough goes in at a step, as the scales show it; a preferment is mixed for all batches at once.</summary>
    private static IEnumerable<StepAmount> Weighed(StepKind step, int number, NightPlan plan, Measures measures)
    {
        List<DoughBatch> batches = [.. Weighing.Batches(plan.Dough).Where(batch => step == StepKind.Preferment || batch.Number == number)];
        foreach (var row in Weighing.Of(plan, measures).Where(bowl => bowl.IsCounted).SelectMany(bowl => bowl.Rows.Where(row => (row.At ?? bowl.At) == step)))
        {
            var mass = new Grams(batches.Sum(batch => row.Of(batch).Value));
            if (mass > default(Grams))
            {
                var beside = HouseholdText.Beside(mass, row.Household, measures);
                var grams = Phrase.Fill(Amounts.Grams, WeighText.Number(plan.Dough, mass));
                yield return new(row.Name, beside.Length > 0 ? Phrase.Fill(SaucePages.SaltBeside, grams, beside) : grams);
            }
        }
    }

    /// <summary>Of one pot; salt is last in the list as it is in the pot.</summary>
    private static IEnumerable<StepAmount> Pot(SaucePlan sauce, Measures measures)
    {
        foreach (var share in sauce.Weigh)
        {
            yield return new(Phrase.Capital(FoodText.Say(share.Food)), measures.SayDough(share.Grams / sauce.Pots));
        }

        if (sauce.Evaporated > default(Grams))
        {
            yield return new(LivePages.SimmerTo, measures.SayDough(new Grams((sauce.Finished.Value - sauce.Salt.Value) / sauce.Pots)));
        }

        if (sauce.Salt > default(Grams))
        {
            yield return new(LivePages.SaltAtTheEnd, QuantityText.Grams(sauce.Salt / sauce.Pots));
        }
    }

}
