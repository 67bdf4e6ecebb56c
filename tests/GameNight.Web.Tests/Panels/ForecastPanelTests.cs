using Bunit;
using GameNight.Nights.Records;
using GameNight.Planning;
using GameNight.Planning.Appetite;
using GameNight.Planning.Guests;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Plan;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class ForecastPanelTests : BunitContext
{
    [Fact]
    public void The_curve_is_drawn_with_the_choice_and_told_as_a_table_and_in_words()
    {
        var pies = Plans.Usual.Pies;
        var panel = Forecast(Plans.Usual);

        Assert.Equal(pies.Curve!.Chances.Count, panel.Find("polyline.course").GetAttribute("points")!.Split(' ').Length);
        Assert.Single(panel.FindAll(".moment"));
        Assert.Equal(pies.Curve.Chances.Count, panel.FindAll("tbody tr").Count);
        Assert.Contains(QuantityText.Chance(pies.Chosen.RunOutChance), panel.Find("tbody tr:has(th:contains('the plan'))").TextContent, StringComparison.Ordinal);
        Assert.Contains("One fewer", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("One more", panel.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("past nights", panel.Markup, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Who_was_moved_by_past_nights_is_named_with_what_was_and_what_is()
    {
        bool? leaves = null;
        var night = NightBuilder.ANight().WithGuests(5).Build();
        var eva = new GuestSnapshot("eva", AnswerState.Coming, [NightBuilder.AnEater("eva")], Past:
        [
            new PastEvening(1, AnswerState.Coming, Came: true, Slices: 11), new PastEvening(2, AnswerState.Coming, Came: true, Slices: 9, RanOut: true),
        ]);
        var panel = Forecast(Plans.Of(night with { Guests = [.. night.Guests, eva] }), with => with
            .Add(p => p.LeavePastOut, EventCallback.Factory.Create<bool>(this, to => leaves = to)));

        var said = panel.FindAll("ul li span").Select(row => row.TextContent).ToList();
        Assert.Equal(2, said.Count);
        Assert.Matches("^Eva: comes with a chance of \\d\\d %, not 95 % \\(2 nights with that answer\\)$", said[0]);
        Assert.Matches("^Eva: eats about [\\d.]+ slices, not 5.8 slices \\(2 nights\\)\\. Of 1 night on which", said[1].Replace(") Of", "). Of", StringComparison.Ordinal));
        panel.Find("button").Click();
        Assert.True(leaves);
    }

    [Fact]
    public void A_group_that_leaves_its_past_out_can_let_it_count_again()
    {
        bool? leaves = null;
        var panel = Forecast(Plans.Usual, with => with
            .Add(p => p.PastIsOut, true).Add(p => p.LeavePastOut, EventCallback.Factory.Create<bool>(this, to => leaves = to)));

        panel.Find("button").Click();

        Assert.False(leaves);
    }

    [Fact]
    public void Nobody_expected_shows_nothing() => Assert.Empty(Forecast(Plans.Empty).Markup.Trim());

    [Fact]
    public void Each_option_says_what_it_does_and_is_chosen_by_its_button()
    {
        LateOption? chosen = null;
        var (options, plan) = Late(then: 5, now: 9);
        var panel = Options(options, plan, null, with => with
            .Add(p => p.Choose, EventCallback.Factory.Create<LateOption>(this, option => chosen = option)));

        Assert.Equal(options.All.Count, panel.FindAll("button").Count);
        var rows = panel.FindAll(".late-options li");
        foreach (var (option, row) in options.All.OrderBy(option => option is RedivideOption).Zip(rows))
        {
            Assert.Contains(LateOptionText.Outlook(option), row.TextContent, StringComparison.Ordinal);
        }

        panel.FindAll("button")[0].Click();
        Assert.IsType<RescueOption>(chosen);
        Assert.Contains("Mix Sat", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_chosen_is_told_and_can_be_taken_back()
    {
        LateChoice? back = null;
        var (options, plan) = Late(5, 9);
        var panel = Options(options, plan, new LateChoices(BallsKept: 2, Course: AppetiteTaken.Some), with => with
            .Add(p => p.TakeBack, EventCallback.Factory.Create<LateChoice>(this, what => back = what)));

        var standing = panel.FindAll(".late-options")[0];
        Assert.Equal(["2 balls stay unbaked.", "There is one more course: one that takes some of the appetite, such as a salad or a soup."],
            standing.QuerySelectorAll("li > p:first-child").Select(row => row.TextContent));
        standing.QuerySelectorAll("button")[1].Click();
        Assert.Equal(LateChoice.Course, back);
    }

    [Fact]
    public void What_was_chosen_stays_on_the_page_while_the_plan_is_redone()
    {
        var (_, plan) = Late(5, 9);
        var panel = Options(LateOptions.None, plan, new LateChoices(Rescue: Rescue(2)), with => with.Add(p => p.IsBeingRedone, true));

        Assert.Contains("A rescue dough for 2 pies", panel.Find(".late-options li").TextContent, StringComparison.Ordinal);
        Assert.Single(panel.FindAll("h2"));
        Assert.DoesNotContain("enough pies without it", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rescue_dough_that_is_not_needed_any_more_says_so_and_stays()
    {
        var (_, plan) = Late(9, 3);
        var panel = Options(LateOptions.None, plan, new LateChoices(Rescue: Rescue(1)));

        Assert.Contains("enough pies without it", panel.Find(".late-options li").TextContent, StringComparison.Ordinal);
        Assert.Single(panel.FindAll("button"));
    }

    [Fact]
    public void What_went_is_told_with_its_reason_until_it_is_read()
    {
        var isRead = false;
        var gone = new LetGo(new LateChoices(Rescue: Rescue(2), Course: AppetiteTaken.Some), LetGoCause.NightMoved, NightBuilder.Now);
        var notice = Render<LetGoNotice>(with => with
            .Add(p => p.Gone, gone).Add(p => p.Words, new LateOptionText(Plans.Zone, Measures.Metric)).Add(p => p.Now, new Share(0.2))
            .Add(p => p.Seen, EventCallback.Factory.Create(this, () => isRead = true)));

        Assert.Contains("The night was moved", notice.Markup, StringComparison.Ordinal);
        Assert.StartsWith("A rescue dough for 2 pies, to be mixed", notice.Find("li").TextContent, StringComparison.Ordinal);
        notice.Find("button").Click();
        Assert.True(isRead);
    }

    [Fact]
    public void Too_late_for_a_rescue_dough_is_said()
    {
        var (_, plan) = Late(5, 9);
        var panel = Options(new LateOptions([], new NoTimeForRescue(Duration.FromHours(2), Duration.FromHours(4))), plan, null);

        Assert.Contains("too late: 2 h are left, and it needs at least 4 h", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_late_changes_there_is_no_panel() => Assert.Empty(Options(LateOptions.None, Plans.Usual, null).Markup.Trim());

    private IRenderedComponent<ForecastPanel> Forecast(NightPlan plan, Action<ComponentParameterCollectionBuilder<ForecastPanel>>? more = null) =>
        Render<ForecastPanel>(with =>
        {
            with.Add(p => p.Plan, plan).Add(p => p.NameOf, id => Plans.Names.GetValueOrDefault(id) ?? id);
            more?.Invoke(with);
        });

    private IRenderedComponent<LateOptionsPanel> Options(
        LateOptions options, NightPlan plan, LateChoices? chosen, Action<ComponentParameterCollectionBuilder<LateOptionsPanel>>? more = null) =>
        Render<LateOptionsPanel>(with =>
        {
            with.Add(p => p.Options, options).Add(p => p.Words, new LateOptionText(Plans.Zone, Measures.Metric))
                .Add(p => p.Chosen, chosen).Add(p => p.Pies, plan.Pies);
            more?.Invoke(with);
        });

    private static RescueDough Rescue(int balls) =>
        new(new PieCount(balls), NightBuilder.Now + Duration.FromDays(2), NightBuilder.Now + Duration.FromDays(2) + Duration.FromHours(2));

    private static (LateOptions Options, NightPlan Plan) Late(int then, int now)
    {
        var before = NightBuilder.ANight().WithGuests(then).Build();
        var night = before with
        {
            Begun = BegunDough.Of(before, Plans.Of(before)),
            Guests = NightBuilder.ANight().WithGuests(now).Build().Guests,
        };
        var plan = Plans.Of(night);
        return (new LateOptionsFinder(SharedFolder.Tables).For(night, plan, NightBuilder.Now + Duration.FromDays(2)), plan);
    }
}
