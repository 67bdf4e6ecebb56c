using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.Planning.Toppings;

namespace GameNight.Nights.Erasure;

/// <summary>
/// Takes people out of plans and snapshots that are kept. Numbers and pies stay; who they were for goes. Ids alone would
/// still say who must not eat what: the owner of an own pie, a group of must-nots, a conflict.
/// </summary>
internal static class PlanErasure
{
    /// <summary>After the retention: nobody is named any more, and no allergen that somebody had to avoid.</summary>
    public static NightPlan WithoutPeople(NightPlan plan) => WithoutAllergens(Without(plan, _ => true));

    public static NightPlan WithoutAllergens(NightPlan plan) =>
        plan with { Cautions = [.. plan.Cautions.Where(caution => caution.Allergens.Count == 0)] };

    /// <summary>Without the eaters whose ids are to be erased.</summary>
    public static NightPlan Without(NightPlan plan, Func<string, bool> isErased)
    {
        return plan with
        {
            Slices = plan.Slices with
            {
                Eaters = [.. plan.Slices.Eaters.Where(eater => !isErased(eater.EaterId))],
                Past = plan.Slices.Past?.Where(row => !isErased(row.EaterId)).ToList() is { Count: > 0 } past ? past : null,
                MustNotGroups = [.. plan.Slices.MustNotGroups
                    .Select(group => group with { EaterIds = Left(group.EaterIds) })
                    .Where(group => group.EaterIds.Count > 0)],
            },
            Split = plan.Split with
            {
                Pies = [.. plan.Split.Pies.Select(pie => pie with { OwnPieFor = Left(pie.OwnPieFor) })],
                Servings = [.. plan.Split.Servings.Where(serving => !isErased(serving.EaterId))],
                Satisfactions = [.. plan.Split.Satisfactions.Where(row => !isErased(row.EaterId))],
                Conflicts = Told(plan.Split.Conflicts),
            },
            Conflicts = Told(plan.Conflicts),
        };

        IReadOnlyList<string> Left(IReadOnlyList<string> ids) => [.. ids.Where(id => !isErased(id))];

        IReadOnlyList<Conflict> Told(IReadOnlyList<Conflict> conflicts) => [.. conflicts.Select(AsLeft).OfType<Conflict>()];

        Conflict? AsLeft(Conflict conflict) => conflict switch
        {
            NothingPermitted { EaterId: var id } when isErased(id) => null,
            OnlyUnwantedLeft { EaterId: var id } when isErased(id) => null,
            EaterShortOfSlices { EaterId: var id } when isErased(id) => null,
            // Its must-nots are those of the eaters it names.
            SplitRulesClash clash when clash.EaterIds.Any(isErased) => null,
            NotesToSettle notes => Left(notes.EaterIds) is { Count: > 0 } left ? notes with { EaterIds = left } : null,
            OwnPiesDoNotFit own => Left(own.EaterIds) is { Count: > 0 } left ? own with { EaterIds = left } : null,
            GroupShortOfSlices group => Left(group.EaterIds) is { Count: > 0 } left ? group with { EaterIds = left } : null,
            _ => conflict,
        };
    }

    /// <summary>After the retention: the must-nots of everybody are gone, and what past nights said of them.</summary>
    public static NightSnapshot WithoutNeeds(NightSnapshot snapshot) =>
        Changed(snapshot, eater => eater with { Needs = DietaryNeeds.None }, _ => true, guest => guest with { HasOpenNote = null });

    /// <summary>The eaters to be erased stay as counts: portion and answer, nothing that they wished.</summary>
    public static NightSnapshot Without(NightSnapshot snapshot, Func<string, bool> isErased) => Changed(
        snapshot,
        eater => isErased(eater.Id)
            ? eater with { Needs = DietaryNeeds.None, Hunger = Hunger.AsUsual, Likes = new Dictionary<string, Liking>() }
            : eater,
        isErased,
        guest => isErased(guest.Id) ? guest with { Household = null, Stay = null, HasOpenNote = null } : guest);

    private static NightSnapshot Changed(
        NightSnapshot snapshot, Func<Eater, Eater> change, Func<string, bool> forgets, Func<GuestSnapshot, GuestSnapshot>? more = null) => snapshot with
        {
            Guests = [.. snapshot.Guests.Select(more ?? (guest => guest)).Select(guest => guest with
        {
            Eaters = [.. guest.Eaters.Select(change)],
            Past = forgets(guest.Id) ? null : guest.Past,
        })],
        };
}
