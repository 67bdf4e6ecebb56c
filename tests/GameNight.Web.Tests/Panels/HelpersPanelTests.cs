using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Print;
using GameNight.Web.Host.Timeline;
using GameNight.Web.Tests.Print;
using GameNight.Web.Wording;

namespace GameNight.Web.Tests.Panels;

public class HelpersPanelTests : BunitContext
{
    private static readonly GuestId Rui = GuestId.New();
    private static readonly HelperOfNight[] Two = [new(HelperSkill.Everything, Rui), new(HelperSkill.FetchAndClear)];
    private static readonly People Names = new(Two, new Dictionary<GuestId, string> { [Rui] = "Rui" });

    private readonly List<IReadOnlyList<HelperOfNight>?> _changed = [];
    private readonly List<(int Number, IReadOnlyList<HelperOfNight> All)> _dropped = [];

    [Fact]
    public void The_kitchens_helpers_have_no_names_until_one_is_given()
    {
        var panel = Panel(null, hands: 2);
        Assert.Single(panel.FindAll(".helperline"));

        panel.Find("#helper-name-1").Change("  Zofia ");
        panel.Find("#helper-guest-1").Change(Rui.ToString());
        panel.Find("#helper-skill-1").Change(nameof(HelperSkill.FetchAndClear));

        Assert.Equal([new HelperOfNight(HelperSkill.Everything, Name: "Zofia")], _changed[0]!);
        Assert.Equal([new HelperOfNight(HelperSkill.Everything, Rui)], _changed[1]!);
        Assert.Equal([new HelperOfNight(HelperSkill.FetchAndClear)], _changed[2]!);
    }

    [Fact]
    public void A_helper_more_a_helper_less_and_back_to_the_kitchens_hands_are_a_tap_each()
    {
        var panel = Panel(Two, hands: 3);

        panel.FindAll("button").Single(button => button.TextContent == "One more helper").Click();
        panel.FindAll("button").Single(button => button.TextContent == "Rui does not help").Click();
        panel.FindAll("button").Single(button => button.TextContent == "As many hands as the kitchen has").Click();

        Assert.Equal([.. Two, new HelperOfNight(HelperSkill.Everything)], _changed[0]!);
        Assert.Equal((1, Two.Length), (Assert.Single(_dropped).Number, _dropped[0].All.Count));
        Assert.Null(_changed[1]);
        Assert.True(Panel([.. Enumerable.Repeat(Two[1], HelperOfNight.Most)], 8).FindAll("button").Single(button => button.TextContent == "One more helper").HasAttribute("disabled"));
    }

    [Fact]
    public void A_helper_who_answered_that_they_are_not_coming_is_told_of()
    {
        var panel = Render<HelpersPanel>(with => with.Add(p => p.Helpers, Two).Add(p => p.Hands, 3).Add(p => p.People, Names)
            .Add(p => p.Guests, [(Rui, "Rui")]).Add(p => p.MayChange, true).Add(p => p.NotComing, ["Rui"]));

        Assert.StartsWith("Rui has answered that they are not coming", panel.Find(".notice.care").TextContent, StringComparison.Ordinal);
        Assert.Equal(Rui.ToString(), panel.Find("#helper-guest-1").GetAttribute("value"));
        Assert.Empty(Panel(Two, hands: 3).FindAll(".notice"));
    }

    [Fact]
    public void Each_person_has_a_list_and_a_sheet_of_just_their_steps()
    {
        var plan = Plans.Of(NightBuilder.ANight().WithGuests(12).But(night => night with
        {
            Kitchen = night.Kitchen with { Hands = 3, PiesPerBake = 3 },
            Helpers = [.. Two.Select(helper => helper.Skill)],
        }).Build());
        var steps = plan.Timeline.Steps;
        Assert.Contains(2, People.Working(steps));
        var served = People.StepsOf(steps, 2);
        Assert.All(served, step => Assert.Equal(2, step.By));

        var list = Render<StepList>(with => with.Add(l => l.Steps, steps).Add(l => l.People, Names).Add(l => l.Zone, Plans.Zone)).Markup;
        var theirs = Render<StepList>(with => with.Add(l => l.Steps, served).Add(l => l.People, Names).Add(l => l.Zone, Plans.Zone)).Markup;
        var sheet = Render<TimelineSheet>(with => with.Add(l => l.Steps, served).Add(l => l.People, Names).Add(l => l.Of, "Helper 2").Add(l => l.Head, Paper.Head)).Markup;

        var chart = Render<EveningChart>(with => with.Add(l => l.Steps, served).Add(l => l.Zone, Plans.Zone));
        Assert.InRange(chart.FindAll(".hours span").Count, 1, 24);
        Assert.Contains("your hands", list, StringComparison.Ordinal);
        Assert.DoesNotContain("your hands", theirs, StringComparison.Ordinal);
        Assert.Contains("Only the steps of: Helper 2.", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("Shape", sheet, StringComparison.Ordinal);
        Assert.Equal(
            steps.Where(step => step.NeedsHands || step.Kind is StepKind.Temper or StepKind.Preheat or StepKind.PutAway).Select(step => step.Id).Order(),
            People.Working(steps).SelectMany(person => People.StepsOf(steps, person)).Select(step => step.Id).Order());
    }

    [Fact]
    public void Who_is_not_named_is_called_by_their_number()
    {
        Assert.Equal(["You", "Rui", "Helper 2", "Helper 7"], new[] { 0, 1, 2, 7 }.Select(Names.Name));
        Assert.Equal("Helper 1", new People(Two, new Dictionary<GuestId, string>()).Name(1));
    }

    private IRenderedComponent<HelpersPanel> Panel(IReadOnlyList<HelperOfNight>? helpers, int hands) => Render<HelpersPanel>(with => with
        .Add(p => p.Helpers, helpers)
        .Add(p => p.Hands, hands)
        .Add(p => p.Guests, [(Rui, "Rui")])
        .Add(p => p.People, helpers is null ? People.Unnamed : Names)
        .Add(p => p.MayChange, true)
        .Add(p => p.Changed, _changed.Add)
        .Add(p => p.Dropped, _dropped.Add));
}
