using Bunit;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Quantities;
using GameNight.Web.Host.Dough;
using GameNight.Web.Wording;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class DoughCourseTests : BunitContext
{
    private static readonly Instant Now = Instant.FromUtc(2026, 12, 10, 18, 0);

    private static Ripening Usual => Plans.Usual.Ripening!;

    [Fact]
    public void The_course_is_drawn_and_told_in_a_table()
    {
        var chart = Render<CourseChart>(with => with.Add(p => p.Ripening, Usual).Add(p => p.Zone, Plans.Zone));

        Assert.Equal(2, chart.FindAll("svg.linechart").Count);
        Assert.Equal(3, chart.FindAll("polyline").Count);
        Assert.All(chart.FindAll("svg"), svg => Assert.Contains("table below", svg.GetAttribute("aria-label"), StringComparison.Ordinal));
        var rows = chart.FindAll("tbody tr");
        Assert.InRange(rows.Count, 8, 20);
        Assert.Contains("no larger", rows[0].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Temperatures_are_drawn_and_told_in_the_reader_s_measures()
    {
        var chart = Render<CourseChart>(with => with
            .Add(p => p.Ripening, Usual).Add(p => p.Zone, Plans.Zone).AddCascadingValue(Measures.UsCustomary));

        Assert.Contains("°F", chart.Find("thead").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("°C", chart.Markup, StringComparison.Ordinal);
        Assert.Equal("75", chart.Find("tbody td").TextContent);
    }

    [Fact]
    public void The_window_is_said_with_its_band_and_what_moves_the_best_moment()
    {
        var early = Usual with { Window = Usual.Window with { Best = Usual.Course[^1].At - Duration.FromHours(9) } };

        Assert.DoesNotContain("coldest shelf", Panel(Usual).Markup, StringComparison.Ordinal);
        Assert.Contains("four times in five", Panel(Usual).Markup, StringComparison.Ordinal);
        Assert.Contains("At its best 9 h earlier", Panel(early).Find(".notice").TextContent, StringComparison.Ordinal);
        Assert.Contains("not ready within ten days", Panel(Usual with { Window = new(null, null, null, null, null, false) }).Markup, StringComparison.Ordinal);

        IRenderedComponent<ReadyPanel> Panel(Ripening ripening) =>
            Render<ReadyPanel>(with => with.Add(p => p.Ripening, ripening).Add(p => p.Zone, Plans.Zone));
    }

    [Fact]
    public void A_window_of_gas_says_how_long_ahead_the_balls_leave_the_fridge()
    {
        var cold = Panel(Usual.Course[^1].At - Duration.FromMinutes(150));
        var never = Panel(null);

        Assert.Contains("out of the fridge 2 h 30 min ahead", cold.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("out of the fridge", never.Markup, StringComparison.Ordinal);

        IRenderedComponent<ReadyPanel> Panel(Instant? taken) =>
            Render<ReadyPanel>(with => with.Add(p => p.Ripening, Usual).Add(p => p.Zone, Plans.Zone).Add(p => p.OutOfFridge, taken));
    }

    [Fact]
    public void A_reading_is_typed_in_the_host_s_own_measures_and_time()
    {
        var form = new ReadingForm { Look = DoughLook.Domed, Dough = "50", Fridge = "41", At = "2026-12-09T20:30" };

        var reading = form.Read(Now, "Europe/Lisbon", Measures.UsCustomary)!;

        Assert.Equal((10, 5), (reading.Dough!.Value.Value, Math.Round(reading.Fridge!.Value.Value, 9)));
        Assert.Equal(Instant.FromUtc(2026, 12, 9, 20, 30), reading.At);
        Assert.Equal(Now, new ReadingForm { Look = DoughLook.Airy }.Read(Now, "Europe/Lisbon", Measures.Metric)!.At);
    }

    [Fact]
    public void What_cannot_be_read_stays_typed_with_its_range_beside_it()
    {
        var form = new ReadingForm { Fridge = "warm", Dough = "80", At = "yesterday" };

        Assert.Null(form.Read(Now, "Europe/Lisbon", Measures.Metric));
        Assert.All(new[] { "doughCelsius", "fridgeCelsius", "readAt" }, field => Assert.NotNull(form.ProblemOf(field)));
        Assert.Equal(("warm", "80"), (form.Fridge, form.Dough));
    }

    [Fact]
    public void The_log_opens_with_mixing_and_each_reading_can_be_taken_back()
    {
        var reading = new DoughReading(Now, new Celsius(8), null, DoughLook.Domed);
        DoughReading? takenBack = null;
        var panel = Render<LogPanel>(with => with
            .Add(p => p.IsBegun, true).Add(p => p.Readings, [reading]).Add(p => p.Zone, Plans.Zone).Add(p => p.Form, new ReadingForm())
            .Add(p => p.TakeBack, (DoughReading one) => takenBack = one));
        var before = Render<LogPanel>(with => with
            .Add(p => p.IsBegun, false).Add(p => p.Readings, []).Add(p => p.Zone, Plans.Zone).Add(p => p.Form, new ReadingForm()));

        Assert.Contains("dough 8 °C", panel.Find(".readings").TextContent, StringComparison.Ordinal);
        panel.Find(".readings button").Click();
        Assert.Equal(reading, takenBack);
        Assert.Empty(before.FindAll("form"));
    }

    [Fact]
    public void Ways_stand_side_by_side_with_dose_window_steps_and_what_to_mind()
    {
        var table = Render<WaysTable>(with => with
            .Add(p => p.Ways, [new ComparedWay(0, null!, Plans.Usual) with { Night = GameNight.TestKit.Nights.NightBuilder.ANight().Build() }])
            .Add(p => p.Zone, Plans.Zone).Add(p => p.Names, id => id));

        Assert.Equal("As it stands", table.Find("section h3").TextContent);
        Assert.All(
            new[] { "Mixing begins", "Yeast, four times in five", "At its best", "Steps", "What to mind" },
            row => Assert.Contains(row, table.FindAll("dt").Select(term => term.TextContent)));
    }

    [Fact]
    public void What_differs_from_the_plan_as_it_stands_is_marked()
    {
        var table = Render<WaysTable>(with => with.Add(p => p.Ways, TwoWays()).Add(p => p.Zone, Plans.Zone).Add(p => p.Names, id => id));

        Assert.Empty(table.FindAll("section")[0].QuerySelectorAll(".differs"));
        Assert.Equal("9 °C", table.FindAll("section")[1].QuerySelectorAll(".differs").Single().TextContent.Replace('\u00a0', ' '));
    }

    [Fact]
    public void All_ways_stand_in_one_chart_of_temperature_and_one_of_gas_with_their_windows_and_tables()
    {
        var ways = TwoWays();
        var window = ways[1].Plan.Ripening!.Window;
        var charts = Render<WaysCharts>(with => with.Add(p => p.Ways, ways).Add(p => p.Zone, Plans.Zone));

        var doughs = charts.FindAll("figure")[0];
        Assert.Equal([2, 2], doughs.QuerySelectorAll("svg").Select(svg => svg.QuerySelectorAll("polyline").Length));
        Assert.Equal(window.From is null ? 0 : 4, doughs.QuerySelectorAll("rect.ready").Length);
        Assert.Equal(2, doughs.QuerySelectorAll("table").Length);
        Assert.All(doughs.QuerySelectorAll("table"), table => Assert.Equal(3, table.QuerySelectorAll("thead th").Length));
        Assert.Single(ways.Select(way => way.Plan.Oven!.Evening).Distinct());
        Assert.Equal(2, charts.FindAll("figure").Count);
        Assert.Contains("As it stands and Way 2", charts.FindAll("figcaption")[1].TextContent, StringComparison.Ordinal);
        Assert.Equal(ways[0].Plan.Oven!.Evening!.Pies.Count, charts.FindAll("figure")[1].QuerySelectorAll("rect.bake").Length);
    }

    private static ComparedWay[] TwoWays()
    {
        var night = GameNight.TestKit.Nights.NightBuilder.ANight().Build();
        return [new(0, night, Plans.Usual), new(2, night with { Kitchen = night.Kitchen with { Fridge = new Celsius(9) } }, Plans.Usual)];
    }
}
