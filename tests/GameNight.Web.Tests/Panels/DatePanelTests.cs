using Bunit;
using GameNight.Nights.Dates;
using GameNight.Nights.Records;
using GameNight.Planning.Dates;
using GameNight.TestKit;
using GameNight.Web.Host.Dates;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class DatePanelTests : BunitContext
{
    private static readonly LocalDateTime First = new(2027, 1, 9, 19, 30);
    private static readonly Instant Now = Instant.FromUtc(2026, 12, 28, 12, 0);
    private static readonly GuestId Rui = GuestId.New();
    private static readonly GuestId Eva = GuestId.New();

    [Fact]
    public void An_evening_is_drawn_and_told_in_words_with_who_says_what()
    {
        var view = View(DateAnswer.Works, DateAnswer.AtAPinch);
        var row = Render<EveningRow>(parameters => parameters
            .Add(one => one.View, view).Add(one => one.Evening, view.Forecast.Evenings[0]).Add(one => one.At, First)
            .Add(one => one.Axis, HeadsDrawing.AxisOf(view.Forecast.Evenings)));

        Assert.Contains("2.6 expected, 2 to 3 four times in five", row.Markup, StringComparison.Ordinal);
        Assert.Contains("2 or more: 98 %", row.Markup, StringComparison.Ordinal);
        Assert.Contains("Works for 1, at a pinch for 1, no for 0; 0 said nothing.", row.Markup, StringComparison.Ordinal);
        Assert.Contains("Works: Rui (95 %)", row.Markup, StringComparison.Ordinal);
        Assert.Equal(["short", "enough", "enough"], row.FindAll("rect").Select(rect => rect.ClassName));
        Assert.Contains("most people", row.Markup, StringComparison.Ordinal);
        Assert.StartsWith("How many come: from 1 to 3, most likely 3", row.Find("svg").GetAttribute("aria-label"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_rules_an_evening_out_and_who_misses_again_is_said()
    {
        var view = View(DateAnswer.Works, DateAnswer.No, evaMissed: 1, needed: true, daysOff: [First.Date]);
        var row = Render<EveningRow>(parameters => parameters
            .Add(one => one.View, view).Add(one => one.Evening, view.Forecast.Evenings[0]).Add(one => one.At, First)
            .Add(one => one.Axis, HeadsDrawing.AxisOf(view.Forecast.Evenings)));

        Assert.Contains("Cannot be: Eva cannot come.", row.Markup, StringComparison.Ordinal);
        Assert.Contains("Cannot be: Saturday, 9 January is one of your days without a night.", row.Markup, StringComparison.Ordinal);
        Assert.Contains("Eva would miss two nights running.", row.Markup, StringComparison.Ordinal);
        Assert.Contains("2 or more with everybody you need: 0 %", row.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("most people", row.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_is_offered_to_who_invites_and_to_nobody_else()
    {
        var view = View(DateAnswer.Works, null);
        AskedLine? shown = null;

        var panel = Render<AskedPanel>(parameters => parameters
            .Add(one => one.View, view).Add(one => one.MayInvite, true).Add(one => one.ShowLink, line => shown = line));
        panel.Find("button[aria-label='Link of Eva']").Click();

        Assert.Equal(Eva, shown!.Id);
        Assert.Contains("said nothing yet", panel.Markup, StringComparison.Ordinal);
        Assert.Empty(Render<AskedPanel>(parameters => parameters.Add(one => one.View, view).Add(one => one.MayInvite, false)).FindAll("button"));
    }

    [Fact]
    public void A_night_of_the_rhythm_is_moved_with_what_was_typed_and_a_refusal_keeps_it()
    {
        LocalDateTime? moved = null;
        var row = Render<RhythmNightRow>(parameters => parameters
            .Add(one => one.Night, new RhythmNight(First.Date, First, false)).Add(one => one.IsSetUp, false).Add(one => one.MayChange, true)
            .Add(one => one.Move, to => moved = to));
        row.Find("button[aria-label='Move Saturday, 9 January']").Click();
        row.Find("input[type=date]").Change("2027-01-1");
        row.Find("form").Submit();
        Assert.Equal((null, 1), (moved, row.FindAll(".problem").Count));

        row.Find("input[type=date]").Change("2027-01-10");
        row.Find("form").Submit();

        Assert.Equal(First.PlusDays(1), moved);
    }

    [Fact]
    public void A_form_keeps_what_cannot_be_read_and_places_what_the_desk_refuses()
    {
        var form = DateDraftForm.Of(new DateStart(null, "Europe/Berlin", null, [], [new AskablePerson(Rui, "Rui", true, false)]), Now.InUtc().Date);
        Assert.Equal((3, "1", 1), (form.Evenings.Count, form.Quorum, form.Asked.Count));
        form.Evenings[1].Date = "2027-01-09";
        form.Evenings[2].Date = "9 January";
        form.Quorum = "some";

        var (facts, _, problems) = form.Read();

        Assert.Null(facts);
        Assert.Equal(["openUntil", "option2", "quorum"], problems.Keys.Order());
        Assert.Equal("9 January", form.Evenings[2].Date);
        (form.Evenings[2].Date, form.UntilDate, form.Quorum) = ("2027-01-09", "2027-01-04", "2");
        Assert.Equal(2, form.Read().Facts!.Options.Count);
        Assert.Equal("option2", form.Placed([new DateProblem("option1", DateFault.Repeated)]).Single().Key);
    }

    [Fact]
    public void A_rhythm_goes_through_its_form_unchanged()
    {
        var rhythm = new Rhythm(
            IsoDayOfWeek.Saturday, 1170, null, Rhythm.LastOfMonth, new LocalDate(2026, 12, 1), [new LocalDate(2026, 12, 26)],
            [new MovedDay(new LocalDate(2027, 1, 30), new LocalDateTime(2027, 1, 29, 19, 30))]);

        var read = RhythmForm.Of(rhythm, Now.InUtc().Date).Read().Rhythm!;

        Assert.Equal(rhythm with { DaysOff = read.DaysOff, Moved = read.Moved }, read);
        Assert.Equal((rhythm.DaysOff[0], rhythm.Moved[0]), (read.DaysOff.Single(), read.Moved.Single()));
        var broken = RhythmForm.Of(null, Now.InUtc().Date);
        (broken.Time, broken.From, broken.Distance) = ("", "soon", "x");
        broken.DaysOff.Add(new TypedDay { Date = "never" });
        Assert.Equal(["distance", "from", "off0", "time"], broken.Read().Problems.Keys.Order());
    }

    [Fact]
    public void Every_obstacle_and_fault_has_its_sentence()
    {
        DateObstacle[] obstacles =
        [
            new DateObstacle.HasPassed(), new DateObstacle.DayOff(First.Date), new DateObstacle.EveningTaken(Now, Now),
            new DateObstacle.DoughTooLate(Now, Duration.FromHours(40)), new DateObstacle.NoHandsForDough(Now, Now), new DateObstacle.MustHaveSaysNo(["a"]),
        ];
        var kinds = typeof(DateObstacle).GetNestedTypes();
        Assert.Equal(kinds.Length, obstacles.Select(obstacle => obstacle.GetType()).Distinct().Count());
        Assert.All(obstacles, obstacle => Assert.NotEmpty(DateText.Say(obstacle, "Europe/Berlin", new Dictionary<string, string> { ["a"] = "Eva" })));
        Assert.All(Enum.GetValues<DateFault>(), fault => Assert.EndsWith(".", DateText.Say(new DateProblem("", fault)), StringComparison.Ordinal));
        Assert.All(Enum.GetValues<RhythmFault>(), fault => Assert.EndsWith(".", DateText.Say(new RhythmProblem("", fault)), StringComparison.Ordinal));
    }

    private static DateView View(
        DateAnswer rui, DateAnswer? eva, int evaMissed = 0, bool needed = false, IReadOnlyList<LocalDate>? daysOff = null)
    {
        var id = DateChoiceFacts.IdOf(First);
        Dictionary<string, DateAnswer> ruis = new() { [id] = rui };
        var evas = eva is { } said ? new Dictionary<string, DateAnswer> { [id] = said } : [];
        var forecast = DateModel.Forecast(
            new DateRequest(
                [new DateOption(id, NightTime.ToInstant(First, "Europe/Berlin"), First.Date)],
                [
                    new DateGuest($"{Rui}", ruis),
                    new DateGuest($"{Eva}", evas, MissedInARow: evaMissed, MustHave: needed),
                    new DateGuest("host", new Dictionary<string, DateAnswer>(), IsHost: true),
                ],
                2, Now, null, [], [], daysOff ?? [], Duration.FromHours(3)),
            SharedFolder.Tables.Appetite);
        return new DateView(
            DateChoiceId.New(), "Thursday table", new DateChoiceFacts("January table", "Europe/Berlin", [First], 2, First.PlusDays(-5)),
            DateChoiceState.Open, 1, Now, false, null, null, forecast,
            [new AskedLine(Rui, "Rui", false, ruis, Now, false, false, "token"), new AskedLine(Eva, "Eva", needed, evas, eva is null ? null : Now, false, false, "token")],
            0);
    }
}
