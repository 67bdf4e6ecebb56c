using AngleSharp.Dom;
using Bunit;
using GameNight.Planning;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.TestKit.Nights;
using GameNight.Web.Host.Oven;
using GameNight.Web.Wording;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace GameNight.Web.Tests.Panels;

public class OvenPanelTests : BunitContext
{
    private static readonly BakingPlace Steel = new(
        new BakingSurface(SurfaceKind.CarbonSteel, 8, new Centimetres(40), new Centimetres(36)), OvenAir.Fan, SurfaceSupport.WireRack, SoakLead.Model);

    private static readonly NightPlan OnSteel = On(Steel);

    [Fact]
    public void Model_and_rule_of_thumb_stand_side_by_side_and_the_model_carries_its_band()
    {
        var panel = Readiness(OnSteel);

        var (model, rule) = (Figure(panel, "model"), Figure(panel, "rule"));
        Assert.Matches("Four times in five: .+ to .+|.+ to .+", model.QuerySelector(".soft")!.TextContent);
        Assert.NotNull(model.QuerySelector(".band"));
        Assert.Equal("60", rule.QuerySelector(".numeral span")!.TextContent);
        Assert.Null(rule.QuerySelector(".band"));
        Assert.Contains("The model leads", Figure(panel, "soak").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_assumed_is_said_to_be_assumed_and_the_kitchens_own_minutes_lead()
    {
        var panel = Readiness(Plans.Usual);

        Assert.Contains("You have not said what you bake on", panel.Find(".notice").TextContent, StringComparison.Ordinal);
        Assert.Equal("/kitchen", panel.Find(".notice a").GetAttribute("href"));
        Assert.Contains("until you say", Figure(panel, "soak").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_soak_that_is_too_short_for_the_surface_is_warned_of()
    {
        var thick = Steel with { Surface = Steel.Surface with { Kind = SurfaceKind.Cordierite, ThicknessMillimetres = 40 }, Air = OvenAir.Static, Lead = SoakLead.RuleOfThumb };

        Assert.Contains("shorter than even the quick end", Readiness(On(thick, soak: 5)).Find(".notice.care").TextContent, StringComparison.Ordinal);
        Assert.Empty(Readiness(OnSteel).FindAll(".notice.care"));
    }

    [Fact]
    public void What_readings_taught_is_told_with_its_band()
    {
        var read = Steel with
        {
            Readings = [new(Duration.FromMinutes(20), new Celsius(95)), new(Duration.FromMinutes(30), new Celsius(140))],
        };

        Assert.Matches("Learned from 2 readings: heat reaches this surface [0-9.]+ times .+ four times in five [0-9.]+ to [0-9.]+", Readiness(On(read)).Markup);
        Assert.DoesNotContain("Learned", Readiness(OnSteel).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void The_chart_shades_every_pie_and_its_table_names_them()
    {
        var evening = OnSteel.Oven!.Evening!;
        var chart = Render<SurfaceChart>(with => with.Add(c => c.Evening, evening).Add(c => c.Zone, Plans.Zone));

        Assert.Equal(evening.Pies.Count, chart.FindAll("rect.span.bake").Count);
        Assert.Equal(2, chart.FindAll("polyline").Count);
        var rows = chart.FindAll("tbody tr").Select(row => row.TextContent).ToList();
        Assert.All(evening.Pies, pie =>
        {
            Assert.Single(rows, row => row.Contains($"pie {pie.Number} in", StringComparison.Ordinal));
            Assert.Single(rows, row => row.Contains($"pie {pie.Number} out", StringComparison.Ordinal));
        });
        Assert.Contains("the table below says the same", chart.Find("[role=img]").GetAttribute("aria-label"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_plate_above_has_its_line_and_its_column()
    {
        var evening = On(Steel with { IronAbove = Steel.Surface with { Kind = SurfaceKind.CastIron, ThicknessMillimetres = 6 } }).Oven!.Evening!;
        var chart = Render<SurfaceChart>(with => with.Add(c => c.Evening, evening).Add(c => c.Zone, Plans.Zone));

        Assert.Equal(3, chart.FindAll("polyline").Count);
        Assert.Equal(5, chart.FindAll("thead th").Count);
    }

    [Fact]
    public void Temperatures_have_no_finer_steps_than_five_degrees()
    {
        var chart = Render<SurfaceChart>(with => with.Add(c => c.Evening, OnSteel.Oven!.Evening!).Add(c => c.Zone, Plans.Zone));

        Assert.All(chart.FindAll("td.number"), cell => Assert.Equal(0, int.Parse(cell.TextContent, System.Globalization.CultureInfo.InvariantCulture) % 5));
    }

    [Fact]
    public void Balls_in_box_and_open_carry_their_bands_and_what_never_happens_is_said()
    {
        var balls = Plans.Usual.Oven!.Balls;
        var panel = Balls(balls);

        Assert.Equal(4, panel.FindAll("td").Count);
        Assert.All(panel.FindAll("td"), cell => Assert.Matches(@"^about .+ \(.+ to .+\)$", cell.TextContent));
        Assert.Equal(2, Balls(balls with { TemperBoxed = null, TemperOpen = null }).FindAll("td").Count(cell => cell.TextContent == "not within two days"));
    }

    [Fact]
    public void A_host_who_reads_fahrenheit_sees_no_celsius()
    {
        RenderTree.Add<CascadingValue<Measures>>(with => with.Add(cascade => cascade.Value, Measures.UsCustomary));

        var all = Readiness(OnSteel).Markup + Balls(OnSteel.Oven!.Balls).Markup
            + Render<SurfaceChart>(with => with.Add(c => c.Evening, OnSteel.Oven.Evening!).Add(c => c.Zone, Plans.Zone)).Markup;

        Assert.DoesNotContain("°C", all, StringComparison.Ordinal);
        Assert.DoesNotContain(" mm", all, StringComparison.Ordinal);
        Assert.Contains("0.31 in", all, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_out_of_range_is_refused_beside_its_field_and_stays_typed()
    {
        var form = new SurfaceReadingForm { After = "500", Top = "24O" };

        Assert.Null(form.Read(Measures.Metric));
        var panel = Log(Steel, form);

        Assert.Contains("0 to 360", panel.Find("#afterSwitchOn-note").TextContent, StringComparison.Ordinal);
        Assert.Contains("0 to 600", panel.Find("#topCelsius-note").TextContent, StringComparison.Ordinal);
        Assert.Equal("500", panel.Find("#afterSwitchOn").GetAttribute("value"));
    }

    [Fact]
    public void A_reading_in_fahrenheit_is_kept_in_celsius()
    {
        var reading = new SurfaceReadingForm { After = "40", Top = "482" }.Read(Measures.UsCustomary)!;

        Assert.Equal((40, 250), (reading.AfterSwitchOn.TotalMinutes, reading.Top.Value));
    }

    [Fact]
    public void Readings_are_listed_in_order_and_can_be_taken_back_by_name()
    {
        SurfaceReading? back = null;
        var late = new SurfaceReading(Duration.FromMinutes(50), new Celsius(230));
        var early = new SurfaceReading(Duration.FromMinutes(20), new Celsius(110));
        var panel = Render<SurfaceLogPanel>(with => with
            .Add(log => log.Place, Steel with { Readings = [late, early] }).Add(log => log.Form, new SurfaceReadingForm())
            .Add(log => log.TakeBack, reading => back = reading));

        var first = panel.FindAll(".readings button")[0];
        first.Click();

        Assert.Equal(early, back);
        Assert.Equal("Take back 110 °C after 20 min", first.GetAttribute("aria-label"));
    }

    [Fact]
    public void Nothing_is_logged_of_a_surface_that_is_only_assumed() => Assert.Empty(Log(null, new SurfaceReadingForm()).FindAll("form"));

    private static NightPlan On(BakingPlace place, int soak = 60)
    {
        var night = NightBuilder.ANight().WithGuests(6).Build();
        return Plans.Of(night with { Kitchen = night.Kitchen with { Place = place, Soak = Duration.FromMinutes(soak) } });
    }

    private static IElement Figure(IRenderedComponent<ReadinessPanel> panel, string id) => panel.Find($"[aria-labelledby={id}-name]");

    private IRenderedComponent<ReadinessPanel> Readiness(NightPlan plan) => Render<ReadinessPanel>(with => with
        .Add(panel => panel.Oven, plan.Oven!).Add(panel => panel.Timeline, plan.Timeline).Add(panel => panel.Zone, Plans.Zone)
        .Add(panel => panel.KitchenAddress, "/kitchen"));

    private IRenderedComponent<BallRestsPanel> Balls(BallRests balls) => Render<BallRestsPanel>(with => with
        .Add(panel => panel.Balls, balls).Add(panel => panel.WarmEnough, new Celsius(16)).Add(panel => panel.InTimeline, Duration.FromMinutes(90)));

    private IRenderedComponent<SurfaceLogPanel> Log(BakingPlace? place, SurfaceReadingForm form) => Render<SurfaceLogPanel>(with => with
        .Add(log => log.Place, place).Add(log => log.Form, form));
}
