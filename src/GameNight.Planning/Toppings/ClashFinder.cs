using GameNight.Planning.Guests;

namespace GameNight.Planning.Toppings;

/// <summary>
/// Finds which rules cannot all hold when somebody goes short: a deletion filter. Rule by rule is left out and the night is
/// solved again; a rule without which it is still impossible has nothing to do with it and stays out. What is left clashes,
/// and none of it can be spared. Bounded in people, rules and solver time, so that a night that cannot work says so soon.
/// Source of the method: Chinneck and Dravnieks 1991.
/// </summary>
internal static class ClashFinder
{
    private const int MostVictims = 3;

    /// <summary>With more eaters each question takes long, and one answer says enough.</summary>
    private const int ManyEaters = 60;
    private const int MostRules = 24;

    /// <summary>Slices of solver time for one question of whether everybody can be fed.</summary>
    private static readonly Effort OneQuestion = new(1);

    public static IReadOnlyList<SplitRulesClash> For(SplitRequest request, IReadOnlyList<Conflict> conflicts, CancellationToken cancellation)
    {
        var clashes = new List<SplitRulesClash>();
        foreach (var victims in conflicts.Select(VictimsOf).OfType<IReadOnlyList<string>>().DistinctBy(ids => string.Join('|', ids))
            .Take(request.Eaters.Count > ManyEaters ? 1 : MostVictims))
        {
            if (Of(request, victims, cancellation) is { } clash)
            {
                clashes.Add(clash);
            }
        }

        return clashes;
    }

    private static SplitRulesClash? Of(SplitRequest request, IReadOnlyList<string> victims, CancellationToken cancellation)
    {
        var rules = RulesOf(request, victims).Take(MostRules).ToList();

        // Without all of them it must be possible: otherwise the trouble lies elsewhere, and no core would mean anything.
        if (IsShort(Without(request, rules), victims, cancellation))
        {
            return null;
        }

        var core = rules.ToList();
        foreach (var rule in rules)
        {
            cancellation.ThrowIfCancellationRequested();
            var others = core.Where(other => other != rule).ToList();
            if (IsShort(Without(request, [.. rules.Except(others)]), victims, cancellation))
            {
                core = others;
            }
        }

        return new SplitRulesClash(
            victims, core, [.. rules.Where(rule => !rule.IsMustNot && WouldHelp(rule) && !IsShort(Without(request, [rule]), victims, cancellation)).Select(Changed)]);

        // Another dough is of no use to whom the one of the kitchen must not touch.
        bool WouldHelp(SplitRule rule) => rule.Rule != SplitRuleKind.Dough
            || !request.Eaters.Any(eater => victims.Contains(eater.Id) && eater.Needs.MustNotTouch.Any(request.Menu.Dough.IsOrMayBe));

        // The number of pies is said as it would have to be.
        SplitRule Changed(SplitRule rule) => rule.Rule == SplitRuleKind.NumberOfPies ? rule with { Number = request.Pies + 1 } : rule;
    }

    private static IReadOnlyList<string>? VictimsOf(Conflict conflict) => conflict switch
    {
        NothingPermitted nothing => [nothing.EaterId],
        EaterShortOfSlices eater => [eater.EaterId],
        GroupShortOfSlices group => group.EaterIds,
        OwnPiesDoNotFit own => own.EaterIds,
        _ => null,
    };

    /// <summary>Must-nots first: a rule that can be spared goes in that order, and what the host can change is rather kept.</summary>
    private static IEnumerable<SplitRule> RulesOf(SplitRequest request, IReadOnlyList<string> victims)
    {
        foreach (var eater in request.Eaters.Where(eater => victims.Contains(eater.Id)).OrderBy(eater => eater.Id, StringComparer.Ordinal))
        {
            foreach (var diet in eater.Needs.Diets.Distinct())
            {
                yield return new SplitRule(SplitRuleKind.KeepsDiet, eater.Id, Diet: diet);
            }

            foreach (var allergen in eater.Needs.Avoids.Except(eater.Needs.MustNotTouch))
            {
                yield return new SplitRule(SplitRuleKind.Avoids, eater.Id, Allergen: allergen);
            }

            foreach (var allergen in eater.Needs.MustNotTouch.Distinct())
            {
                yield return new SplitRule(SplitRuleKind.MustNotTouch, eater.Id, Allergen: allergen);
            }

            foreach (var item in (eater.Needs.KeptOff ?? []).Distinct())
            {
                yield return new SplitRule(SplitRuleKind.KeptOff, eater.Id, ItemId: item);
            }
        }

        yield return new SplitRule(SplitRuleKind.Dough);
        if (!request.Menu.Of(MenuRole.Base).Any(IsNone))
        {
            yield return new SplitRule(SplitRuleKind.NoPlainBase);
        }

        if (!request.Menu.Of(MenuRole.Cheese).Any(IsNone))
        {
            yield return new SplitRule(SplitRuleKind.NoPlainCheese);
        }

        foreach (var (item, stock) in request.Stock ?? new Dictionary<string, ItemStock>())
        {
            if (stock.OnHand is not null)
            {
                yield return new SplitRule(SplitRuleKind.OnHand, ItemId: item);
            }
        }

        foreach (var pie in (request.Pins ?? []).Select(pin => pin.Pie).Distinct())
        {
            yield return new SplitRule(SplitRuleKind.Settled, Number: pie);
        }

        if (request.Wetness is not null)
        {
            yield return new SplitRule(SplitRuleKind.Wetness);
        }

        foreach (var pair in request.Menu.Apart ?? [])
        {
            yield return new SplitRule(SplitRuleKind.Apart, ItemId: pair.FirstId, OtherItemId: pair.SecondId);
        }

        if (request.Pies < SplitPlanner.MostPies)
        {
            yield return new SplitRule(SplitRuleKind.NumberOfPies, Number: request.Pies);
        }

        static bool IsNone(MenuItem item) => item.GramsPerCm2 <= 0 && item.Composition.Contains.Count == 0;
    }

    private static SplitRequest Without(SplitRequest request, IReadOnlyList<SplitRule> rules) => rules.Aggregate(request, Without);

    private static SplitRequest Without(SplitRequest request, SplitRule rule) => rule.Rule switch
    {
        SplitRuleKind.KeepsDiet or SplitRuleKind.Avoids or SplitRuleKind.MustNotTouch or SplitRuleKind.KeptOff => request with
        {
            Eaters = [.. request.Eaters.Select(eater => eater.Id == rule.EaterId ? eater with { Needs = Without(eater.Needs, rule) } : eater)],
            Groups = [.. request.Groups.Select(group => group.EaterIds.Contains(rule.EaterId!) ? group with { Needs = Without(group.Needs, rule) } : group)],
        },
        SplitRuleKind.Settled => request with { Pins = [.. request.Pins!.Where(pin => pin.Pie != rule.Number)] },
        SplitRuleKind.OnHand => request with { Stock = request.Stock!.Where(row => row.Key != rule.ItemId).ToDictionary() },
        SplitRuleKind.Wetness => request with { Wetness = null },
        SplitRuleKind.Apart => request with { Menu = request.Menu with { Apart = [.. request.Menu.Apart!.Where(pair => (pair.FirstId, pair.SecondId) != (rule.ItemId, rule.OtherItemId))] } },
        SplitRuleKind.NumberOfPies => request with { Pies = request.Pies + 1 },
        SplitRuleKind.Dough => request with { Menu = request.Menu with { Dough = Composition.Nothing } },
        SplitRuleKind.NoPlainBase => request with { Menu = request.Menu with { Items = [.. request.Menu.Items, None(MenuRole.Base)] } },
        SplitRuleKind.NoPlainCheese => request with { Menu = request.Menu with { Items = [.. request.Menu.Items, None(MenuRole.Cheese)] } },
    };

    private static MenuItem None(MenuRole role) => new($"none-{role}", role, 0, Composition.Nothing);

    private static DietaryNeeds Without(DietaryNeeds needs, SplitRule rule) => needs with
    {
        Diets = [.. needs.Diets.Where(diet => diet != rule.Diet)],
        Avoids = [.. needs.Avoids.Where(allergen => allergen != rule.Allergen)],
        MustNotTouch = [.. needs.MustNotTouch.Where(allergen => allergen != rule.Allergen)],
        KeptOff = needs.KeptOff is { } items && items.Where(item => item != rule.ItemId).ToList() is { Count: > 0 } left ? left : null,
    };

    private static bool IsShort(SplitRequest request, IReadOnlyList<string> victims, CancellationToken cancellation) =>
        SplitPlanner.Shortfalls(request, OneQuestion, cancellation).Any(conflict => VictimsOf(conflict) is { } gone && gone.Any(victims.Contains));
}
