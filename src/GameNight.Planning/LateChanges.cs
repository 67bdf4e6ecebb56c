using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using NodaTime;

namespace GameNight.Planning;

/// <summary>A night as it was known when the dough was begun, or as it is now, with the plan made from it.</summary>
public sealed record PlannedNight(NightSnapshot Night, NightPlan Plan);

/// <summary>What changed since the dough was begun, and what that does to the night: a comparison, nothing is decided here.</summary>
/// <param name="Then">The number of pies and what it meant when the dough was begun.</param>
/// <param name="Now">The pies that come of it, for what is known now; slices are of the size of then, however it is divided since.</param>
public sealed record LateChanges(
    IReadOnlyList<LateChange> Guests, PieChoice Then, PieChoice Now, Duration ColdThen, Duration ColdNow)
{
    public bool AreNone => Guests.Count == 0 && Then == Now && ColdThen == ColdNow;

    /// <param name="then">The night and the plan that the dough was begun by.</param>
    /// <param name="now">Today's, planned around the begun dough.</param>
    public static LateChanges Between(PlannedNight then, PlannedNight now)
    {
        var before = then.Night.Guests.ToDictionary(guest => guest.Id);
        var after = now.Night.Guests.ToDictionary(guest => guest.Id);
        var ofThen = now.Plan.Dough.Ball.Value / then.Plan.Dough.Ball.Value;
        var (slicesThen, slicesNow) = (Slices(then.Plan, 1), Slices(now.Plan, ofThen));
        var chosen = now.Plan.Pies.Chosen;
        var changes = before.Keys.Union(after.Keys).Order(StringComparer.Ordinal)
            .Select(id => Compare(id, before.GetValueOrDefault(id), after.GetValueOrDefault(id), slicesThen, slicesNow))
            .OfType<LateChange>()
            .ToList();
        return new LateChanges(
            changes,
            then.Plan.Pies.Chosen,
            ofThen == 1 ? chosen : chosen with
            {
                ExpectedShortageSlices = chosen.ExpectedShortageSlices * ofThen,
                ExpectedLeftoverSlices = chosen.ExpectedLeftoverSlices * ofThen,
            },
            then.Plan.Timeline.ColdFermentLength,
            now.Plan.Timeline.ColdFermentLength);
    }

    /// <returns>Null when nothing changed that moves slices, or what must be kept off them.</returns>
    private static LateChange? Compare(
        string id, GuestSnapshot? before, GuestSnapshot? after,
        Dictionary<string, double> slicesThen, Dictionary<string, double> slicesNow)
    {
        var mustNots = NewMustNots(before, after);
        if (before is not null && after is not null && mustNots.Count == 0 && Counts(before).SequenceEqual(Counts(after)))
        {
            return null;
        }

        return new LateChange(id, KindOf(before, after), Count(before, slicesThen), Count(after, slicesNow), mustNots);
    }

    private static LateChangeKind KindOf(GuestSnapshot? before, GuestSnapshot? after) => (before?.Answer, after?.Answer) switch
    {
        (null, _) => LateChangeKind.Invited,
        (_, null) => LateChangeKind.TakenOff,
        (not AnswerState.NotComing, AnswerState.NotComing) => LateChangeKind.Withdrew,
        (AnswerState.NoAnswer, not AnswerState.NoAnswer) => LateChangeKind.Answered,
        _ => LateChangeKind.Changed,
    };

    /// <summary>What of a guest moves the slices; likes do not.</summary>
    private static IEnumerable<(AnswerState, PortionClass, Hunger, bool, Stay?)> Counts(GuestSnapshot guest) =>
        guest.Eaters.Select(eater => (guest.Answer, eater.Portion, eater.Hunger, eater.EatsHere, guest.Stay));

    private static GuestCount Count(GuestSnapshot? guest, Dictionary<string, double> slices) => guest is null
        ? new GuestCount(null, 0, 0)
        : new GuestCount(
            guest.Answer,
            guest.Answer == AnswerState.NotComing ? 0 : guest.Eaters.Count(eater => eater.EatsHere),
            guest.Eaters.Sum(eater => slices.GetValueOrDefault(eater.Id)));

    private static List<NewMustNot> NewMustNots(GuestSnapshot? before, GuestSnapshot? after)
    {
        // Whoever does not come is cooked for in nothing; the must-nots of somebody who comes after all count as new.
        var known = before is null or { Answer: AnswerState.NotComing }
            ? []
            : before.Eaters.ToDictionary(eater => eater.Id, eater => eater.Needs);
        return after is null or { Answer: AnswerState.NotComing }
            ? []
            : [.. after.Eaters
                .Where(eater => eater.EatsHere)
                .Select(eater => new NewMustNot(eater.Id, Added(known.GetValueOrDefault(eater.Id, DietaryNeeds.None), eater.Needs)))
                .Where(added => !added.Needs.IsNone)];
    }

    /// <summary>To keep off an eater's whole pie what was only kept out of their slices is new too.</summary>
    private static DietaryNeeds Added(DietaryNeeds before, DietaryNeeds after) => new(
        [.. after.Diets.Except(before.Diets)],
        [.. after.Avoids.Except(before.Avoids).Except(before.MustNotTouch)],
        [.. after.MustNotTouch.Except(before.MustNotTouch)],
        (after.KeptOff ?? []).Except(before.KeptOff ?? []).ToList() is { Count: > 0 } items ? items : null);

    private static Dictionary<string, double> Slices(NightPlan plan, double size) =>
        plan.Slices.Eaters.ToDictionary(eater => eater.EaterId, eater => eater.ExpectedSlices * size);
}
