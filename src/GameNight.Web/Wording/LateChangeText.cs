using GameNight.Planning;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says what came after the dough was begun.</summary>
/// <param name="nameOf">From a guest's or eater's id to a name.</param>
public sealed class LateChangeText(Func<string, string> nameOf)
{
    public string Say(LateChange change) => change.Kind switch
    {
        LateChangeKind.Answered => $"{nameOf(change.GuestId)} answered: {After(change)}.",
        LateChangeKind.Changed => $"{nameOf(change.GuestId)} changed the answer: {Before(change)} then, {After(change)} now.",
        LateChangeKind.Withdrew => $"{nameOf(change.GuestId)} does not come: {Before(change)} then.",
        LateChangeKind.Invited => $"{nameOf(change.GuestId)} was invited since: {After(change)}.",
        LateChangeKind.TakenOff => $"{nameOf(change.GuestId)} is not invited any more: {Before(change)} then.",
    };

    public string Say(NewMustNot added)
    {
        var words = added.Needs.Diets.Select(WordText.Say)
            .Concat(added.Needs.Avoids.Select(allergen => $"avoids {WordText.Say(allergen)}"))
            .Concat(added.Needs.MustNotTouch.Select(allergen => $"must not touch {WordText.Say(allergen)}"));
        return $"New must-not, {nameOf(added.EaterId)}: {WordText.And([.. words])}. The pies below keep to it; what is bought or made already may not.";
    }

    /// <summary>What the same pies mean now; null when it is what they meant then.</summary>
    public static string? SayOutlook(LateChanges changes) => changes.Then == changes.Now
        ? null
        : $"With the {Pies(changes.Now.Pies)} of the dough, the run-out chance is {Chance(changes.Now.RunOutChance)} now and was {Chance(changes.Then.RunOutChance)}; {Slices(changes.Now.ExpectedLeftoverSlices)} left over on average, {Slices(changes.Then.ExpectedLeftoverSlices)} then.";

    public static string? SayCold(LateChanges changes) => changes.ColdThen == changes.ColdNow
        ? null
        : $"The dough is cold for {Length(changes.ColdNow)} now, {Length(changes.ColdThen)} was planned.";

    private static string Before(LateChange change) => Count(change.Then);

    private static string After(LateChange change) => Count(change.Now);

    private static string Count(GuestCount count) => count.Answer is not { } answer
        ? "not invited"
        : count.Heads == 0
            ? $"{WordText.Say(answer)}, no slices"
            : $"{WordText.Say(answer)}, {(count.Heads == 1 ? "1 person" : $"{count.Heads} people")}, {Slices(count.ExpectedSlices)} expected";
}
