using Bunit;
using GameNight.Nights.ForHosts;
using GameNight.Planning;
using GameNight.Planning.Guests;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Plan;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class CommitmentPanelTests : BunitContext
{
    [Fact]
    public void Says_what_is_fixed_before_it_is()
    {
        var committed = false;
        var panel = Render<CommitmentPanel>(with => with
            .Add(p => p.Plan, Plans.Usual).Add(p => p.Commitment, null).Add(p => p.Zone, Plans.Zone)
            .Add(p => p.Commit, () => { committed = true; }));

        Assert.Contains($"{Plans.Usual.Dough.Balls} balls", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("late changes", panel.Markup, StringComparison.Ordinal);
        panel.Find("button").Click();
        Assert.True(committed);
    }

    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 0)]
    public void Offers_to_take_it_back_only_until_mixing(bool canBeTakenBack, int buttons)
    {
        var mixing = Plans.Usual.Timeline.DoughCommitment!.Value;
        var panel = Render<CommitmentPanel>(with => with
            .Add(p => p.Plan, Plans.Usual).Add(p => p.Zone, Plans.Zone)
            .Add(p => p.Commitment, new CommitmentView(
                NightBuilder.Now, "Hana", mixing, canBeTakenBack, 5, Plans.Usual.Dough.Total, NightBuilder.Now, Duration.FromHours(48))));

        Assert.Equal(buttons, panel.FindAll("button").Count);
        Assert.Contains("Committed by Hana", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_committed_while_nobody_comes()
    {
        var panel = Render<CommitmentPanel>(with => with
            .Add(p => p.Plan, Plans.Empty).Add(p => p.Commitment, null).Add(p => p.Zone, Plans.Zone));

        Assert.Empty(panel.FindAll("button"));
    }

    [Fact]
    public void Late_changes_are_a_sentence_each_with_then_and_now()
    {
        var night = NightBuilder.ANight().WithGuests(6).With(AnswerState.NoAnswer, NightBuilder.AnEater("ana")).Build();
        var plan = Plans.Of(night);
        var later = night with
        {
            Begun = BegunDough.Of(night, plan),
            Guests = [.. night.Guests.Select(guest => guest.Id switch
            {
                "ana" => guest with { Answer = AnswerState.Coming, Eaters = [guest.Eaters[0] with { Needs = new DietaryNeeds([], [Allergen.Nuts], []) }] },
                "guest-0" => guest with { Answer = AnswerState.NotComing },
                _ => guest,
            })],
        };

        var panel = PanelOf(LateChanges.Between(new PlannedNight(night, plan), new PlannedNight(later, Plans.Of(later))));

        Assert.Contains("Ana answered: coming, 1 person", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("New must-not, Ana: avoids nuts", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("somebody does not come", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("run-out chance is", panel.Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<LateChangesPanel> PanelOf(LateChanges changes) => Render<LateChangesPanel>(with => with
        .Add(p => p.Changes, changes)
        .Add(p => p.Words, new LateChangeText(id => Plans.Names.GetValueOrDefault(id, "somebody"))));
}
