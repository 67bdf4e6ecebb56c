namespace GameNight.Planning.Toppings;

/// <summary>
/// Looks at every finished split again, in ordinary code that shares nothing with what made it: labels against needs,
/// slices against pies. A split with a breach must never be saved or shown.
/// </summary>
public static class ToppingSplitCheck
{
    /// <exception cref="InvalidOperationException">The split breaks a hard rule: a mistake in the planner.</exception>
    public static void Demand(SplitRequest request, ToppingSplit split)
    {
        if (Breaches(request, split) is { Count: > 0 } breaches)
        {
            throw new InvalidOperationException("The topping split breaks its own rules: " + string.Join(" ", breaches));
        }
    }

    /// <summary>Every broken rule as one sentence with ids; empty when the split is sound.</summary>
    public static IReadOnlyList<string> Breaches(SplitRequest request, ToppingSplit split) =>
    [
        .. BreachesOfPies(request, split),
        .. BreachesOfServings(request, split),
        .. BreachesOfPins(request, split),
        .. BreachesOfStock(request, split),
    ];

    /// <summary>A pin holds, or a conflict says that it does not.</summary>
    private static IEnumerable<string> BreachesOfPins(SplitRequest request, ToppingSplit split)
    {
        var leftOut = split.Conflicts.OfType<PinLeftOut>().Select(pin => pin.PieNumber).ToHashSet();
        foreach (var pin in (request.Pins ?? []).Where(pin => !leftOut.Contains(pin.Pie)))
        {
            var letters = split.Combinations
                .Where(combination => combination.BaseId == pin.BaseId && combination.CheeseId == pin.CheeseId
                    && combination.ToppingIds.ToHashSet().SetEquals(pin.ToppingIds))
                .Select(combination => combination.Letter);
            var slices = split.Pies.Where(pie => pie.Number == pin.Pie).SelectMany(pie => pie.Sectors)
                .Where(sector => letters.Contains(sector.Letter)).Sum(sector => sector.Slices);
            if (slices < pin.Parts * request.SlicesPerPart)
            {
                yield return $"What the host settled for pie {pin.Pie} is not there.";
            }
        }
    }

    /// <summary>No more of anything than there is, or a conflict says so.</summary>
    private static IEnumerable<string> BreachesOfStock(SplitRequest request, ToppingSplit split)
    {
        var told = split.Conflicts.OfType<MoreThanOnHand>().Select(more => more.ItemId).ToHashSet();
        foreach (var (item, stock) in (request.Stock ?? new Dictionary<string, ItemStock>()).Where(row => row.Value.OnHand is not null && !told.Contains(row.Key)))
        {
            var letters = split.Combinations.Where(combination => combination.ItemIds.Contains(item)).Select(combination => combination.Letter).ToHashSet();
            var slices = split.Pies.SelectMany(pie => pie.Sectors).Where(sector => letters.Contains(sector.Letter)).Sum(sector => sector.Slices);
            if (stock.PerPie.Value * slices / request.SlicesPerPie > stock.OnHand!.Value.Value + 1e-6)
            {
                yield return $"The pies take more of {item} than there is.";
            }
        }
    }

    private static IEnumerable<string> BreachesOfPies(SplitRequest request, ToppingSplit split)
    {
        var letters = split.Combinations.Select(combination => combination.Letter).ToHashSet();
        if (letters.Count != split.Combinations.Count)
        {
            yield return "A letter stands for two combinations.";
        }

        if (!letters.SetEquals(split.Pies.SelectMany(pie => pie.Sectors).Select(sector => sector.Letter)))
        {
            yield return "The letters of the combinations are not those of the sectors.";
        }

        foreach (var combination in split.Combinations.Where(combination => !IsOnMenu(request.Menu, combination)))
        {
            yield return $"Combination {combination.Letter} is not on the menu.";
        }

        foreach (var (pie, index) in split.Pies.Select((pie, index) => (pie, index)))
        {
            if (pie.Number != index + 1 || (index > 0 && Rank(pie) < Rank(split.Pies[index - 1])))
            {
                yield return $"Pie {pie.Number} is out of order: numbers run from 1, own pies first, then those of the second dough.";
            }

            if (pie.IsOnSecondDough && request.Menu.SecondDough is null)
            {
                yield return $"Pie {pie.Number} lies on a dough that there is not.";
            }

            if (pie.Sectors.Sum(sector => sector.Slices) != request.SlicesPerPie
                || pie.Sectors.Any(sector => sector.Slices < 1 || sector.Slices % request.SlicesPerPart != 0))
            {
                yield return $"Pie {pie.Number} is not made of whole parts.";
            }

            foreach (var owner in request.Eaters.Where(eater => pie.OwnPieFor.Contains(eater.Id)))
            {
                if (pie.Sectors.Any(sector => !IsPermitted(request, split, pie, sector.Letter, owner)))
                {
                    yield return $"Own pie {pie.Number} holds something that must not touch the slices of {owner.Id}.";
                }
            }
        }
    }

    private static int Rank(PieOrder pie) => pie.IsOwnPie ? 0 : pie.IsOnSecondDough ? 1 : 2;

    private static IEnumerable<string> BreachesOfServings(SplitRequest request, ToppingSplit split)
    {
        foreach (var place in split.Servings.GroupBy(serving => (serving.PieNumber, serving.Letter)))
        {
            var slices = split.Pies.Where(pie => pie.Number == place.Key.PieNumber)
                .SelectMany(pie => pie.Sectors)
                .Where(sector => sector.Letter == place.Key.Letter)
                .Sum(sector => sector.Slices);
            if (place.Sum(serving => serving.Slices) > slices)
            {
                yield return $"More slices of {place.Key.Letter} are served from pie {place.Key.PieNumber} than it has.";
            }
        }

        foreach (var served in split.Servings.GroupBy(serving => serving.EaterId))
        {
            var eater = request.Eaters.FirstOrDefault(eater => eater.Id == served.Key);
            if (eater is null)
            {
                yield return $"{served.Key} is served but eats nothing here.";
                continue;
            }

            if (served.Any(serving => serving.Slices < 1) || served.Sum(serving => serving.Slices) > eater.Slices)
            {
                yield return $"{eater.Id} is served another number of slices than wanted.";
            }

            if (served.Any(serving => !IsPermitted(request, split, split.Pies.FirstOrDefault(pie => pie.Number == serving.PieNumber), serving.Letter, eater)))
            {
                yield return $"{eater.Id} is served something they must not have.";
            }

            if (eater.Needs.NeedsOwnPie && served.Any(serving => !IsOwnPieOf(split, serving.PieNumber, eater)))
            {
                yield return $"{eater.Id} is served from a pie that is not their own.";
            }
        }
    }

    private static bool IsOwnPieOf(ToppingSplit split, int pieNumber, SplitEater eater) =>
        split.Pies.Any(pie => pie.Number == pieNumber && pie.OwnPieFor.Contains(eater.Id));

    /// <summary>By the pie's own dough; and what must not touch them is in the kitchen when the main dough holds it.</summary>
    private static bool IsPermitted(SplitRequest request, ToppingSplit split, PieOrder? pie, string letter, SplitEater eater) =>
        (pie?.OnSecondDough == true ? request.Menu.SecondDough?.Composition : request.Menu.Dough)?.IsPermittedFor(eater.Needs) == true
        && !eater.Needs.MustNotTouch.Any(request.Menu.Dough.IsOrMayBe)
        && split.Combinations.FirstOrDefault(combination => combination.Letter == letter) is { } combination
        && combination.ItemIds.All(id => request.Menu.Items.Any(item => item.Id == id && item.IsPermittedFor(eater.Needs)));

    private static bool IsOnMenu(Menu menu, Combination combination)
    {
        return Has(MenuRole.Base, combination.BaseId)
            && Has(MenuRole.Cheese, combination.CheeseId)
            && combination.ToppingIds.All(id => Has(MenuRole.Topping, id))
            && combination.ToppingIds.Distinct().Count() == combination.ToppingIds.Count
            && combination.ToppingIds.Count <= menu.MostToppings
            && !(menu.Apart ?? []).Any(pair => combination.ToppingIds.Contains(pair.FirstId) && combination.ToppingIds.Contains(pair.SecondId));

        bool Has(MenuRole role, string id) => menu.Of(role).Any(item => item.Id == id);
    }
}
