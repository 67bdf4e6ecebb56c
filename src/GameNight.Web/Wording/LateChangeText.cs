using GameNight.Planning;
using GameNight.Web.Wording.Texts;
using static GameNight.Web.Wording.Phrase;
using static GameNight.Web.Wording.QuantityText;

namespace GameNight.Web.Wording;

/// <summary>Says what came after the dough was begun.</summary>
/// <param name="nameOf">From a guest's or eater's id to a name.</param>
public sealed class LateChangeText(Func<string, string> nameOf)
{
    public string Say(LateChange change)
    {
        var (name, then, now) = (nameOf(change.GuestId), Said(change.Then), Said(change.Now));
        return change.Kind switch
        {
            LateChangeKind.Answered => Fill(AfterCommitment.Answered, name, now),
            LateChangeKind.Changed => Fill(AfterCommitment.Changed, name, then, now),
            LateChangeKind.Withdrew => Fill(AfterCommitment.Withdrew, name, then),
            LateChangeKind.Invited => Fill(AfterCommitment.Invited, name, now),
            LateChangeKind.TakenOff => Fill(AfterCommitment.TakenOff, name, then),
        };
    }

    public string Say(NewMustNot added)
    {
        var words = added.Needs.Diets.Select(WordText.Say)
            .Concat(added.Needs.Avoids.Select(allergen => Fill(AfterCommitment.Avoids, WordText.Say(allergen))))
            .Concat(added.Needs.MustNotTouch.Select(allergen => Fill(AfterCommitment.MustNotTouch, WordText.Say(allergen))))
            .Concat(added.Needs.KeptOff is null ? [] : [AfterCommitment.SomethingOfTheMenu]);
        return Fill(AfterCommitment.NewMustNot, nameOf(added.EaterId), WordText.And([.. words]));
    }

    /// <summary>What the same pies mean now; null when it is what they meant then.</summary>
    public static string? SayOutlook(LateChanges changes) => changes.Then == changes.Now
        ? null
        : Fill(
            AfterCommitment.Outlook, Pies(changes.Now.Pies), Chance(changes.Now.RunOutChance), Chance(changes.Then.RunOutChance),
            Slices(changes.Now.ExpectedLeftoverSlices), Slices(changes.Then.ExpectedLeftoverSlices));

    public static string? SayCold(LateChanges changes) => changes.ColdThen == changes.ColdNow
        ? null
        : Fill(AfterCommitment.Cold, Length(changes.ColdNow), Length(changes.ColdThen));

    private static string Said(GuestCount count) => count.Answer is not { } answer
        ? AfterCommitment.NotInvited
        : count.Heads == 0
            ? Fill(AfterCommitment.WithoutSlices, WordText.Say(answer))
            : Count(
                AfterCommitment.ResourceManager, nameof(AfterCommitment.WithSlicesOther), count.Heads,
                WordText.Say(answer), Slices(count.ExpectedSlices));
}
