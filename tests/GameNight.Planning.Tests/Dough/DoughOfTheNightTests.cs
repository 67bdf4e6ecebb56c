using System.Text.Json;
using CsCheck;
using GameNight.Planning.Contract;
using GameNight.Planning.Dough;
using GameNight.Planning.Quantities;
using GameNight.TestKit;
using static GameNight.TestKit.Nights.NightBuilder;

namespace GameNight.Planning.Tests.Dough;

/// <summary>What the night's plan makes of formula, flour, scales and friction.</summary>
public class DoughOfTheNightTests
{
    private const double RoundOff = 1e-6;

    private static readonly NightPlanner Planner = new(SharedFolder.Tables);

    private static readonly Gen<NightSnapshot> Nights =
        from formula in Formulas.Whole
        from room in Gen.Double[16, 30]
        from flour in Gen.Select(Gen.Enum<WheatKind>(), Gen.Double[0.1, 0.9])
        from known in Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool)
        from fine in Gen.OneOf(Gen.Const(0.01), Gen.Const(0.1), Gen.Const(1.0))
        from friction in Gen.Double[0, 20]
        select ANight().WithGuests(6).But(night => night with
        {
            Formula = formula with { Water = new Share(Math.Min(0.7, formula.Water.Value + 0.05)) },
            Kitchen = night.Kitchen with
            {
                Room = new Celsius(room),
                Flour = known.Item1 ? new KitchenFlour(flour.Item1, FlourKept.Paper, new Share(flour.Item2)) : null,
                Scale = known.Item2 ? new KitchenScale(new Grams(1), new Grams(fine)) : null,
                FrictionKelvin = known.Item3 ? friction : null,
            },
        }).Build();

    [Fact]
    public void The_dough_of_any_night_weighs_what_its_balls_need() => Nights.Sample(night =>
    {
        Assert.Empty(new SnapshotCheck(SharedFolder.Tables).Problems(night));
        var plan = Planner.Plan(night, Now, Effort.Quick);

        Assert.Equal(plan.Dough.Total.Value, plan.Dough.Batches.Sum(batch => batch.Total.Value), RoundOff);
        Assert.Equal(plan.Dough.Hydration!.Expected.Value, plan.Dough.Water / plan.Dough.Flour, RoundOff);
        Assert.Equal(night.Kitchen.Scale is null, plan.Dough.OnScale is null);
        Assert.Equal(night.Kitchen.FrictionKelvin is not null, !plan.Water.Because.Any(reason => reason is FrictionEstimated));
        Assert.Equal(night.Formula.Yeast == YeastForm.ActiveDry, plan.Water.Rest is not null);
        Assert.Equal(
            PlanJson.Canonical(plan),
            PlanJson.Canonical(JsonSerializer.Deserialize<NightPlan>(JsonSerializer.Serialize(plan, PlanJson.Options), PlanJson.Options)!));
    }, iter: 100);

    [Fact]
    public void A_dough_that_is_begun_stays_when_the_humidity_is_typed_in_later()
    {
        var night = ANight().WithGuests(6).Build();
        var begun = BegunDough.Of(night, Planner.Plan(night, Now, Effort.Quick))!;
        var later = Planner.Plan(
            night with
            {
                Begun = begun,
                Kitchen = night.Kitchen with { Flour = new KitchenFlour(WheatKind.Hard, FlourKept.Paper, new Share(0.2)) },
            },
            Now,
            Effort.Quick);

        Assert.Equal(begun.Dough, later.Dough);
    }

    [Fact]
    public void Parts_that_are_not_used_leave_no_trace_so_that_older_snapshots_read_and_write_as_they_did()
    {
        var text = PlanJson.Canonical(ANight().WithGuests(2).Build());

        Assert.All(
            ["extras", "flours", "preferment", "soaker", "kneader", "flour", "scale", "frictionKelvin", "oilInsetCentimetres"],
            member => Assert.DoesNotContain($"\"{member}\":", text, StringComparison.Ordinal));
        Assert.Equal(text, PlanJson.Canonical(JsonSerializer.Deserialize<NightSnapshot>(text, PlanJson.Options)!));
    }

    [Fact]
    public void Every_starting_style_passes_the_check() => Assert.All(SharedFolder.Tables.Dough.Styles, style =>
    {
        var night = ANight().WithGuests(2).But(night => night with
        {
            Formula = Formulas.Plain with
            {
                Water = new Share(style.Water),
                Salt = new Share(style.Salt),
                Oil = new Share(style.Oil),
                Sugar = new Share(style.Sugar),
            },
            Shape = new PieShape(
                new Centimetres(style.DiameterCentimetres),
                style.ThicknessGramsPerCm2,
                new Centimetres(style.RimCentimetres),
                new Centimetres(style.SauceInsetCentimetres),
                new Centimetres(style.CheeseInsetCentimetres),
                style.SlicesPerPie,
                style.OilInsetCentimetres is { } oil ? new Centimetres(oil) : null),
        }).Build();

        Assert.Empty(new SnapshotCheck(SharedFolder.Tables).Problems(night));
    });
}
