using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using NodaTime;
using static GameNight.Planning.Tests.BegunDoughTests;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class LateChangesTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(14)]
    public void Nothing_is_late_when_nothing_changed(int guests)
    {
        var (night, plan) = Begun(guests);

        var changes = LateChanges.Between(
            new PlannedNight(night with { Begun = null }, plan), new PlannedNight(night, Plan(night, Duration.FromDays(1))));

        Assert.True(changes.AreNone);
    }

    [Fact]
    public void A_guest_who_withdraws_takes_their_companions_and_slices_along()
    {
        var changes = After(guests => [.. guests.Select(guest => guest.Id == "ines" ? guest with { Answer = AnswerState.NotComing } : guest)]);

        var ines = Assert.Single(changes.Guests);
        Assert.Equal(("ines", LateChangeKind.Withdrew), (ines.GuestId, ines.Kind));
        Assert.Equal((2, 0), (ines.Then.Heads, ines.Now.Heads));
        Assert.True(ines.Then.ExpectedSlices > 5);
        Assert.Equal(0, ines.Now.ExpectedSlices);
        Assert.True(changes.Now.RunOutChance < changes.Then.RunOutChance);
        Assert.True(changes.Now.ExpectedLeftoverSlices > changes.Then.ExpectedLeftoverSlices);
        Assert.Equal(changes.Then.Pies, changes.Now.Pies);
    }

    [Fact]
    public void A_late_answer_counts_in_full_what_was_counted_in_part()
    {
        var changes = After(guests => [.. guests.Select(guest => guest.Id == "silent" ? guest with { Answer = AnswerState.Coming } : guest)]);

        var silent = Assert.Single(changes.Guests);
        Assert.Equal((LateChangeKind.Answered, AnswerState.NoAnswer, AnswerState.Coming), (silent.Kind, silent.Then.Answer, silent.Now.Answer));
        Assert.Equal(silent.Then.Heads, silent.Now.Heads);
        Assert.True(silent.Now.ExpectedSlices > silent.Then.ExpectedSlices);
        Assert.True(changes.Now.RunOutChance > changes.Then.RunOutChance);
    }

    [Fact]
    public void A_new_must_not_is_told_and_nothing_that_was_known()
    {
        var known = new DietaryNeeds([Diet.Vegetarian], [Allergen.Nuts], []);
        var now = new DietaryNeeds([Diet.Vegetarian], [], [Allergen.Nuts, Allergen.Milk]);
        var changes = After(
            guests => [.. guests.Select(guest => guest.Id == "ines" ? guest with { Eaters = [guest.Eaters[0] with { Needs = now }, guest.Eaters[1]] } : guest)],
            known);

        var ines = Assert.Single(changes.Guests);
        var told = Assert.Single(ines.MustNots);
        Assert.Equal((LateChangeKind.Changed, "ines"), (ines.Kind, told.EaterId));
        Assert.Empty(told.Needs.Diets);
        Assert.Equal([Allergen.Nuts, Allergen.Milk], told.Needs.MustNotTouch);
    }

    [Fact]
    public void Another_liking_is_no_late_change()
    {
        var changes = After(guests => [.. guests.Select(guest => guest with
        {
            Eaters = [.. guest.Eaters.Select(eater => eater with { Likes = new Dictionary<string, Liking> { ["mushrooms"] = Liking.Never } })],
        })]);

        Assert.True(changes.AreNone);
    }

    [Fact]
    public void Who_is_invited_late_and_who_is_taken_off_are_told_apart()
    {
        var changes = After(guests =>
            [.. guests.Where(guest => guest.Id != "ines"), new GuestSnapshot("new", AnswerState.Coming, [AnEater("new")])]);

        Assert.Equal(
            [("ines", LateChangeKind.TakenOff, (AnswerState?)null), ("new", LateChangeKind.Invited, AnswerState.Coming)],
            changes.Guests.Select(change => (change.GuestId, change.Kind, change.Now.Answer)));
    }

    private static LateChanges After(
        Func<IReadOnlyList<GuestSnapshot>, IReadOnlyList<GuestSnapshot>> change, DietaryNeeds? inesMustNot = null)
    {
        var night = ANight()
            .WithGuests(4)
            .With(AnswerState.Coming, AnEater("ines", needs: inesMustNot), AnEater("ines+1"))
            .With(AnswerState.NoAnswer, AnEater("silent"))
            .But(night => night with { RunOutChance = new Share(0.1) })
            .Build();
        var plan = Plan(night, Duration.Zero);
        var later = night with { Guests = change(night.Guests), Begun = BegunDough.Of(night, plan) };
        return LateChanges.Between(new PlannedNight(night, plan), new PlannedNight(later, Plan(later, Duration.FromDays(1))));
    }
}
