using System.Text.Json;
using System.Text.Json.Nodes;
using GameNight.Planning.Contract;
using GameNight.Planning.Fermentation;
using GameNight.Planning.Heat;
using GameNight.Planning.Quantities;
using GameNight.Planning.Timeline;
using GameNight.TestKit;
using NodaTime;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests;

public class NightOvenTests
{
    private static readonly NightPlanner Planner = new(SharedFolder.Tables);

    private static readonly BakingPlace Steel = new(
        new BakingSurface(SurfaceKind.CarbonSteel, 8, new Centimetres(40), new Centimetres(36)), OvenAir.Static, SurfaceSupport.WireRack, SoakLead.Model);

    [Fact]
    public void A_kitchen_that_says_nothing_is_reckoned_with_a_stone_that_is_said_to_be_assumed()
    {
        var oven = Plan(null).Oven!;

        Assert.True(oven.IsAssumed);
        Assert.Equal(SurfaceKind.Cordierite, oven.Place.Surface.Kind);
        Assert.Equal(Duration.FromMinutes(60), oven.Soak.Value);
        Assert.True(oven.Soak.IsByHand);
        Assert.InRange(oven.Readiness.AfterAirIsHot!.Expected.TotalMinutes, 15, 120);
    }

    [Theory]
    [InlineData(SoakLead.Model)]
    [InlineData(SoakLead.RuleOfThumb)]
    public void The_timeline_soaks_as_long_as_what_leads_says(SoakLead lead)
    {
        var plan = Plan(Steel with { Lead = lead });

        var model = plan.Oven!.Readiness.AfterAirIsHot!.Expected;
        var leads = lead == SoakLead.Model ? model : Duration.FromMinutes(60);
        var soak = plan.Timeline.Steps.Single(step => step.Kind == StepKind.Soak);
        Assert.NotEqual(60, Math.Ceiling(model.TotalMinutes));
        Assert.Equal(Math.Ceiling(leads.TotalMinutes), (soak.End - soak.Start).TotalMinutes);
        Assert.Equal(lead == SoakLead.RuleOfThumb, plan.Oven.Soak.IsByHand);
        Assert.IsType(lead == SoakLead.Model ? typeof(SoakFromModel) : typeof(SoakFromRule), Assert.Single(plan.Oven.Soak.Because));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Every_pie_of_one_place_dips_the_surface_when_it_is_baked(int places)
    {
        var plan = Plan(Steel, night => night with { Kitchen = night.Kitchen with { PiesPerBake = places } });

        var bakes = plan.Timeline.Steps.Where(step => step.Kind == StepKind.Bake).ToList();
        var evening = plan.Oven!.Evening!;
        Assert.Equal(plan.Timeline.Steps.Single(step => step.Kind == StepKind.Preheat).Start, evening.SwitchOn);
        Assert.Equal((bakes.Count + places - 1) / places, evening.Pies.Count);
        Assert.All(evening.Pies, pie =>
        {
            Assert.Contains(bakes, step => step.Number == pie.Number && step.Start == pie.Start && step.End == pie.End);
            Assert.True(pie.AtEnd < pie.AtStart);
            Assert.Contains(evening.Course, moment => moment.AfterSwitchOn == pie.End - evening.SwitchOn && moment.Top == pie.AtEnd);
        });
    }

    [Fact]
    public void The_course_of_the_surface_is_short_and_in_order()
    {
        var evening = Plan(Steel).Oven!.Evening!;

        var times = evening.Course.Select(moment => moment.AfterSwitchOn).ToList();
        Assert.Equal(times.Order(), times);
        Assert.Equal(times.Distinct(), times);
        Assert.InRange(times.Count, 2, times[^1].TotalMinutes / 5 + 2 * evening.Pies.Count + 2);
        Assert.Equal(21, evening.Course[0].Top.Value, 0.5);
        Assert.All(evening.Course, moment => Assert.Null(moment.Iron));
    }

    [Fact]
    public void An_iron_above_is_followed_as_well()
    {
        var iron = new BakingSurface(SurfaceKind.CastIron, 6, new Centimetres(40), new Centimetres(36));

        var evening = Plan(Steel with { IronAbove = iron }).Oven!.Evening!;

        Assert.All(evening.Course, moment => Assert.NotNull(moment.Iron));
        Assert.True(evening.Course.Max(moment => moment.Iron!.Value.Value) > 200);
    }

    [Fact]
    public void Two_readings_teach_and_one_does_not()
    {
        var cool = new SurfaceReading(Duration.FromMinutes(40), new Celsius(120));

        var none = Plan(Steel).Oven!;
        var one = Plan(Steel with { Readings = [cool] }).Oven!;
        var two = Plan(Steel with { Readings = [cool, new SurfaceReading(Duration.FromMinutes(60), new Celsius(165))] }).Oven!;

        Assert.Null(one.Learned);
        Assert.Equal(none.Readiness, one.Readiness);
        Assert.InRange(two.Learned!.Multiplier.Expected, 0.2, 0.95);
        Assert.Equal(2, two.Readiness.Readings);
        Assert.True(two.Soak.Value > none.Soak.Value);
        Assert.Null(two.Place.Readings);
    }

    [Fact]
    public void Balls_in_the_open_warm_and_cool_faster_than_in_a_box()
    {
        var balls = Plan(null).Oven!.Balls;

        Assert.True(balls.TemperOpen!.Expected < balls.TemperBoxed!.Expected);
        Assert.True(balls.ColdOpen!.Expected < balls.ColdBoxed!.Expected);
        Assert.Equal(0.7, balls.TemperBoxed.Low / balls.TemperBoxed.Expected, 1e-6);
    }

    [Fact]
    public void An_unmeasured_fridge_is_assumed()
    {
        var balls = Plan(null, night => night with { Kitchen = night.Kitchen with { Fridge = null } }).Oven!.Balls;

        Assert.Equal(SharedFolder.Tables.Fermentation.Fridge.AssumedCelsius, balls.Fridge.Value);
    }

    [Theory]
    [InlineData(22, 250)]
    [InlineData(22, 400)]
    [InlineData(17, 250)]
    public void The_timeline_gives_the_balls_what_they_need_in_their_box(double room, double ball)
    {
        var plan = Plan(null, night => night with
        {
            Kitchen = night.Kitchen with { Room = new Celsius(room) },
            ByHand = night.ByHand with { Ball = new Grams(ball) },
        });

        var needed = plan.Oven!.Balls.TemperBoxed!.Expected;
        Assert.All(plan.Timeline.Steps.Where(step => step.Kind == StepKind.Temper), step =>
            Assert.InRange(step.End - step.Start, needed, needed + Duration.FromMinutes(5)));
        Assert.Contains(plan.Yeast.ShareOfFlour.Because.OfType<DoseForHours>(), hours =>
            hours.Tempering >= needed && hours.Tempering <= needed + Duration.FromMinutes(5));
    }

    [Fact]
    public void Steel_browns_before_stone_at_the_same_temperature()
    {
        var order = Plan(null).Oven!.FastestFirst.ToList();

        Assert.Equal(Enum.GetValues<SurfaceKind>().Order(), order.Order());
        Assert.True(order.IndexOf(SurfaceKind.CarbonSteel) < order.IndexOf(SurfaceKind.Cordierite));
    }

    [Fact]
    public void Nobody_eats_and_the_surface_has_no_evening() =>
        Assert.Null(Planner.Plan(ANight().Build(), Now, Effort.Quick).Oven!.Evening);

    [Fact]
    public void Night_and_plan_come_back_as_they_were_and_what_says_nothing_leaves_no_trace()
    {
        var night = ANight().WithGuests(4).Build();
        var told = night with { Kitchen = night.Kitchen with { Place = Steel with { Readings = [new(Duration.FromMinutes(30), new Celsius(150))] } } };
        var plan = Planner.Plan(told, Now, Effort.Quick);

        Assert.Equal(PlanJson.Canonical(told), PlanJson.Canonical(RoundTrip(told)));
        Assert.Equal(PlanJson.Canonical(plan), PlanJson.Canonical(RoundTrip(plan)));
        Assert.False(JsonNode.Parse(PlanJson.Canonical(night))!["kitchen"]!.AsObject().ContainsKey("place"));
    }

    [Fact]
    public void A_long_evening_of_many_pies_stays_within_a_day()
    {
        var plan = Plan(Steel, night => night with { Kitchen = night.Kitchen with { Bake = Duration.FromMinutes(60), Recovery = Duration.FromMinutes(60) } }, guests: 60);

        Assert.True(plan.Oven!.Evening is null || plan.Oven.Evening.Course[^1].AfterSwitchOn <= Duration.FromHours(24));
    }

    private static NightPlan Plan(BakingPlace? place, Func<NightSnapshot, NightSnapshot>? but = null, int guests = 6)
    {
        var night = ANight().WithGuests(guests).Build();
        return Planner.Plan(but?.Invoke(With(night)) ?? With(night), Now, Effort.Quick);

        NightSnapshot With(NightSnapshot plain) => plain with { Kitchen = plain.Kitchen with { Place = place } };
    }

    private static T RoundTrip<T>(T value) =>
        JsonSerializer.Deserialize<T>(JsonSerializer.Serialize(value, PlanJson.Options), PlanJson.Options)!;
}
