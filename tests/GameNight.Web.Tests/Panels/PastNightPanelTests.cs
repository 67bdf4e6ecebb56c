using Bunit;
using GameNight.Nights.PastNights;
using GameNight.Nights.Records;
using GameNight.Planning.Quantities;
using GameNight.Web.Guests;
using GameNight.Web.Host.PastNights;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class PastNightPanelTests : BunitContext
{
    [Fact]
    public void Who_came_is_filled_in_and_one_tap_changes_it()
    {
        var form = BakeLogForm.Of(PastNights.Night());
        var fields = Fields(form);
        Assert.Equal(["alone", "2 in all"], fields.FindAll(".heads span").Select(span => span.TextContent));

        fields.FindAll(".came input")[1].Change(false);
        fields.FindAll(".came input")[2].Change(true);
        fields.Find("button[aria-label='One more with Rui']").Click();
        fields.FindAll(".winners input")[1].Change(true);

        var facts = form.Read(8).Facts!;
        Assert.Equal(
            [(PastNights.Rui.Value, 2), (PastNights.Eva.Value, 0), (PastNights.Ana.Value, 1)], facts.Came.Select(row => (row.GuestId, row.Heads)));
        Assert.Equal(new PieCount(4), facts.Baked);
        Assert.Null(facts.SlicesLeft);
        Assert.Equal([2], facts.Pies.Where(pie => pie.Won).Select(pie => pie.Number));
    }

    [Fact]
    public void What_is_typed_is_read_with_comma_or_point_and_empty_is_not_noted()
    {
        var form = BakeLogForm.Of(PastNights.Night());
        form.Baked = "";
        form.Left = "4,5";
        form.Pies[1].Left = "1.5";

        var facts = form.Read(8).Facts!;

        Assert.Null(facts.Baked);
        Assert.Equal(4.5, facts.SlicesLeft);
        Assert.Equal([null, 1.5], facts.Pies.Select(pie => pie.SlicesLeft));
    }

    [Fact]
    public void A_problem_of_a_single_pie_is_unfolded_beside_its_field()
    {
        var form = BakeLogForm.Of(PastNights.Night());
        form.Pies[1].Left = "9";
        var (facts, problems) = form.Read(8);
        Assert.Null(facts);

        var fields = Fields(form, problems);

        Assert.True(fields.Find("details").HasAttribute("open"));
        Assert.Equal("Type a number from 0 to 8. No more can be left than was on it.", fields.Find($"#left-2-note").TextContent);
    }

    [Fact]
    public void Two_hosts_are_told_where_they_differ()
    {
        var log = new BakeLogFacts([new CameFacts(PastNights.Rui.Value, 1)], new PieCount(3), 2, [], "fewer");
        var (yours, theirs) = (BakeLogForm.Of(PastNights.Night()), BakeLogForm.Of(PastNights.Night(log)));
        yours.ToChange = "more";

        Assert.Equal(
            [
                "Eva: they have did not come, you have came, 2 in all", "Pies baked: they have 3, you have 4",
                "Slices left: they have 2, you have nothing", "Next time: they have fewer, you have more",
            ],
            yours.DifferencesTo(theirs));
    }

    [Fact]
    public void The_chart_draws_what_its_table_says()
    {
        PastNightLine[] nights =
        [
            PastNights.Line(new LocalDate(2026, 12, 12), PastNights.Slices(baked: 4, left: 5.5)),
            PastNights.Line(new LocalDate(2026, 12, 5), PastNights.Slices()),
        ];

        var chart = Render<PastChart>(with => with.Add(c => c.Nights, nights));

        var drawing = chart.Find("svg[role=img]");
        var (eaten, left) = (Height(drawing.QuerySelector(".eaten")!), Height(drawing.QuerySelector(".left")!));
        Assert.Equal(26.5 / 5.5, eaten / left, 1);
        Assert.Equal(Height(drawing.QuerySelector(".planned")!), eaten + left, 1);
        Assert.Contains(drawing.QuerySelectorAll("text"), text => text.TextContent == "?");
        Assert.Equal(
            ["Sat 5 Dec 2026|32|not noted|not noted|not noted", "Sat 12 Dec 2026|32|32|26.5|5.5"],
            chart.FindAll("tbody tr").Select(row => string.Join('|', row.Children.Select(cell => cell.TextContent))));
    }

    [Fact]
    public void The_chart_keeps_to_the_latest_nights_and_says_so()
    {
        var nights = Enumerable.Range(0, 20).Select(week =>
            PastNights.Line(new LocalDate(2026, 12, 12).PlusWeeks(-week), PastNights.Slices(baked: 4, left: 1))).ToList();

        var chart = Render<PastChart>(with => with.Add(c => c.Nights, nights));

        Assert.Equal(12, chart.FindAll("tbody tr").Count);
        Assert.Contains("the latest 12 nights", chart.Find("figcaption").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_look_back_without_a_name_stands_apart_from_every_name()
    {
        var panel = Render<OpinionsPanel>(with => with.Add(p => p.Night, PastNights.Night(
            named: [new NamedLookBack("Rui", PastNights.Silence with { Words = "good crust" })], nameless: ["too loud"])));

        var nameless = panel.FindAll("li").Single(line => line.TextContent.Contains("too loud", StringComparison.Ordinal));
        Assert.Equal("“too loud”", nameless.TextContent);
        Assert.Contains(panel.FindAll("li"), line => line.TextContent.Trim() == "Rui: “good crust”");
        Assert.Contains("2 people looked back.", panel.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Nobody_having_looked_back_is_said_with_what_to_do()
    {
        var panel = Render<OpinionsPanel>(with => with.Add(p => p.Night, PastNights.Night()));

        Assert.Contains("Nobody has looked back yet. Each guest has a link for it", panel.Markup, StringComparison.Ordinal);
        Assert.Empty(panel.FindAll("li"));
    }

    [Theory]
    [InlineData(10, 10)]
    [InlineData(11, 0)]
    public void Many_kinds_of_pie_are_asked_about_without_drawings(int kinds, int drawings)
    {
        var view = new LookBackView(
            NightId.New(), "Thursday table", "Rui", "Board games", new LocalDateTime(2026, 12, 12, 19, 30), Plans.Zone,
            Instant.FromUtc(2026, 12, 12, 19, 30), IsOpen: true, IsCancelled: false, PastNights.Pies(kinds), null, 0, null, []);

        var page = Render<LookBackPage>(with => with
            .Add(p => p.View, view).Add(p => p.Form, LookBackForm.Of(view)).Add(p => p.Token, "token"));

        Assert.Equal(drawings, page.FindAll("svg.pie").Count);
        Assert.Equal(kinds, page.FindAll("input[name=best]").Count);
    }

    private static double Height(AngleSharp.Dom.IElement bar) =>
        double.Parse(bar.GetAttribute("height")!, System.Globalization.CultureInfo.InvariantCulture);

    private IRenderedComponent<BakeLogFields> Fields(BakeLogForm form, IReadOnlyDictionary<string, string>? problems = null) =>
        Render<BakeLogFields>(with => with
            .Add(f => f.Form, form).Add(f => f.Pies, PastNights.Pies(2)).Add(f => f.Slices, PastNights.Slices())
            .Add(f => f.Problems, problems ?? new Dictionary<string, string>()));
}
